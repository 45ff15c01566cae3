/**
 * How warm and bright a day is against its month, and how that hangs on the day before: three residuals that go together.
 *
 * Source  Matalas 1967; Richardson 1981, Water Resources Research 17:182; matrices of Richardson & Wright 1984, USDA-ARS ARS-8 (four of eight published
 *         transcriptions agree on them), and of De Bilt 1990-2019, computed from the open daily record of KNMI.
 * Checks  test/checks/science.csv wg-04; test/drawn-weather.test.ts (own and lagged correlations come back)
 * Holds   the spread neither grows nor dies away.
 * Leaves out  seasons in the correlations: one set holds for the year.
 */

/** Rows of three; order: greatest temperature, least temperature, radiation. */
export type ThreeByThree = readonly [Three, Three, Three];
export type Three = readonly [number, number, number];

/** x(today) = a x(yesterday) + b e, with e three independent standard normals. */
export interface ResidualMatrices {
  readonly name: string;
  readonly a: ThreeByThree;
  readonly b: ThreeByThree;
}

export const residualMatrices = {
  'richardson-wright-1984': {
    name: 'Richardson & Wright 1984',
    a: [
      [0.567, 0.086, -0.002],
      [0.253, 0.504, -0.05],
      [-0.006, -0.039, 0.244],
    ],
    b: [
      [0.781, 0, 0],
      [0.328, 0.637, 0],
      [0.238, -0.341, 0.873],
    ],
  },
  'de-bilt-1990-2019': {
    name: 'De Bilt 1990-2019',
    a: [
      [0.647, 0.063, -0.028],
      [0.405, 0.371, -0.09],
      [0.116, -0.081, 0.213],
    ],
    b: [
      [0.73, 0, 0],
      [0.312, 0.634, 0],
      [0.311, -0.399, 0.819],
    ],
  },
} as const satisfies Record<string, ResidualMatrices>;

/** The residuals of a day from those of the day before and three independent standard normals. */
export function nextResiduals(before: Three, chances: Three, { a, b }: Pick<ResidualMatrices, 'a' | 'b'>): Three {
  return [
    dot(a[0], before) + dot(b[0], chances),
    dot(a[1], before) + dot(b[1], chances),
    dot(a[2], before) + dot(b[2], chances),
  ];
}

/** Spread of the residuals (same day) that the matrices come to in the long run. */
export function sameDaySpread({ a, b }: Pick<ResidualMatrices, 'a' | 'b'>): ThreeByThree {
  const fresh = times(b, turned(b));
  let spread = fresh;
  for (let step = 0; step < 200; step++) spread = plus(times(times(a, spread), turned(a)), fresh);
  return spread;
}

/** How residuals go with those of the day before: row today, column yesterday. */
export function dayAfterSpread(matrices: Pick<ResidualMatrices, 'a' | 'b'>): ThreeByThree {
  return times(matrices.a, sameDaySpread(matrices));
}

/** The matrices of correlations on one day and with the day before. Null where they cannot belong to any weather. */
export function matricesOf(name: string, sameDay: ThreeByThree, dayAfter: ThreeByThree): ResidualMatrices | null {
  const inverse = inverted(sameDay);
  if (inverse === null) return null;
  const a = times(dayAfter, inverse);
  const b = lowerRoot(minus(sameDay, times(a, turned(dayAfter))));
  return b === null ? null : { name, a, b };
}

/** The same matrices, scaled so that each residual spreads by exactly 1: printed ones are rounded. */
export function withUnitSpread(matrices: ResidualMatrices): ResidualMatrices {
  const spread = sameDaySpread(matrices);
  const sd: Three = [Math.sqrt(spread[0][0]), Math.sqrt(spread[1][1]), Math.sqrt(spread[2][2])];
  const row = ([p, q, r]: Three, by: number, [u, v, w]: Three): Three => [(p * u) / by, (q * v) / by, (r * w) / by];
  const scaled = (m: ThreeByThree, columns: Three): ThreeByThree => [
    row(m[0], sd[0], columns),
    row(m[1], sd[1], columns),
    row(m[2], sd[2], columns),
  ];
  return { ...matrices, a: scaled(matrices.a, sd), b: scaled(matrices.b, [1, 1, 1]) };
}

function dot(row: Three, column: Three): number {
  return row[0] * column[0] + row[1] * column[1] + row[2] * column[2];
}

function turned(m: ThreeByThree): ThreeByThree {
  const column = (at: 0 | 1 | 2): Three => [m[0][at], m[1][at], m[2][at]];
  return [column(0), column(1), column(2)];
}

function times(m: ThreeByThree, n: ThreeByThree): ThreeByThree {
  const columns = turned(n);
  const row = (of: Three): Three => [dot(of, columns[0]), dot(of, columns[1]), dot(of, columns[2])];
  return [row(m[0]), row(m[1]), row(m[2])];
}

function plus(m: ThreeByThree, n: ThreeByThree): ThreeByThree {
  const row = (a: Three, b: Three): Three => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
  return [row(m[0], n[0]), row(m[1], n[1]), row(m[2], n[2])];
}

function minus(m: ThreeByThree, n: ThreeByThree): ThreeByThree {
  const row = (a: Three, b: Three): Three => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
  return [row(m[0], n[0]), row(m[1], n[1]), row(m[2], n[2])];
}

function inverted([[a, b, c], [d, e, f], [g, h, i]]: ThreeByThree): ThreeByThree | null {
  const whole = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (!(Math.abs(whole) > 1e-12)) return null;
  return [
    [(e * i - f * h) / whole, (c * h - b * i) / whole, (b * f - c * e) / whole],
    [(f * g - d * i) / whole, (a * i - c * g) / whole, (c * d - a * f) / whole],
    [(d * h - e * g) / whole, (b * g - a * h) / whole, (a * e - b * d) / whole],
  ];
}

/** Cholesky's root; null where there is none. */
function lowerRoot(m: ThreeByThree): ThreeByThree | null {
  const l11 = Math.sqrt(m[0][0]);
  const l21 = m[1][0] / l11;
  const l22 = Math.sqrt(m[1][1] - l21 * l21);
  const l31 = m[2][0] / l11;
  const l32 = (m[2][1] - l31 * l21) / l22;
  const l33 = Math.sqrt(m[2][2] - l31 * l31 - l32 * l32);
  if (![l11, l22, l33].every((l) => l > 0)) return null;
  return [
    [l11, 0, 0],
    [l21, l22, 0],
    [l31, l32, l33],
  ];
}
