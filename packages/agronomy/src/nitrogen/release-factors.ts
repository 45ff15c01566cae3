/**
 * How warmth, water and clay speed or slow the release of nitrogen. A day at 15 °C and field capacity counts one.
 *
 * Source  Brisson et al. 2008, conceptual basis of the STICS crop model, eqs 8.2 and 8.5, p. 147 (read in two published implementations).
 * Checks  test/checks/soil.csv n-11, n-13, n-14; test/residue.test.ts
 * Holds   never negative; frozen ground gives nothing; dust-dry ground gives nothing.
 * Leaves out  lack of air: release above field capacity falls in a straight line to nought at saturation (engineering choice).
 */

/** Residues: 1 at 15 °C. */
export function residueWarmthFactor(soilC: number): number {
  return soilC <= 0 ? 0 : 12 / (1 + 52 * Math.exp(-0.103 * soilC));
}

/** Humus: 1 at 15 °C. */
export function humusWarmthFactor(soilC: number): number {
  return soilC <= 0 ? 0 : 25 / (1 + 145 * Math.exp(-0.12 * soilC));
}

/** Water in the soil as a share of field capacity: nothing under 0.3, all at 1. */
export function wetnessFactor(ofFieldCapacityShare: number): number {
  return Math.min(1, Math.max(0, (ofFieldCapacityShare - 0.3) / 0.7)); // eq. 8.2
}

/** Share of the active humus nitrogen released on a normalised day. */
export function humusRatePerDay(clayPct: number, limePct: number): number {
  return (0.0006 * Math.exp(-0.0272 * clayPct)) / (1 + 0.0167 * limePct); // eq. 8.5
}

/** Share of the soil's nitrogen in humus that turns over at all. */
export const activeHumusShare = 0.35;
