/**
 * Rain that runs off the surface instead of going in.
 *
 * Source  curve numbers of the US Soil Conservation Service, with the wet and dry ends of Hawkins et al. 1985 as in ASCE Manual 70 (2016).
 * Checks  test/soil-water.test.ts (never more than the rain; none under a fifth of the storage; more from wet ground)
 * Holds   0 ≤ runoff ≤ rain.
 * Leaves out  slope, wheelings and frozen ground: a curve number holds them only roughly.
 */

/** Curve number of a day from the usual one: dry ground (wetness 0) takes more in, wet ground (1) less. */
export function curveNumberFor(usualNumber: number, wetnessShare: number): number {
  const dry = usualNumber / (2.281 - 0.01281 * usualNumber);
  const wet = usualNumber / (0.427 + 0.00573 * usualNumber);
  const share = Math.min(1, Math.max(0, wetnessShare));
  return dry + (wet - dry) * share;
}

/** Runoff of a day (mm). */
export function runoffMm(rainMm: number, curveNumber: number): number {
  const storageMm = 250 * (100 / curveNumber - 1);
  const beyondMm = rainMm - 0.2 * storageMm;
  return beyondMm <= 0 ? 0 : beyondMm ** 2 / (rainMm + 0.8 * storageMm);
}
