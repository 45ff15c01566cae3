import { useRouter } from '@tanstack/react-router';
import { type ReactNode, useEffect, useRef } from 'react';
import { words } from '../../words.ts';

interface SideSheetProps {
  /** The small word above the heading: "Why". */
  readonly kind: string;
  readonly title: string;
  readonly children: ReactNode;
}

/** The sheet at the right: does not dim the page, has an address of its own, and Back or Escape closes it. */
export function SideSheet({ kind, title, children }: SideSheetProps) {
  const router = useRouter();
  const heading = useRef<HTMLHeadingElement>(null);
  const close = () =>
    window.history.length > 1 ? router.history.back() : router.navigate({ to: '.', search: true, hash: '' });
  // biome-ignore lint/correctness/useExhaustiveDependencies: the heading takes the focus anew for each sheet
  useEffect(() => {
    heading.current?.focus({ preventScroll: true });
  }, [title]);
  return (
    <aside
      className="side-sheet"
      aria-labelledby="side-sheet-title"
      onKeyDown={(event) => {
        if (event.key === 'Escape') close();
      }}
    >
      <button type="button" className="link sheet-close" onClick={close}>
        {words.sheet.close}
      </button>
      <p className="sheet-kind">{kind}</p>
      <h2 id="side-sheet-title" ref={heading} tabIndex={-1}>
        {title}
      </h2>
      {children}
    </aside>
  );
}

/** For whatever holds a sheet, however often what is in it changes: when it goes, what opened it has the focus again. */
export function useFocusBack(): void {
  const before = useRef<Element | null>(null);
  before.current ??= document.activeElement;
  useEffect(() => {
    const opener = before.current;
    return () => {
      if (opener instanceof SVGElement || opener instanceof HTMLElement) opener.focus({ preventScroll: true });
    };
  }, []);
}
