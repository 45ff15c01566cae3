/**
 * Evaporation from the wetted, open part of the ground: free at first, then slower as the surface dries.
 *
 * Source  FAO-56 (Allen et al. 1998) chapter 7, eqs 71, 73-75, 77 and 79.
 * Checks  test/checks/soil.csv wb-10 (example 35, corrected table); test/soil-water.test.ts
 * Holds   depletion of the surface stays within 0 .. TEW; Ke is never negative, and never more than the limit leaves it.
 * Leaves out  what roots take from the surface layer (FAO-56: small except for shallow rooters).
 */

/** Most that can evaporate from the surface layer (mm). */
export function totalEvaporableMm(fieldCapacityShare: number, wiltingPointShare: number, layerDepthM: number): number {
  return 1000 * (fieldCapacityShare - 0.5 * wiltingPointShare) * layerDepthM; // eq. 73
}

/** Reduction coefficient Kr (0-1) at a depletion of the surface. */
export function reductionKr(depletionMm: number, totalMm: number, readilyMm: number): number {
  if (depletionMm <= readilyMm) return 1;
  return totalMm <= readilyMm ? 0 : Math.max(0, (totalMm - depletionMm) / (totalMm - readilyMm)); // eq. 74
}

/** Evaporation coefficient Ke. */
export function evaporationKe(open: {
  readonly reductionFactor: number;
  readonly greatestKc: number;
  readonly basalKcb: number;
  readonly openShare: number;
}): number {
  const { reductionFactor, openShare } = open;
  return Math.max(
    0,
    Math.min(reductionFactor * (open.greatestKc - open.basalKcb), openShare * open.greatestKc), // eq. 71
  );
}

/** Ground that is both open to the sun and wetted. */
export function openWettedShare(coverShare: number, wettedShare: number): number {
  return Math.min(1 - coverShare, wettedShare); // eq. 75
}

/** What falls on a day and what the ground and crop ask. Irrigation is over the wetted share already. */
export interface SurfaceDay {
  readonly etoMm: number;
  readonly rainLessRunoffMm: number;
  readonly irrigationMm: number;
  readonly openShare: number;
  readonly basalKcb: number;
}

/** A day of the surface: wetted at its start, as example 35 has it. */
export interface SurfaceStep {
  readonly reductionFactor: number;
  readonly ke: number;
  readonly depletionMm: number;
  readonly drainedMm: number;
}

/** One day of the surface layer. */
export function stepSurface(
  depletionMm: number,
  day: SurfaceDay,
  limits: { readonly totalMm: number; readonly readilyMm: number; readonly greatestKc: number },
): SurfaceStep {
  const wettedMm = day.rainLessRunoffMm + day.irrigationMm;
  const drainedMm = Math.max(0, wettedMm - depletionMm); // eq. 79
  const afterWettingMm = Math.max(0, depletionMm - wettedMm);
  const reductionFactor = reductionKr(afterWettingMm, limits.totalMm, limits.readilyMm);
  const { openShare, basalKcb } = day;
  const ke = evaporationKe({ reductionFactor, greatestKc: limits.greatestKc, basalKcb, openShare });
  const takenMm = openShare > 0 ? (ke * day.etoMm) / openShare : 0;
  return {
    reductionFactor,
    ke,
    depletionMm: Math.min(limits.totalMm, afterWettingMm + takenMm), // eq. 77
    drainedMm,
  };
}
