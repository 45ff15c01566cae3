/**
 * Radiation held between the darkest and the brightest a day can be, without moving its mean.
 *
 * Source  mean of a censored normal (standard result); limits 0.05 and 0.80 of the radiation above the air. About 6 % of days are clipped: without this,
 *         November to January come out 2-3 % too bright.
 * Checks  test/drawn-weather.test.ts (the mean of clipped days is the mean wanted); the normal law: Abramowitz & Stegun 7.1.26
 * Holds   limits kept; the mean wanted is met wherever it lies between them.
 * Leaves out  nothing.
 */

export const radiationLimits = { darkestShare: 0.05, brightestShare: 0.8 } as const;

/** Mean of a normal value held between two limits. */
export function clippedMean(value: { readonly mean: number; readonly sd: number }, low: number, high: number): number {
  const { mean, sd } = value;
  if (sd <= 0) return Math.min(high, Math.max(low, mean));
  const a = (low - mean) / sd;
  const b = (high - mean) / sd;
  return low * below(a) + high * (1 - below(b)) + mean * (below(b) - below(a)) - sd * (density(b) - density(a));
}

/** The mean to put in so that the days of a month, each between its own limits, come to the mean wanted. */
export function meanToPutIn(wantedMean: number, sd: number, aboveAirMjM2: readonly number[]): number {
  const comesTo = (mean: number) =>
    aboveAirMjM2.reduce(
      (sum, ra) =>
        sum + clippedMean({ mean, sd }, radiationLimits.darkestShare * ra, radiationLimits.brightestShare * ra),
      0,
    ) / aboveAirMjM2.length;
  let low = wantedMean - 6 * sd - 1;
  let high = wantedMean + 6 * sd + 1;
  for (let step = 0; step < 45; step++) {
    const middle = (low + high) / 2;
    if (comesTo(middle) < wantedMean) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function density(x: number): number {
  return Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
}

/** Share of a standard normal below x; within 1e-7. */
export function below(x: number): number {
  const t = 1 / (1 + (0.3275911 * Math.abs(x)) / Math.SQRT2);
  const tail =
    0.5 *
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
    Math.exp(-0.5 * x * x);
  return x < 0 ? tail : 1 - tail;
}
