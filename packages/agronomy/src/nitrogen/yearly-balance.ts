/**
 * Nitrogen of one year on one part of a plot: brought, taken and lost, as intervals with their doubt.
 *
 * Source  off-take: yield times nitrogen per tonne of reference/crops.csv; fixation: fixation.ts; deposition, leaching and gases: common practice bands below.
 * Checks  test/nitrogen.test.ts (six courses of a stock-free rotation worked by hand; low of one goes with high of the other)
 * Holds   low ≤ typical ≤ high; more off-take never leaves more.
 * Leaves out  what the soil gives and takes up from its humus, and when: a yearly balance says mining or feeding, not whether July's cabbage is hungry.
 */
import { type Interval, intervals } from '@leywright/measures';
import { reference } from '../reference/reference.ts';

const { addIntervals, exactly, interval, subtractIntervals } = intervals;

/** From the air and rain in western Europe (kg/ha a year). Common practice. */
export const depositionKgHa: Interval = interval(10, 15, 20);

/** Lost as gas from the soil (kg/ha a year). Common practice; wet heavy ground after a ley may lose several times as much. */
export const gaseousLossKgHa: Interval = interval(3, 7, 12);

/** Washed out over a winter (kg/ha) by what stands on the ground then. Common practice. */
export const winterGrounds = ['ley', 'cover', 'late-crop', 'bare', 'ley-broken'] as const;
export type WinterGround = (typeof winterGrounds)[number];

export const leachingKgHa: Readonly<Record<WinterGround, Interval>> = {
  ley: interval(10, 18, 30),
  cover: interval(10, 22, 40),
  'late-crop': interval(20, 35, 60),
  bare: interval(40, 65, 100),
  'ley-broken': interval(50, 85, 130),
};

/** How all bands of this file are known. */
export const balanceBandsHowKnown = 'common practice' as const;

/** Nitrogen carried off the field with a crop (kg/ha), from its yield. Throws for an unknown crop. */
export function offtakeKgHa(cropId: string, yieldTHa: Interval): Interval {
  const crop = reference.crops.get(cropId);
  if (crop === undefined) throw new Error(`There is no crop "${cropId}" in the tables.`);
  const { nLowKgT, nHighKgT } = crop;
  return interval(yieldTHa.low * nLowKgT, (yieldTHa.typ * (nLowKgT + nHighKgT)) / 2, yieldTHa.high * nHighKgT);
}

/** What a yield carries off (kg/ha) at a content of the fresh product. */
export function removedKgHa(yieldTHa: number, contentKgT: number): number {
  return yieldTHa * contentKgT;
}

/** Nitrogen a crop must find to reach a yield (kg/ha): product and residue, in proportion to the typical crop of the table. Throws for an unknown crop. */
export function uptakeAtYieldKgHa(cropId: string, yieldTHa: number): number {
  const crop = reference.crops.get(cropId);
  if (crop === undefined) throw new Error(`There is no crop "${cropId}" in the tables.`);
  return (crop.nUptakeTypKgHa * yieldTHa) / crop.yieldTypTHa;
}

/** A year's nitrogen on one part (kg/ha). */
export interface YearlyNitrogen {
  readonly fixedKgHa: Interval;
  readonly depositedKgHa: Interval;
  /** Seed, bought plants and compost. */
  readonly broughtKgHa: Interval;
  readonly offtakeKgHa: Interval;
  readonly leachedKgHa: Interval;
  readonly gasKgHa: Interval;
}

/** What is left: inputs less off-take less losses. The low end takes low inputs with high losses, the high end the other way round. */
export function balanceKgHa(year: YearlyNitrogen): Interval {
  const inputs = [year.depositedKgHa, year.broughtKgHa].reduce(addIntervals, year.fixedKgHa);
  const outputs = [year.leachedKgHa, year.gasKgHa].reduce(addIntervals, year.offtakeKgHa);
  return subtractIntervals(inputs, outputs);
}

/** A year in which nothing happened yet: deposition and gases alone. */
export const quietYear: YearlyNitrogen = {
  fixedKgHa: exactly(0),
  depositedKgHa: depositionKgHa,
  broughtKgHa: exactly(0),
  offtakeKgHa: exactly(0),
  leachedKgHa: exactly(0),
  gasKgHa: gaseousLossKgHa,
};
