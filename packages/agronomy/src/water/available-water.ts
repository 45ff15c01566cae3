/**
 * Water the roots can reach, how much of it comes easily, and how far a crop is held back once that is gone.
 *
 * Source  FAO-56 (Allen et al. 1998) eqs 82-85 and 88; p for the day's demand from the note under Table 22.
 * Checks  test/checks/soil.csv wb-01 to wb-04 and wb-13 (FAO-56 examples 36 and 37); test/soil-water.test.ts
 * Holds   depletion stays within 0 .. total available water; water in = water out + change; a drier root zone never eases the stress.
 * Leaves out  capillary rise; the layers, which the daily run keeps.
 */

/** Total available water (mm) in the root zone. Shares are m³ of water in m³ of soil. */
export function totalAvailableMm(fieldCapacityShare: number, wiltingPointShare: number, rootDepthM: number): number {
  return 1000 * (fieldCapacityShare - wiltingPointShare) * rootDepthM; // eq. 82
}

/** Readily available water (mm): what goes before the crop feels it. */
export function readilyAvailableMm(totalMm: number, depletionFraction: number): number {
  return depletionFraction * totalMm; // eq. 83
}

/** The depletion fraction of Table 22 (for 5 mm a day) at another day's demand, held within 0.1 .. 0.8. */
export function depletionFractionFor(tableFraction: number, cropEvapotranspirationMm: number): number {
  return Math.min(0.8, Math.max(0.1, tableFraction + 0.04 * (5 - cropEvapotranspirationMm)));
}

/** Stress coefficient Ks (0-1) at a depletion. */
export function stressKs(depletionMm: number, totalMm: number, readilyMm: number): number {
  if (depletionMm <= readilyMm) return 1;
  return totalMm <= readilyMm ? 0 : Math.max(0, (totalMm - depletionMm) / (totalMm - readilyMm)); // eq. 84
}

/** One day of the root zone: depletion at its end, and what drained below the roots (mm). */
export function stepRootZone(
  depletionMm: number,
  day: { readonly rainMm: number; readonly irrigationMm: number; readonly usedMm: number },
  totalMm: number,
): { readonly depletionMm: number; readonly drainedMm: number } {
  const balanceMm = depletionMm - day.rainMm - day.irrigationMm + day.usedMm; // eq. 85
  const drainedMm = Math.max(0, -balanceMm); // eq. 88
  return { depletionMm: Math.min(totalMm, balanceMm + drainedMm), drainedMm };
}

/** A spell of days without rain: Ks by the end of the day before (as example 37 has it), and depletion at the end of each day (mm). */
export function dryDown(start: {
  readonly totalMm: number;
  readonly readilyMm: number;
  readonly depletionMm: number;
  readonly cropDemandMm: number;
  readonly days: number;
}): { readonly ks: readonly number[]; readonly depletionMm: readonly number[] } {
  const ks: number[] = [];
  const depletionMm: number[] = [];
  let now = start.depletionMm;
  for (let day = 0; day < start.days; day++) {
    const stress = stressKs(now, start.totalMm, start.readilyMm);
    const usedMm = stress * start.cropDemandMm;
    now = stepRootZone(now, { rainMm: 0, irrigationMm: 0, usedMm }, start.totalMm).depletionMm;
    ks.push(stress);
    depletionMm.push(now);
  }
  return { ks, depletionMm };
}
