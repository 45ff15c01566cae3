/**
 * How much of the ground is covered by all that lies and grows on it, and what counts as bare.
 *
 * Source  FAO-56 eq. 76 (cover from the basal coefficient); protected ground at 30 % cover: University of Nebraska G-20 (1990) citing the Soil
 *         Conservation Service; soil loss: RUSLE surface cover (Renard et al. 1997, b recalled); residue: Gregory 1982 (recalled).
 * Checks  test/checks/science.csv cc-03, cc-04; test/canopy.test.ts (cover of several is never less than the best of them)
 * Holds   every cover lies within 0 .. 1; more residue never covers less.
 * Leaves out  stones, moss and weeds, which cover ground too.
 */

/** Cover from a basal crop coefficient, where only that is known. */
export function coverFromBasalCoefficient(crop: {
  readonly kcb: number;
  readonly kcMin: number;
  readonly kcMax: number;
  readonly heightM: number;
}): number {
  const share = Math.max(0.01, crop.kcb - crop.kcMin) / Math.max(0.01, crop.kcMax - crop.kcMin);
  return Math.min(0.99, Math.max(0, share ** (1 + 0.5 * crop.heightM))); // eq. 76
}

/** Cover by dead residue lying flat; `perTHa` 0.4-0.6 by its kind. */
export function residueCover(massTHa: number, perTHa = 0.5): number {
  return 1 - Math.exp(-perTHa * Math.max(0, massTHa));
}

/** Cover of what stands over, under and among one another: each covers its share of what the others leave open. */
export function combinedCover(covers: readonly number[]): number {
  let open = 1;
  for (const cover of covers) open *= 1 - cover;
  return 1 - open;
}

/** Soil lost under a cover, relative to bare ground; b is 0.025-0.05 per % of cover. */
export function soilLossFactor(coverPct: number, b = 0.035): number {
  return Math.exp(-b * coverPct);
}

/** Where the words change: bare under a tenth, protected from three tenths, full from eight tenths. */
export const coverThresholds = { bareBelow: 0.1, protectedFrom: 0.3, fullFrom: 0.8 } as const;

export const coverStates = ['bare', 'partly-covered', 'protected', 'full'] as const;
export type CoverState = (typeof coverStates)[number];

/** The word for a cover (0-1). */
export function coverState(coverShare: number): CoverState {
  if (coverShare < coverThresholds.bareBelow) return 'bare';
  if (coverShare < coverThresholds.protectedFrom) return 'partly-covered';
  return coverShare < coverThresholds.fullFrom ? 'protected' : 'full';
}
