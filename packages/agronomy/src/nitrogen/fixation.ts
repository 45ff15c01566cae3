/**
 * Nitrogen that legumes take from the air.
 *
 * Source  Anglade, Billen & Garnier 2015, Ecosphere 6(3):37 (abstract read): 0.79 N - 0.49 for forage, 0.70 N + 1.01 for grain legumes, times a
 *         below-ground factor (1.7 lucerne and clover, 1.3 grain); leys and covers: nitrogen in the stand times its share from the air, of reference/covers.csv.
 * Checks  test/checks/science.csv n-01, n-03; test/nitrogen.test.ts
 * Holds   never negative; low ≤ typical ≤ high.
 * Leaves out  the fall of fixation where the soil is rich in mineral nitrogen, which needs the daily account.
 */
import { type Interval, intervals } from '@leywright/measures';
import { reference } from '../reference/reference.ts';

const { between, exactly, interval } = intervals;

/** Nitrogen fixed in the shoots of forage legumes (kg/ha) from the nitrogen in them. */
export function fixedInForageKgHa(shootNKgHa: number): number {
  return Math.max(0, 0.79 * shootNKgHa - 0.49);
}

/** Nitrogen fixed in the shoots of grain legumes (kg/ha) from the nitrogen in them; of none, none. */
export function fixedInGrainKgHa(shootNKgHa: number): number {
  return shootNKgHa <= 0 ? 0 : 0.7 * shootNKgHa + 1.01;
}

/** What roots and stubble add to the nitrogen fixed in shoots. */
export const belowGroundFactors = { forage: 1.7, grain: 1.3 } as const;

/** Nitrogen fixed by shoots and roots together (kg/ha). */
export function totalFixedKgHa(
  kind: 'forage' | 'grain',
  shootNKgHa: number,
  belowGroundFactor: number = belowGroundFactors[kind],
): number {
  return (kind === 'forage' ? fixedInForageKgHa(shootNKgHa) : fixedInGrainKgHa(shootNKgHa)) * belowGroundFactor;
}

/** Which of a cover's two uses in the table: its first season, or its second, longer use (ley year 2, over winter to May). */
export const coverUses = ['main', 'second'] as const;
export type CoverUse = (typeof coverUses)[number];

/**
 * Nitrogen fixed by a cover or ley in one use (kg/ha): nitrogen in the stand times its share from the air; nought for what fixes none,
 * null where the table has no such use. Throws for an unknown cover.
 */
export function fixedByCoverKgHa(coverId: string, use: CoverUse = 'main'): Interval | null {
  const stand = nitrogenInCoverKgHa(coverId, use);
  const cover = reference.covers.get(coverId);
  if (stand === null || cover === undefined) return null;
  if (!cover.nFixing || cover.fixedShareLow === null || cover.fixedShareHigh === null) return exactly(0);
  const share = between(cover.fixedShareLow, cover.fixedShareHigh);
  return interval(stand.low * share.low, stand.typ * share.typ, stand.high * share.high);
}

/** Nitrogen in tops and roots of a cover in one use (kg/ha). Null where the table has no such use. Throws for an unknown cover. */
export function nitrogenInCoverKgHa(coverId: string, use: CoverUse = 'main'): Interval | null {
  const cover = reference.covers.get(coverId);
  if (cover === undefined) throw new Error(`There is no cover "${coverId}" in the tables.`);
  if (use === 'main') return between(cover.nLowKgHa, cover.nHighKgHa);
  return cover.n2LowKgHa === null || cover.n2HighKgHa === null ? null : between(cover.n2LowKgHa, cover.n2HighKgHa);
}

/** Share of a grain legume's nitrogen that comes from the air, for beans and peas picked green: Anglade's parameter table, kidney beans by Peoples et al. 2021. */
const pulseShares: Readonly<Record<string, Interval>> = {
  pea: interval(0.5, 0.71, 0.8),
  'broad-bean-spring': interval(0.6, 0.75, 0.85),
  'broad-bean-autumn': interval(0.6, 0.75, 0.85),
  'french-bean-dwarf': interval(0.2, 0.38, 0.55),
  'runner-bean': interval(0.2, 0.38, 0.55),
};

/** Nitrogen fixed by a vegetable at its typical uptake (kg/ha): beans and peas some, all others none. Throws for an unknown crop. */
export function fixedByCropKgHa(cropId: string): Interval {
  const crop = reference.crops.get(cropId);
  if (crop === undefined) throw new Error(`There is no crop "${cropId}" in the tables.`);
  const share = pulseShares[cropId];
  if (share === undefined) return exactly(0);
  const uptake = crop.nUptakeTypKgHa;
  return interval(uptake * share.low, uptake * share.typ, uptake * share.high);
}
