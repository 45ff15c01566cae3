/**
 * Degree-days of one day, by each published method.
 *
 * Source  mean: Wilson & Barnett 1983, California Agriculture 37(1):4; sine: Baskerville & Emin 1969 and Zalom et al. 1983 (horizontal cut-off);
 *         held mean: the US corn 86/50 method.
 * Checks  test/checks/science.csv gd-01 to gd-06, gd-11, gd-12; test/degree-days.test.ts (against the area under the sine, summed by the second)
 * Holds   never negative; never falls when the day gets warmer (held mean and sine with horizontal cut-off); mean = sine when the night stays above the base.
 * Leaves out  vernalisation, day length and everything else that warmth alone does not decide.
 */

export const degreeDayMethods = ['mean', 'held-mean', 'sine', 'sine-cut-off'] as const;
export type DegreeDayMethod = (typeof degreeDayMethods)[number];

/** A day's two temperatures; any unit, the same for base and cut-off. */
export interface DayRange {
  readonly tMax: number;
  readonly tMin: number;
}

/** The mean of the two temperatures above the base. */
export function degreeDaysByMean(tMean: number, baseDeg: number): number {
  return Math.max(0, tMean - baseDeg);
}

/** Both temperatures held between base and cut-off, then averaged. */
export function degreeDaysByHeldMean(day: DayRange, baseDeg: number, cutOffDeg: number): number {
  const held = (t: number) => Math.min(cutOffDeg, Math.max(baseDeg, t));
  return (held(day.tMax) + held(day.tMin)) / 2 - baseDeg;
}

/** The area between a sine through the two temperatures and the base. */
export function degreeDaysBySine(day: DayRange, baseDeg: number): number {
  if (day.tMax <= baseDeg) return 0;
  const mean = (day.tMax + day.tMin) / 2;
  if (day.tMin >= baseDeg) return mean - baseDeg;
  const reach = (day.tMax - day.tMin) / 2;
  const angle = Math.asin((baseDeg - mean) / reach);
  return ((mean - baseDeg) * (Math.PI / 2 - angle) + reach * Math.cos(angle)) / Math.PI;
}

/** The sine with the area above the cut-off taken away: warmth beyond it neither helps nor harms. */
export function degreeDaysBySineCutOff(day: DayRange, baseDeg: number, cutOffDeg: number): number {
  return degreeDaysBySine(day, baseDeg) - degreeDaysBySine(day, cutOffDeg);
}

/** Degree-days Fahrenheit in degree-days Celsius. */
export function celsiusDegreeDays(fahrenheitDegreeDays: number): number {
  return fahrenheitDegreeDays / 1.8;
}

/** Days one generation or stage takes at a constant temperature; null at or below the base, where it never comes. */
export function daysAtConstant(temperatureC: number, baseC: number, sumCd: number): number | null {
  return temperatureC > baseC ? sumCd / (temperatureC - baseC) : null;
}
