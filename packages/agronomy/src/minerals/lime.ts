/**
 * Lime: how much a plot needs to come from its pH to the pH its rotation wants, and when not to.
 *
 * Source  AHDB RB209 section 1 with Defra's liming factors (read in published analysis code; organic and peaty arable recalled); targets: AHDB page on soil pH (read);
 *         limits of a dressing: lecture notes on liming that cite RB209 (read); fall of pH without lime: common practice.
 * Checks  test/checks/science.csv li-01 (all twelve of the printed table), li-02; test/minerals.test.ts
 * Holds   never negative; more acid ground never needs less; a stronger material is never needed in greater mass.
 * Leaves out  burnt and slaked lime, which are no fertility input here. Whether a material is allowed stands in the rule book.
 */
import { type Interval, intervals } from '@leywright/measures';

export const limeSoils = ['sand', 'sandy-loam', 'sandy-clay-loam', 'clay-loam', 'organic', 'peat'] as const;
export type LimeSoil = (typeof limeSoils)[number];

/** Tonnes a hectare of ground limestone for each whole unit of pH. Sands with loamy sands; sandy loams with silt loams; clay loams with clays. */
export const limeFactorTPh: Readonly<Record<LimeSoil, { readonly arable: number; readonly grass: number }>> = {
  sand: { arable: 6, grass: 4 },
  'sandy-loam': { arable: 7, grass: 5 },
  'sandy-clay-loam': { arable: 7.5, grass: 5.5 },
  'clay-loam': { arable: 8, grass: 6 },
  organic: { arable: 10, grass: 7.5 },
  peat: { arable: 16, grass: 12 },
};

/** pH to lime to: the best pH and 0.2 more. With a clover or lucerne ley in the rotation the arable figure holds. */
export const limeTargetPh = {
  arable: { mineral: 6.7, organic: 6.2, peat: 6 },
  grass: { mineral: 6.2, organic: 5.9, peat: 5.5 },
} as const;

/** Ground limestone of neutralising value 54 is what the factors are for. */
const usualNeutralisingValue = 54;

/** Lime needed (t/ha) of a material with this neutralising value (%). */
export function limeNeedTHa(need: {
  readonly ph: number;
  readonly targetPh: number;
  readonly factorTPh: number;
  readonly neutralisingValuePct?: number;
}): number {
  const strength = usualNeutralisingValue / (need.neutralisingValuePct ?? usualNeutralisingValue);
  // 6.7 - 6.2 is a hair over a half in binary; the printed table rounds the half it means.
  const short = Math.round((need.targetPh - need.ph) * 1e9) / 1e9;
  return Math.max(0, short * need.factorTPh) * strength;
}

/** The need with the doubt of a pH: ± 0.2, for a field's own unevenness is greater than the laboratory's 0.1. */
export function limeNeedWithDoubtTHa(need: Parameters<typeof limeNeedTHa>[0]): Interval {
  const at = (ph: number) => limeNeedTHa({ ...need, ph });
  return intervals.interval(at(need.ph + 0.2), at(need.ph), at(need.ph - 0.2));
}

/** Whole tonnes as the printed table has them, half up. */
export function wholeTonnes(amountT: number): number {
  return Math.floor(amountT + 0.5 + 1e-9);
}

/** How the pH falls a year without lime: light land faster. Common practice. */
export const yearlyFallPh = intervals.interval(0.02, 0.08, 0.15);

/** The pH some years after a sample, if no lime is given. */
export function phAfterYears(ph: number, years: number): Interval {
  return intervals.interval(
    ph - yearlyFallPh.high * years,
    ph - yearlyFallPh.typ * years,
    ph - yearlyFallPh.low * years,
  );
}

export const limeCautions = [
  'not-before-potatoes',
  'above-7-without-clubroot',
  'split-dressing',
  'too-much-on-standing-grass',
  'sample-too-old',
] as const;
export type LimeCaution = (typeof limeCautions)[number];

/** What speaks against a dressing as it is planned; all at once. */
export function limeCautionsOf(dressing: {
  readonly amountTHa: number;
  readonly targetPh: number;
  readonly onStandingGrass: boolean;
  /** The next courses on that ground, as rotation groups, the soonest first. */
  readonly nextGroups: readonly string[];
  readonly clubrootRecorded: boolean;
  readonly sampleAgeYears: number;
}): readonly LimeCaution[] {
  const speaks: Readonly<Record<LimeCaution, boolean>> = {
    'not-before-potatoes': dressing.nextGroups[0] === 'potato',
    'above-7-without-clubroot': dressing.targetPh > 7 && !dressing.clubrootRecorded,
    'split-dressing': dressing.amountTHa >= 10,
    'too-much-on-standing-grass': dressing.onStandingGrass && dressing.amountTHa > 7.5,
    'sample-too-old': dressing.sampleAgeYears > 5,
  };
  return limeCautions.filter((caution) => dressing.amountTHa > 0 && speaks[caution]);
}
