/**
 * A plot's ground over the plan's years by the daily account: sums of a year, with the ends between which they lie.
 *
 * Rule    Three runs a part. The usual one takes the middle of what is not known; the lean one takes the least nitrogen in the ground at the start, a fifth less
 *         humus, and the least share from the air the tables give; the rich one the most. A figure lies between the least and the greatest of the three, but for gas,
 *         whose band is that of its rates (agronomy nitrogen/denitrification.ts and mulch-ammonia.ts). Years are counted by whole weeks, each in the year most
 *         of its days lie in.
 * Leaves out  the doubt of yields and of the weather to come.
 */
import { nitrogenModels, type SoilColumn, type SoilPart, type SoilRun, type SoilWeather } from '@leywright/agronomy';
import { dayNumber, dayOf, type Interval } from '@leywright/measures';
import { makePartRuns, type PartRuns, stepDays } from './part-runs.ts';
import type { PlotPart } from './plot-parts.ts';

export interface AccountYear {
  readonly year: number;
  /** Sum of a flow over the year, or a stock at its end. */
  readonly of: (column: SoilColumn) => Interval;
  /** A stock on the last day before the year. */
  readonly before: (column: SoilColumn) => Interval;
  /** Flows of the year summed by sign, run by run, so that what one loses the other has. */
  readonly balance: (terms: readonly { readonly column: SoilColumn; readonly sign: 1 | -1 }[]) => Interval;
}

/** What is not known, and its ends: shares of the usual figure. */
const humusBand = { low: 0.8, high: 1.2 } as const;
const startBandKgHa = { low: 25, high: 100 } as const;
/** The tables' shares from the air lie about this far either side of their middle. */
const airBand = { low: 0.85, high: 1.15 } as const;

export function accountYear(
  parts: readonly PlotPart[],
  at: { readonly year: number; readonly weather: SoilWeather; readonly runs?: PartRuns },
): AccountYear {
  const runs = at.runs ?? makePartRuns(1);
  const ends = (['low', 'typ', 'high'] as const).map((end) =>
    parts.map(({ span, part }) => ({
      width: span.toShare - span.fromShare,
      run: runs.runOf(end === 'typ' ? part : atEnd(part, end), at.weather),
    })),
  );
  const interval = (ask: (run: SoilRun) => number): Interval => {
    const [low = 0, typ = 0, high = 0] = ends.map((plot) =>
      plot.reduce((sum, { width, run }) => sum + width * ask(run), 0),
    );
    return { low: Math.min(low, typ, high), typ, high: Math.max(low, typ, high) };
  };
  const { year } = at;
  const of = (column: SoilColumn) =>
    banded(
      column,
      interval((run) => (isStock(column) ? lastOf(run, column, year) : sumOf(run, column, year))),
    );
  return {
    year,
    of,
    before: (column) => interval((run) => lastOf(run, column, year - 1)),
    balance: (terms) => {
      const all = interval((run) => terms.reduce((sum, { column, sign }) => sum + sign * sumOf(run, column, year), 0));
      const gases = terms.filter(({ column }) => isGas(column)).map(({ column }) => of(column));
      const more = gases.reduce((sum, gas) => sum + gas.high - gas.typ, 0);
      const less = gases.reduce((sum, gas) => sum + gas.typ - gas.low, 0);
      return { low: all.low - more, typ: all.typ, high: all.high + less };
    },
  };
}

function atEnd(part: SoilPart, end: 'low' | 'high'): SoilPart {
  return {
    ...part,
    id: `${part.id}/${end}`,
    profile: { ...part.profile, totalNPct: part.profile.totalNPct * humusBand[end] },
    startMineralNKgHa: startBandKgHa[end],
    stands: part.stands.map((stand) => ({
      ...stand,
      habit: { ...stand.habit, airShare: Math.min(1, stand.habit.airShare * airBand[end]) },
    })),
  };
}

function isGas(column: SoilColumn): boolean {
  return column === 'denitrifiedNKgHa' || column === 'ammoniaNKgHa';
}

/** Gases have the band of their rates about the usual figure. */
function banded(column: SoilColumn, { low, typ, high }: Interval): Interval {
  const { potentialKgHaDay } = nitrogenModels.denitrification;
  if (column === 'denitrifiedNKgHa')
    return { low: low * potentialKgHaDay.low, typ, high: high * potentialKgHaDay.high };
  if (column === 'ammoniaNKgHa') return { low: low / 3, typ, high: high * (10 / 3) };
  return { low, typ, high };
}

const stocks = new Set<SoilColumn>([
  'waterMm',
  'mineralNKgHa',
  'topMineralNKgHa',
  'plantNKgHa',
  'residueNKgHa',
  'humusNKgHa',
]);

function isStock(column: SoilColumn): boolean {
  return stocks.has(column);
}

function sumOf(run: SoilRun, column: SoilColumn, year: number): number {
  const values = run.column(column);
  const [from, to] = rowsOf(run, year);
  let sum = 0;
  for (let row = from; row < to; row++) sum += values[row] ?? 0;
  return sum;
}

function lastOf(run: SoilRun, column: SoilColumn, year: number): number {
  const [, to] = rowsOf(run, year);
  return run.column(column)[Math.max(0, to - 1)] ?? 0;
}

/** First row of a year and the first after it: a row counts in the year of its fourth day. */
function rowsOf(run: SoilRun, year: number): readonly [number, number] {
  const rowAt = (first: number) => {
    const row = Math.ceil((dayNumber(dayOf(first, 1, 1)) - run.startDayNumber - 3) / stepDays);
    return Math.min(run.steps, Math.max(0, row));
  };
  return [rowAt(year), rowAt(year + 1)];
}
