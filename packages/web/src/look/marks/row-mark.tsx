import type { ReactNode } from 'react';

/** What a job does to a row, seen from the side: ground line, seed below, plant above. Always shown with its word. */
export const rowMarks = [
  'sow',
  'plant',
  'undersow',
  'hoe',
  'net',
  'mow',
  'cut',
  'pick',
  'lift',
  'turn-in',
  'look',
  'store',
  'water',
] as const;
export type RowMarkName = (typeof rowMarks)[number];

const ground = <path d="M1 15h42" />;
const sprout = (x: number, tall: number) => (
  <path
    key={x}
    d={`M${x} 15v${-tall}M${x} ${15 - tall / 2}q${-tall * 0.667} ${-tall / 12} ${-tall * 0.733} ${-tall * 0.667}M${x} ${15 - tall / 2}q${tall * 0.667} ${-tall / 12} ${tall * 0.733} ${-tall * 0.667}`}
  />
);
const seed = (x: number, r: number) => <circle key={x} cx={x} cy="19" r={r} className="solid" />;
const heads = [8, 22, 36].map((x) => (
  <g key={x}>
    <path d={`M${x} 15v-4`} />
    <path d={`M${x - 4.5} 8q4.5 -7 9 0z`} className="solid" />
  </g>
));

const drawings: Readonly<Record<RowMarkName, ReactNode>> = {
  sow: (
    <>
      {ground}
      {[7, 17, 27, 37].map((x) => seed(x, 1.9))}
    </>
  ),
  plant: (
    <>
      {ground}
      {[8, 22, 36].map((x) => sprout(x, 6.3))}
    </>
  ),
  undersow: (
    <>
      {ground}
      {[14, 30].map((x) => sprout(x, 9))}
      {[6, 11, 19, 25, 35, 39].map((x) => seed(x, 1.4))}
    </>
  ),
  hoe: (
    <>
      <path d="M1 15l5 0l3 -5l3 5l4 0l3 -5l3 5l4 0l3 -5l3 5l4 0l3 -5l3 5" />
      <path d="M1 19h42" strokeDasharray="2 3" />
    </>
  ),
  net: (
    <>
      {ground}
      <path d="M3 15C6 0 38 0 41 15" />
      {[14, 22, 30].map((x) => sprout(x, 4.8))}
    </>
  ),
  mow: (
    <>
      {ground}
      <path d="M5 15v-10M10 15v-10M15 15v-10M20 15v-10M25 15v-3.5M30 15v-3.5M35 15v-3.5M39 15v-3.5" />
    </>
  ),
  cut: (
    <>
      {ground}
      {heads}
    </>
  ),
  pick: (
    <>
      {ground}
      <path d="M12 15v-9M32 15v-9" />
      {[
        [16, 7],
        [8, 10],
        [36, 7],
        [28, 10],
      ].map(([x, y]) => (
        <circle key={x} cx={x} cy={y} r="2.6" className="solid" />
      ))}
    </>
  ),
  lift: (
    <>
      <path d="M1 15h11m8 0h5m8 0h10" />
      <path d="M16 8q4 4 0 14q-4 -10 0 -14zM29 6q4 4 0 14q-4 -10 0 -14z" className="solid" />
    </>
  ),
  'turn-in': <path d="M1 15h8c0 -8 8 -8 8 -2s-6 5 -6 1M17 15h8c0 -8 8 -8 8 -2s-6 5 -6 1M33 15h10" />,
  look: (
    <>
      {ground}
      <circle cx="22" cy="9" r="4.5" />
      <circle cx="22" cy="9" r="1.5" className="solid" />
      {[9, 36].map((x) => sprout(x, 5.4))}
    </>
  ),
  store: <path d="M6 7h32M6 12h32M6 17h32M22 5v10m-4 -4l4 4l4 -4" />,
  water: (
    <>
      {ground}
      <path d="M12 6q4 5 0 7q-4 -2 0 -7zM24 4q4 5 0 7q-4 -2 0 -7zM34 7q4 5 0 7q-4 -2 0 -7z" className="solid" />
    </>
  ),
};

export function RowMark({ mark, width = 44 }: { readonly mark: RowMarkName; readonly width?: number }) {
  return (
    <svg className="row-mark" width={width} height={width / 2} viewBox="0 0 44 22" aria-hidden="true">
      {drawings[mark]}
    </svg>
  );
}
