import type { ReactNode } from 'react';
import { type Family, families } from './families.ts';

/** One tile of a family's lino cut, drawn in its pattern ink: `line` shapes are stroked, `solid` ones filled. */
interface Cut {
  readonly width: number;
  readonly height: number;
  readonly kind: 'line' | 'solid';
  readonly stroke?: number;
  readonly shapes: ReactNode;
}

/** Wide tiles for strips of ground. */
const groundCuts: Readonly<Record<Family, Cut>> = {
  ley: { width: 7, height: 7, kind: 'line', stroke: 1, shapes: <path d="M1.6 3.4v-2M5 6.6v-2.2M4.6 2.2l.5 -1" /> },
  cover: {
    width: 5.5,
    height: 5.5,
    kind: 'line',
    stroke: 1.1,
    shapes: <path d="M-1 1L1 -1M-.5 6L6 -.5M4.5 6.5l2 -2" />,
  },
  undersown: {
    width: 4,
    height: 4,
    kind: 'solid',
    shapes: (
      <>
        <circle cx="1" cy="1" r=".8" />
        <circle cx="3" cy="3" r=".8" />
      </>
    ),
  },
  potato: { width: 10, height: 6, kind: 'line', stroke: 1.2, shapes: <path d="M0 4.5q2.5 -4 5 0t5 0" /> },
  brassica: { width: 9, height: 9, kind: 'line', stroke: 1.2, shapes: <circle cx="4.5" cy="4.5" r="2.5" /> },
  allium: { width: 4, height: 4, kind: 'solid', shapes: <rect x="1" width="1" height="4" /> },
  root: { width: 6, height: 5, kind: 'solid', shapes: <rect x=".5" y="1.5" width="3.2" height="1.5" /> },
  beet: { width: 10, height: 6, kind: 'solid', shapes: <rect x="1" y="2" width="6.5" height="2.2" /> },
  squash: {
    width: 12,
    height: 12,
    kind: 'solid',
    shapes: (
      <>
        <circle cx="3.2" cy="3.2" r="2.4" />
        <circle cx="9.2" cy="9.2" r="2.4" />
      </>
    ),
  },
  salad: {
    width: 7,
    height: 7,
    kind: 'solid',
    shapes: (
      <>
        <rect width="3.5" height="3.5" />
        <rect x="3.5" y="3.5" width="3.5" height="3.5" />
      </>
    ),
  },
  pulse: { width: 8, height: 8, kind: 'line', stroke: 1.2, shapes: <path d="M4 1.2v5.6M1.2 4h5.6" /> },
};

/** Side of the square tile for small marks; a mark is always a whole number of tiles wide, so no pattern is cut at its edge. */
export const smallTilePx = 7;

/** The same cuts, each whole within one small square. */
const smallCuts: Readonly<Record<Family, Cut>> = {
  ley: { width: 7, height: 7, kind: 'line', stroke: 1, shapes: <path d="M1.8 3.2v-2M5.2 6.2v-2" /> },
  cover: {
    width: 3.5,
    height: 3.5,
    kind: 'line',
    stroke: 0.9,
    shapes: <path d="M-.5 .5L.5 -.5M0 3.5L3.5 0M3 4L4 3" />,
  },
  undersown: {
    width: 3.5,
    height: 3.5,
    kind: 'solid',
    shapes: (
      <>
        <circle cx=".9" cy=".9" r=".7" />
        <circle cx="2.6" cy="2.6" r=".7" />
      </>
    ),
  },
  potato: { width: 7, height: 4.6, kind: 'line', stroke: 1, shapes: <path d="M0 3.4q1.75 -3.2 3.5 0t3.5 0" /> },
  brassica: { width: 7, height: 7, kind: 'line', stroke: 1.1, shapes: <circle cx="3.5" cy="3.5" r="2" /> },
  allium: { width: 3.5, height: 3.5, kind: 'solid', shapes: <rect x="1.25" width="1" height="3.5" /> },
  root: { width: 7, height: 4.6, kind: 'solid', shapes: <rect x="1.4" y="1.5" width="4.2" height="1.5" /> },
  beet: { width: 7, height: 7, kind: 'solid', shapes: <rect x="1" y="2.3" width="5" height="2.3" /> },
  squash: { width: 7, height: 7, kind: 'solid', shapes: <circle cx="3.5" cy="3.5" r="2" /> },
  salad: {
    width: 7,
    height: 7,
    kind: 'solid',
    shapes: (
      <>
        <rect width="3.5" height="3.5" />
        <rect x="3.5" y="3.5" width="3.5" height="3.5" />
      </>
    ),
  },
  pulse: { width: 7, height: 7, kind: 'line', stroke: 1.1, shapes: <path d="M3.5 1.2v4.6M1.2 3.5h4.6" /> },
};

/** Names by which a picture fills a shape: `fill={groundFill('ley')}`. */
export const groundFill = (family: Family): string => `url(#ground-${family})`;
export const smallFill = (family: Family): string => `url(#small-${family})`;
export const familyHue = (family: Family): string => `var(--f-${family})`;

/**
 * Every pattern of the app, drawn once at the head of the page. Tiles begin at the origin of whatever is filled: a mark that is to keep
 * its pattern whole is drawn at its own origin and moved by its group.
 */
export function Patterns() {
  return (
    <svg className="hidden-text" width="0" height="0" aria-hidden="true">
      <defs>
        {families.map((family) => (
          <CutPattern key={family} id={`ground-${family}`} family={family} cut={groundCuts[family]} />
        ))}
        {families.map((family) => (
          <CutPattern key={`small-${family}`} id={`small-${family}`} family={family} cut={smallCuts[family]} />
        ))}
        <pattern id="soil" width="8" height="4" patternUnits="userSpaceOnUse">
          <rect width="8" height="4" fill="var(--f-soil)" />
          <rect y="2.6" width="8" height=".8" fill="var(--p-soil)" />
        </pattern>
        <pattern id="undersown-ley" width="4" height="4" patternUnits="userSpaceOnUse">
          <rect width="4" height="4" fill="var(--f-ley)" />
          <circle cx="1" cy="1" r=".75" fill="var(--f-undersown)" />
          <circle cx="3" cy="3" r=".75" fill="var(--f-undersown)" />
        </pattern>
        <pattern id="pencil" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="5" height="5" fill="#fff" fillOpacity=".3" />
          <rect width="1.1" height="5" fill="#13201b" fillOpacity=".6" />
        </pattern>
        <pattern id="old" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="6" height="6" fill="var(--paper)" fillOpacity=".6" />
          <rect width="1" height="6" fill="var(--ink2)" fillOpacity=".55" />
        </pattern>
        <pattern
          id="hungry-gap-fine"
          width="2.6"
          height="2.6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect width="1" height="2.6" fill="var(--ink2)" fillOpacity=".8" />
        </pattern>
        <pattern id="hungry-gap" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="1.1" height="5" fill="var(--ink2)" fillOpacity=".45" />
        </pattern>
      </defs>
    </svg>
  );
}

function CutPattern({ id, family, cut }: { readonly id: string; readonly family: Family; readonly cut: Cut }) {
  const ink = `var(--p-${family})`;
  return (
    <pattern id={id} width={cut.width} height={cut.height} patternUnits="userSpaceOnUse">
      <rect width={cut.width} height={cut.height} fill={familyHue(family)} />
      <g
        fill={cut.kind === 'solid' ? ink : 'none'}
        stroke={cut.kind === 'line' ? ink : 'none'}
        strokeWidth={cut.stroke}
      >
        {cut.shapes}
      </g>
    </pattern>
  );
}
