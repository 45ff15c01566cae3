import type { Family } from './families.ts';
import { familyHue, groundFill, smallFill, smallTilePx } from './patterns.tsx';

interface MarkProps {
  readonly family: Family;
  readonly width: number;
  readonly height: number;
  /** From store: hollow, its hue as a frame. Else from field or tunnel: solid with its pattern. */
  readonly isHollow: boolean;
}

/** A small mark of a family at the origin: a brick, an upright, a square in a list. Its pattern is whole tiles from its own top corner. */
export function Mark({ family, width, height, isHollow }: MarkProps) {
  if (isHollow) return <HollowMark family={family} width={width} height={height} />;
  const tiles = Math.max(1, Math.round(width / smallTilePx));
  const scale = width / (tiles * smallTilePx);
  return (
    <>
      <g transform={`scale(${scale})`}>
        <rect width={width / scale} height={height / scale} fill={smallFill(family)} />
      </g>
      <rect width={width} height={height} fill="none" stroke="var(--mark-edge)" strokeOpacity=".6" strokeWidth=".8" />
    </>
  );
}

/** A frame of hue at least 2.2 px thick keeps its colour however small; a mark too low for a frame is filled with its hue under a white line. */
function HollowMark({ family, width, height }: Omit<MarkProps, 'isHollow'>) {
  const frame = 2.4;
  const isLow = height < 3 * frame;
  return (
    <>
      <rect
        width={width}
        height={height}
        fill={isLow ? familyHue(family) : 'var(--sheet)'}
        stroke="var(--mark-edge)"
        strokeOpacity=".7"
        strokeWidth=".9"
      />
      {isLow ? (
        <rect x={frame} y={height / 2 - 0.6} width={width - 2 * frame} height="1.2" fill="var(--sheet)" />
      ) : (
        <rect
          x={frame / 2 + 0.4}
          y={frame / 2 + 0.4}
          width={width - frame - 0.8}
          height={height - frame - 0.8}
          fill="none"
          stroke={familyHue(family)}
          strokeWidth={frame}
        />
      )}
    </>
  );
}

/** A square of a family beside its name in lists. */
export function Square({
  family,
  isHollow = false,
  size = 15,
}: {
  readonly family: Family;
  readonly isHollow?: boolean;
  readonly size?: number;
}) {
  return (
    <svg
      className="square"
      width={size + 1}
      height={size + 1}
      viewBox={`-.5 -.5 ${size + 1} ${size + 1}`}
      aria-hidden="true"
    >
      <Mark family={family} width={size} height={size} isHollow={isHollow} />
    </svg>
  );
}

/** A swatch of ground for the line of patterns above a picture. */
export function Swatch({ family }: { readonly family: Family | 'soil' }) {
  return (
    <svg className="swatch" width="25" height="15" viewBox="-.5 -.5 25 15" aria-hidden="true">
      <rect
        width="24"
        height="14"
        fill={family === 'soil' ? 'url(#soil)' : groundFill(family)}
        stroke="var(--mark-edge)"
        strokeOpacity=".5"
        strokeWidth=".7"
      />
    </svg>
  );
}
