/**
 * Rests between hosts of one family or organism: which years a stand counts for, the gap, and the earliest lawful year.
 *
 * Source  the convention of reference/README.md: a stand counts for every year in which it stands on any day from 1 March to 31 October, first and
 *         last day included; gap = year of the later planting less the last such year of the earlier stand; a breach when it is under the years asked for.
 * Checks  test/return-interval.test.ts (eight plots worked by hand: wintered kale, mustard over new year, parsnips to the end of February)
 * Holds   a longer rest never makes a breach; the earliest year is lawful and the one before is not.
 * Leaves out  which stands are hosts and which rule is hard: the planner asks reference/intervals.csv.
 */
import { asMonthDay, type Day, dayInYear, type MonthDay, yearOf } from '@leywright/measures';

/** The days of a year on which a stand makes that year count. A farm may set its own. */
export interface CountingSeason {
  readonly from: MonthDay;
  readonly to: MonthDay;
}

export const usualSeason: CountingSeason = { from: asMonthDay('03-01'), to: asMonthDay('10-31') };

/** Years a stand counts for, in order; `out` is its last day on the ground. A stand of winter months alone counts for none. */
export function occupiedYears(from: Day, out: Day, season: CountingSeason = usualSeason): readonly number[] {
  const years: number[] = [];
  for (let year = yearOf(from); year <= yearOf(out); year++) {
    if (from <= dayInYear(season.to, year) && out >= dayInYear(season.from, year)) years.push(year);
  }
  return years;
}

/** The last year a stand counts for; null when it counts for none. */
export function lastOccupiedYear(from: Day, out: Day, season: CountingSeason = usualSeason): number | null {
  return occupiedYears(from, out, season).at(-1) ?? null;
}

export interface RestGap {
  readonly gapYears: number;
  readonly neededYears: number;
  /** Years too early; 0 when lawful. */
  readonly shortYears: number;
  readonly earliestYear: number;
}

/** The gap between a planting and the last year of an earlier host. */
export function restGap(plantingYear: number, lastYear: number, neededYears: number): RestGap {
  const gapYears = plantingYear - lastYear;
  return {
    gapYears,
    neededYears,
    shortYears: Math.max(0, neededYears - gapYears),
    earliestYear: lastYear + neededYears,
  };
}
