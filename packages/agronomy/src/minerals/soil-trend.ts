/**
 * How a soil figure has moved from sample to sample, one method at a time, and what a plan's balance will do to it.
 *
 * Source  least squares with Student's t (90 %); repeat error of a field's sample: common practice (15 % of the figure); milligrams per litre that a kilogram
 *         moves: the farm's own, else wide bounds of common practice round the 40 kg P2O5 and 10 kg K2O a hectare for 1 mg/l that advisers reckon with (recalled).
 * Checks  test/minerals.test.ts (a line is found again; methods are never mixed; C07: phosphorus 22 to 16 mg/l in 12.0 years, potassium 165 to 121 in 8.2)
 * Holds   samples of two methods never lie in one line; a conversion names its equation and widens the doubt; low ≤ typical ≤ high.
 * Leaves out  the season and the depth of sampling, which should be the same each time.
 */
import { type Day, dayNumber, type Interval, intervals } from '@leywright/measures';
import type { SoilMethod, SoilNutrient } from './soil-index.ts';

export interface SoilSample {
  readonly sampledOn: Day;
  readonly nutrient: SoilNutrient;
  readonly method: SoilMethod;
  readonly amountMgL: number;
  /** Set when the figure was turned from another method: from which, and by which stated equation. */
  readonly turnedFrom?: { readonly method: SoilMethod; readonly source: string; readonly errorMgL: number };
}

export const trendDoubts = ['one-sample', 'two-samples', 'line'] as const;

/** One method's line through time. `slopeMgLPerYear` is null for one sample. */
export interface SoilTrend {
  readonly method: SoilMethod;
  readonly samples: readonly SoilSample[];
  readonly rests: (typeof trendDoubts)[number];
  readonly slopeMgLPerYear: Interval | null;
}

/** A line for each method the samples were measured by, in the order first met. Nothing is ever turned from method to method here. */
export function soilTrends(nutrient: SoilNutrient, samples: readonly SoilSample[]): readonly SoilTrend[] {
  const own = samples.filter((sample) => sample.nutrient === nutrient);
  return [...new Set(own.map((sample) => sample.method))].map((method) => {
    const ordered = own
      .filter((sample) => sample.method === method)
      .sort((a, b) => dayNumber(a.sampledOn) - dayNumber(b.sampledOn));
    return { method, samples: ordered, ...slopeThrough(ordered) };
  });
}

/** A published line from one method to another, for one nutrient. The error is one standard deviation of what it foretells. */
export interface MethodConversion {
  readonly nutrient: SoilNutrient;
  readonly from: SoilMethod;
  readonly to: SoilMethod;
  readonly slopeRatio: number;
  readonly interceptMgL: number;
  readonly errorMgL: number;
  readonly source: string;
}

/** A sample by another method's scale. Null when the conversion is of another method or nutrient, or names no source. */
export function turnedSample(sample: SoilSample, by: MethodConversion): SoilSample | null {
  if (by.from !== sample.method || by.nutrient !== sample.nutrient || by.source.trim() === '') return null;
  return {
    ...sample,
    method: by.to,
    amountMgL: Math.max(0, by.interceptMgL + by.slopeRatio * sample.amountMgL),
    turnedFrom: { method: by.from, source: by.source, errorMgL: by.errorMgL },
  };
}

/** Share of a figure by which a second sample of the same field may differ (one standard deviation). Common practice. */
const repeatShare = 0.15;

function slopeThrough(samples: readonly SoilSample[]): Pick<SoilTrend, 'rests' | 'slopeMgLPerYear'> {
  const years = samples.map((sample) => dayNumber(sample.sampledOn) / 365.25);
  const meanYear = mean(years);
  const meanMgL = mean(samples.map((sample) => sample.amountMgL));
  const spread = years.reduce((sum, year) => sum + (year - meanYear) ** 2, 0);
  if (samples.length < 2 || spread === 0) return { rests: 'one-sample', slopeMgLPerYear: null };
  const slope =
    samples.reduce((sum, one, at) => sum + ((years[at] ?? 0) - meanYear) * (one.amountMgL - meanMgL), 0) / spread;
  const missed = samples.reduce(
    (sum, one, at) => sum + (one.amountMgL - meanMgL - slope * ((years[at] ?? 0) - meanYear)) ** 2,
    0,
  );
  const freedom = samples.length - 2;
  // A line through few samples may fit by luck: their own repeat error is the least doubt it can have.
  const repeatMgL = Math.max(
    ...samples.map((one) => Math.hypot(repeatShare * one.amountMgL, one.turnedFrom?.errorMgL ?? 0)),
  );
  const ownMgL = freedom > 0 ? Math.sqrt(missed / freedom) * (studentT90[freedom] ?? 1.645) : 0;
  const half = Math.max(ownMgL, 1.645 * repeatMgL) / Math.sqrt(spread);
  return {
    rests: freedom > 0 ? 'line' : 'two-samples',
    slopeMgLPerYear: intervals.interval(slope - half, slope, slope + half),
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}

/** Student's t, 90 % both sides, by degrees of freedom from 1; standard tables. */
const studentT90 = [
  Number.POSITIVE_INFINITY,
  6.314,
  2.92,
  2.353,
  2.132,
  2.015,
  1.943,
  1.895,
  1.86,
  1.833,
  1.812,
  1.796,
  1.782,
  1.771,
  1.761,
  1.753,
  1.746,
  1.74,
  1.734,
  1.729,
  1.725,
] as const;

/** Kilograms a hectare of the element that move the figure by 1 mg/l, where the farm has not measured its own. Wide on purpose. */
export const kgPerMgL = {
  phosphorus: intervals.interval(6, 14, 25),
  potassium: intervals.interval(4, 8, 15),
} as const;

/** Change of the figure a year (mg/l) from the balance of the element (kg/ha a year). */
export function slopeFromBalanceMgLPerYear(balanceKgHa: Interval, movesKgPerMgL: Interval): Interval {
  const corners = [balanceKgHa.low, balanceKgHa.high].flatMap((kg) => [
    kg / movesKgPerMgL.low,
    kg / movesKgPerMgL.high,
  ]);
  return intervals.interval(
    Math.min(...corners, balanceKgHa.typ / movesKgPerMgL.typ),
    balanceKgHa.typ / movesKgPerMgL.typ,
    Math.max(...corners, balanceKgHa.typ / movesKgPerMgL.typ),
  );
}

/** Years until a falling figure meets a target: soonest, most likely, latest. `latestYears` is null when it may never fall so far. */
export interface RunDown {
  readonly soonestYears: number | null;
  readonly likelyYears: number | null;
  readonly latestYears: number | null;
}

/** When a figure that moves by `slope` a year comes down to the target; nought when it is already there, null for never. */
export function runDownYears(nowMgL: number, targetMgL: number, slopeMgLPerYear: Interval): RunDown {
  const until = (slope: number) => (nowMgL <= targetMgL ? 0 : slope < 0 ? (targetMgL - nowMgL) / slope : null);
  return {
    soonestYears: until(slopeMgLPerYear.low),
    likelyYears: until(slopeMgLPerYear.typ),
    latestYears: until(slopeMgLPerYear.high),
  };
}
