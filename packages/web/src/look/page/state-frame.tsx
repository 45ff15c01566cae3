import type { ReactNode } from 'react';

/** How a picture stands. No state spins, shimmers or changes the picture's size. */
export type PictureState =
  | { readonly kind: 'fresh' }
  /** Nothing to draw yet; `sentence` says what is being worked out. */
  | { readonly kind: 'working'; readonly sentence: string }
  /** The old picture, until the new one comes; `sentence` says from when it dates. */
  | { readonly kind: 'old'; readonly sentence: string }
  /** What went wrong, where, and what to do. */
  | { readonly kind: 'failed'; readonly sentence: string };

/** Lays a state over a picture: furrows while nothing is known, a pencil hatch over what is old, a dashed red frame where it failed. */
export function StateFrame({
  state,
  height,
  children,
}: {
  readonly state: PictureState;
  readonly height: number;
  readonly children: ReactNode;
}) {
  if (state.kind === 'fresh') return children;
  if (state.kind === 'working')
    return (
      <div className="state-frame working" style={{ height }} role="status">
        <span>{state.sentence}</span>
      </div>
    );
  if (state.kind === 'failed')
    return (
      <div className="state-frame failed" style={{ minHeight: height }} role="alert">
        {state.sentence}
      </div>
    );
  return (
    <div className="state-frame old">
      {children}
      <svg className="old-hatch" width="100%" height="100%" aria-hidden="true">
        <rect width="100%" height="100%" fill="url(#old)" />
      </svg>
      <p className="old-line" role="status">
        {state.sentence}
      </p>
    </div>
  );
}
