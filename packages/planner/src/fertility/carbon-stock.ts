/**
 * The topsoil's carbon of a plot, month by month, from its last sample of organic matter on.
 *
 * Source  RothC-26.3 (agronomy carbon/rothc.ts), started by the pools a stock of its size usually has; plant carbon 0.42 of dry matter; weather of a mean year.
 * Leaves out  compost and herbage carried in or out, and erosion. Roots and residues are rules of thumb (common practice), told as the doubt.
 */
import { type CarbonMonth, carbon } from '@leywright/agronomy';
import type { SoilSample } from '@leywright/book';
import { dayAt, dayNumber, dayOf, type Interval, intervals } from '@leywright/measures';
import type { GroundStand } from '../ground/ground-stand.ts';
import type { CarbonAccount } from '../plan/fertility.ts';
import type { MeanMonth } from './mean-months.ts';
import { plantCarbon } from './plant-carbon.ts';

/** Depth the model counts to, and the usual weight of such a topsoil (t/m3): common practice. */
export const topsoil = { depthCm: 23, bulkDensityTPerM3: 1.3 } as const;

export interface CarbonStockInput {
  readonly plot: string;
  readonly stands: readonly GroundStand[];
  readonly samples: readonly SoilSample[];
  readonly clayPct: number;
  readonly months: readonly MeanMonth[];
  readonly years: { readonly fromYear: number; readonly toYear: number };
}

export const carbonDoubts = [
  'plant-carbon-by-practice',
  'clay-by-class',
  'carbon-mean-weather',
  'sample-before-plan',
] as const;

type End = 'low' | 'typ' | 'high';

export type OrganicSample = SoilSample & { readonly organicMatterPct: number };

export function lastOrganic(samples: readonly SoilSample[]): OrganicSample | null {
  const known = samples.flatMap((one) =>
    one.organicMatterPct === null ? [] : [{ ...one, organicMatterPct: one.organicMatterPct }],
  );
  return known.sort((a, b) => dayNumber(a.takenOn) - dayNumber(b.takenOn)).at(-1) ?? null;
}

export function stockOf(sample: OrganicSample): number {
  return carbon.start.stockFromSampleTHa({
    carbonPct: carbon.start.carbonFromOrganicMatterPct(sample.organicMatterPct),
    ...topsoil,
  });
}

export function carbonAccount(input: CarbonStockInput): CarbonAccount | null {
  const sample = lastOrganic(input.samples);
  if (sample === null || Number(sample.takenOn.slice(0, 4)) > input.years.toYear) return null;
  const stockTHa = stockOf(sample);
  const sampledYear = Number(sample.takenOn.slice(0, 4));
  const ground = groundMonths(input.stands);
  const run = (end: End) => yearEnds(input, { sample, stockTHa, ground, end });
  const [low, typ, high] = [run('low'), run('typ'), run('high')];
  return {
    takenOn: sample.takenOn,
    stockTHa,
    years: typ.map(({ year, stockTHa: middle }, at) => ({
      year,
      stockTHa: { low: low[at]?.stockTHa ?? middle, typ: middle, high: high[at]?.stockTHa ?? middle },
    })),
    doubt: [
      'plant-carbon-by-practice',
      'clay-by-class',
      'carbon-mean-weather',
      ...(sampledYear < input.years.fromYear ? ['sample-before-plan'] : []),
    ],
    why: `carbon/${input.plot}`,
  };
}

/** Stocks at the ends of years; the run begins with the month after the sample, or with the plan where the sample is older. */
function yearEnds(
  input: CarbonStockInput,
  at: {
    readonly sample: OrganicSample;
    readonly stockTHa: number;
    readonly ground: (year: number, month: number) => GroundMonth;
    readonly end: End;
  },
): readonly { readonly year: number; readonly stockTHa: number }[] {
  const soil = { clayPct: input.clayPct, depthCm: topsoil.depthCm };
  const { inertTHa, ...pools } = carbon.start.poolsFromStock(at.stockTHa, input.clayPct);
  // The pools of the usual shares do not sum to this stock to the last gram: the difference belongs to the humus.
  const humusTHa = pools.humusTHa + at.stockTHa - inertTHa - carbon.rothc.activeCarbonTHa(pools);
  let state = { ...carbon.rothc.noCarbon, ...pools, humusTHa: Math.max(0, humusTHa) };
  const [sampledYear, sampledMonth] = [Number(at.sample.takenOn.slice(0, 4)), Number(at.sample.takenOn.slice(5, 7))];
  const isOld = sampledYear < input.years.fromYear;
  const ends: { year: number; stockTHa: number }[] = [];
  for (let year = Math.max(sampledYear, input.years.fromYear); year <= input.years.toYear; year++) {
    for (let month = !isOld && year === sampledYear ? sampledMonth + 1 : 1; month <= 12; month++)
      state = carbon.rothc.stepCarbonMonth(
        state,
        monthOf(input.months[month - 1], at.ground(year, month), at.end),
        soil,
      );
    ends.push({ year, stockTHa: carbon.rothc.activeCarbonTHa(state) + inertTHa });
  }
  return ends;
}

/** What each month of a plot brings and whether plants stand on it, worked out once for all three runs. */
function groundMonths(stands: readonly GroundStand[]): (year: number, month: number) => GroundMonth {
  const brought = new Map<number, Interval>();
  for (const { dayNumber: on, carbonTHa } of plantCarbon(stands)) {
    const key = monthKey(Number(dayAt(on).slice(0, 4)), Number(dayAt(on).slice(5, 7)));
    brought.set(key, intervals.addIntervals(brought.get(key) ?? nothing, carbonTHa));
  }
  const kept = new Map<number, GroundMonth>();
  return (year, month) => {
    const key = monthKey(year, month);
    const known = kept.get(key);
    if (known !== undefined) return known;
    const middle = dayNumber(dayOf(year, month, 15));
    let standingShare = 0;
    for (const one of stands)
      if (one.fromDay <= middle && one.toDay > middle)
        standingShare += one.stand.span.toShare - one.stand.span.fromShare;
    // Shares of beds sum to a half only to a hair.
    const found = { covered: standingShare >= 0.5 - 1e-6, plantTHa: brought.get(key) ?? nothing };
    kept.set(key, found);
    return found;
  };
}

interface GroundMonth {
  readonly covered: boolean;
  readonly plantTHa: Interval;
}

const nothing = intervals.exactly(0);

function monthKey(year: number, month: number): number {
  return 12 * year + month;
}

function monthOf(mean: MeanMonth | undefined, { covered, plantTHa }: GroundMonth, end: End): CarbonMonth {
  return {
    ...(mean ?? { tMeanC: 9, rainMm: 60, panMm: 60 }),
    covered,
    plantTHa: plantTHa[end],
    easyToResistantRatio: carbon.rothc.easyToResistant.arable,
    rottedTHa: 0,
  };
}
