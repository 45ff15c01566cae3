/**
 * What a daily record says of each month: counts of wet days after dry and wet ones, rain, and temperatures and radiation of dry and wet days.
 *
 * Source  plain counts, means and standard deviations (n - 1).
 * Checks  test/drawn-weather.test.ts
 * Holds   a day without a day before it counts for all but the chain.
 * Leaves out  nothing.
 */
import type { BySky, Spread } from '../generator.ts';
import { wetFromMm } from '../rain-chain.ts';

export interface RecordedDay {
  readonly dayNumber: number;
  readonly monthIndex: number;
  readonly tMaxC: number;
  readonly tMinC: number;
  readonly rainMm: number;
  readonly solarMjM2: number | null;
}

export interface SpreadBySky extends BySky {
  readonly all: Spread;
}

export interface MonthRecord {
  readonly dayCount: number;
  readonly wetDays: number;
  readonly wetRainMm: number;
  /** Sum of the logarithms of wet days' rain. */
  readonly wetLogarithms: number;
  readonly daysWetAfterDry: number;
  readonly daysWetAfterWet: number;
  readonly daysAfterDry: number;
  readonly daysAfterWet: number;
  readonly tMaxC: SpreadBySky;
  readonly tMinC: SpreadBySky;
  readonly solarMjM2: SpreadBySky;
  readonly solarDayCount: number;
}

/** Twelve months of a record in the order of days. */
export function monthRecords(days: readonly RecordedDay[]): readonly MonthRecord[] {
  const before = new Map(days.map((day) => [day.dayNumber, day.rainMm >= wetFromMm]));
  return Array.from({ length: 12 }, (_, monthIndex) => {
    const own = days.filter((day) => day.monthIndex === monthIndex);
    const wet = own.filter((day) => day.rainMm >= wetFromMm);
    const after = (wasWet: boolean, of: readonly RecordedDay[]) =>
      of.filter((day) => before.get(day.dayNumber - 1) === wasWet).length;
    const bright = own.filter((day) => day.solarMjM2 !== null);
    return {
      dayCount: own.length,
      wetDays: wet.length,
      wetRainMm: wet.reduce((sum, day) => sum + day.rainMm, 0),
      wetLogarithms: wet.reduce((sum, day) => sum + Math.log(day.rainMm), 0),
      daysWetAfterDry: after(false, wet),
      daysWetAfterWet: after(true, wet),
      daysAfterDry: after(false, own),
      daysAfterWet: after(true, own),
      tMaxC: bySky(own, (day) => day.tMaxC),
      tMinC: bySky(own, (day) => day.tMinC),
      solarMjM2: bySky(bright, (day) => day.solarMjM2 ?? 0),
      solarDayCount: bright.length,
    };
  });
}

export function skyOf({ dry, wet }: SpreadBySky): BySky {
  return { dry, wet };
}

function bySky(days: readonly RecordedDay[], value: (day: RecordedDay) => number): SpreadBySky {
  return {
    all: spreadOf(days.map(value)),
    dry: spreadOf(days.filter((day) => day.rainMm < wetFromMm).map(value)),
    wet: spreadOf(days.filter((day) => day.rainMm >= wetFromMm).map(value)),
  };
}

export function spreadOf(values: readonly number[]): Spread {
  const mean = values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, sd: Math.sqrt(squares / Math.max(1, values.length - 1)) };
}
