/**
 * Phosphorus and potassium of a plot: what leaves with produce, against its samples.
 *
 * Source  agronomy minerals/offtake.ts, soil-index.ts and soil-trend.ts (tables and targets named there).
 * Leaves out  what is brought in: the book has no register of compost and minerals yet, so the reckoned slope takes nothing as brought.
 */
import { minerals, type SoilNutrient, type SoilSample } from '@leywright/agronomy';
import type { SoilSample as BookSample } from '@leywright/book';
import { dayNumber, type Interval, intervals } from '@leywright/measures';
import type { NutrientAccount, SampledFigure } from '../plan/fertility.ts';
import { methodOf } from './ground-of.ts';
import type { Harvest } from './harvests.ts';

const oxideOf = { phosphorus: 'p2o5KgHa', potassium: 'k2oKgHa' } as const;
const shareOf = { phosphorus: minerals.oxides.elementShare.p, potassium: minerals.oxides.elementShare.k } as const;
export const idOf = { phosphorus: 'phosphate', potassium: 'potash' } as const;
export type AccountedNutrient = keyof typeof idOf;

/** What one harvest takes from the plot in its year, spread over the whole of it (kg/ha as oxide). */
export function harvestOfftakeKgHa(harvest: Harvest, nutrient: AccountedNutrient): Interval {
  const taken = minerals.offtake.offtakeOfCropKgHa(harvest.cropId, harvest.yieldTHa)[oxideOf[nutrient]];
  return intervals.scaleInterval(taken, harvest.areaShare);
}

export interface PlotRecord {
  readonly plot: string;
  readonly harvests: readonly Harvest[];
  readonly samples: readonly BookSample[];
  /** Years of the plan. */
  readonly years: number;
}

export function nutrientAccount(nutrient: AccountedNutrient, record: PlotRecord): NutrientAccount {
  const oxide = meanOfftakeKgHa(nutrient, record);
  const element = intervals.scaleInterval(oxide, shareOf[nutrient]);
  const reckoned = minerals.soilTrend.slopeFromBalanceMgLPerYear(
    intervals.interval(-element.high, -element.typ, -element.low),
    minerals.soilTrend.kgPerMgL[nutrient],
  );
  const sampled = sampledLine(nutrient, record.samples);
  const targetIndex = minerals.soilIndex.targetIndex.vegetables[nutrient];
  const targetMgL = minerals.soilIndex.indexBeginsMgL(nutrient, targetIndex) ?? 0;
  const last = sampled.figures.at(-1);
  return {
    nutrient,
    offtakeOxideKgHa: range(oxide),
    offtakeElementKgHa: range(element),
    samples: sampled.figures,
    otherMethods: sampled.otherMethods,
    slopeSampledMgLPerYear: sampled.slope === null ? null : range(sampled.slope),
    slopeReckonedMgLPerYear: range(reckoned),
    targetIndex,
    targetMgL,
    untilTarget: last === undefined || last.index === null ? null : untilTarget(last.amountMgL, targetMgL, reckoned),
    buildUpOxideKgHa: last?.index == null ? null : minerals.soilIndex.buildUpKgHa(Number.parseInt(last.index, 10)),
    doubt: doubtOf(sampled.figures, sampled.otherMethods),
    why: `${idOf[nutrient]}/${record.plot}`,
  };
}

/** Oxide that leaves, a year on the mean of the plan's years. */
export function meanOfftakeKgHa(nutrient: AccountedNutrient, { harvests, years }: PlotRecord): Interval {
  const sum = harvests
    .map((harvest) => harvestOfftakeKgHa(harvest, nutrient))
    .reduce(intervals.addIntervals, intervals.exactly(0));
  return intervals.scaleInterval(sum, 1 / Math.max(1, years));
}

/** The samples by the last one's method, with their line. */
export function sampledLine(
  nutrient: SoilNutrient,
  samples: readonly BookSample[],
): { readonly figures: readonly SampledFigure[]; readonly slope: Interval | null; readonly otherMethods: number } {
  const amount = { phosphorus: 'pMgL', potassium: 'kMgL', magnesium: 'mgMgL' } as const;
  const known = samples.flatMap((sample) => {
    const amountMgL = sample[amount[nutrient]];
    return amountMgL === null ? [] : [{ sample, amountMgL, method: methodOf(sample, nutrient) }];
  });
  const ordered = [...known].sort((a, b) => dayNumber(a.sample.takenOn) - dayNumber(b.sample.takenOn));
  const last = ordered.at(-1);
  if (last === undefined) return { figures: [], slope: null, otherMethods: 0 };
  // An unnamed method counts as one with others of the very same words.
  const own = ordered.filter(({ method, sample }) =>
    last.method === null ? sample.method === last.sample.method : method === last.method,
  );
  const method = last.method ?? 'water';
  const line = own.map(
    ({ sample, amountMgL }): SoilSample => ({ sampledOn: sample.takenOn, nutrient, method, amountMgL }),
  );
  return {
    figures: own.map(({ sample, amountMgL, method: by }) => ({
      takenOn: sample.takenOn,
      method: sample.method,
      amountMgL,
      index: by === null ? null : indexOf(nutrient, by, amountMgL),
    })),
    slope: minerals.soilTrend.soilTrends(nutrient, line)[0]?.slopeMgLPerYear ?? null,
    otherMethods: ordered.length - own.length,
  };
}

function indexOf(...of: Parameters<typeof minerals.soilIndex.soilIndex>): string | null {
  const found = minerals.soilIndex.soilIndex(...of);
  return found.kind === 'index' ? found.index : null;
}

function untilTarget(nowMgL: number, targetMgL: number, slope: Interval): NutrientAccount['untilTarget'] {
  return minerals.soilTrend.runDownYears(nowMgL, targetMgL, slope);
}

export const nutrientDoubts = [
  'no-soil-sample',
  'one-soil-sample',
  'samples-by-other-methods',
  'nothing-brought-in-known',
] as const;

function doubtOf(figures: readonly SampledFigure[], otherMethods: number): readonly string[] {
  const count = figures.length === 0 ? ['no-soil-sample'] : figures.length === 1 ? ['one-soil-sample'] : [];
  return [...count, ...(otherMethods > 0 ? ['samples-by-other-methods'] : []), 'nothing-brought-in-known'];
}

export function range({ low, high }: Interval): { readonly low: number; readonly high: number } {
  return { low, high };
}
