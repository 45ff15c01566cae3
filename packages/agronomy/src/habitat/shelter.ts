/**
 * Wind behind a hedge or a belt of trees, as a share of the open.
 *
 * Source  Brandle & Finch, How windbreaks work, Univ. Nebraska EC1763: rows of loose, dense and solid belts (recalled); reach of 2-5 heights to windward and
 *         30 to leeward (read). Its row of medium density is not transcribed: half-way between loose and dense. Measured belt: Dambutta 1980/81, data set
 *         `shelterbelts` of the R package nsm3data (read), after Ujah & Adeoye 1984.
 * Checks  test/checks/science.csv sh-01, sh-02; test/shelter.test.ts
 * Holds   0-100 % of the open; open wind beyond 30 heights to leeward and 5 to windward; beyond 5 heights behind the belt it only rises.
 * Leaves out  belts shorter than ten heights, gaps, shade and roots: within a height and a half crops lose more than they gain.
 */

/** Density classes of belts and the middle of each (% of the face that is closed). */
export const beltDensityPct = { loose: 30, medium: 50, dense: 70, solid: 100 } as const;

const heights = [5, 10, 15, 20, 30] as const;
const rowsPct: readonly (readonly [densityPct: number, pctOfOpen: readonly number[]])[] = [
  [beltDensityPct.loose, [50, 65, 80, 85, 100]],
  [beltDensityPct.dense, [25, 35, 65, 85, 95]],
  [beltDensityPct.solid, [25, 70, 90, 95, 100]],
];
/** In the belt itself, and where its effect to windward begins. */
const atBeltPct = 70;
const windwardHeights = 5;

/** Wind (% of the open) behind a belt, the distance in heights of it; in front of it negative. */
export function windOfOpenPct(densityPct: number, distanceRatio: number): number {
  if (distanceRatio <= -windwardHeights || distanceRatio > 30) return 100;
  if (distanceRatio <= 0) return 100 - (100 - atBeltPct) * (1 + distanceRatio / windwardHeights);
  const row = rowOf(densityPct);
  return between([0, ...heights], [atBeltPct, ...row], distanceRatio);
}

/** The density a text names: a class, one percentage, or a range of two. Null for anything else. */
export function beltDensityOf(text: string): number | null {
  const word = text.trim().toLowerCase();
  if (Object.hasOwn(beltDensityPct, word)) return beltDensityPct[word as keyof typeof beltDensityPct];
  const numbers = [...word.matchAll(/\d+(?:\.\d+)?/g)].map(Number);
  if (numbers.length < 1 || numbers.length > 2 || !/^[\d.\s%–-]+$/.test(word)) return null;
  return numbers.reduce((sum, one) => sum + one, 0) / numbers.length;
}

/** Share of wind taken away at 20, 40, 100, 150 and 200 m behind a measured belt of trees, mean of nine months (%). */
export const measuredBelt = { distancesM: [20, 40, 100, 150, 200], reductionPct: [21.1, 20.2, 14.3, 11, 7.2] } as const;

function rowOf(densityPct: number): readonly number[] {
  const densities = rowsPct.map(([density]) => density);
  return heights.map((_, at) =>
    between(
      densities,
      rowsPct.map(([, row]) => row[at] ?? 100),
      densityPct,
    ),
  );
}

/** Straight between points, held at the ends. */
function between(xs: readonly number[], ys: readonly number[], x: number): number {
  const above = xs.findIndex((one) => x <= one);
  if (above <= 0) return (above === 0 ? ys[0] : ys.at(-1)) ?? 100;
  const [x0 = 0, x1 = 1, y0 = 100, y1 = 100] = [xs[above - 1], xs[above], ys[above - 1], ys[above]];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}
