import { type Day, dayNumber, weeksInYear } from '@leywright/measures';
import type { Horizon } from '@leywright/planner';

/** A year of the ribbon: its first week counted from the ribbon's first Monday, and how many weeks it has. */
export interface RibbonYear {
  readonly isoYear: number;
  readonly fromWeek: number;
  readonly weeks: 52 | 53;
}

/** Weeks and parts of a week from the horizon's first Monday; where a day stands on a picture that counts weeks. */
export function weeksFromStart(horizon: Horizon, day: Day): number {
  return (dayNumber(day) - dayNumber(horizon.firstMonday)) / 7;
}

/** A list of weeks as people write it: 1 to 8, 41 to 52. */
export function runsOfWeeks(weeks: readonly number[]): string {
  const runs: { from: number; to: number }[] = [];
  for (const week of [...weeks].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && week === last.to + 1) last.to = week;
    else runs.push({ from: week, to: week });
  }
  return runs.map(({ from, to }) => (from === to ? `${from}` : `${from} to ${to}`)).join(', ');
}

/** The years of a ribbon with the week each begins in. */
export function ribbonYears({ fromYear, toYear }: Horizon): readonly RibbonYear[] {
  const years: RibbonYear[] = [];
  let fromWeek = 0;
  for (let isoYear = fromYear; isoYear <= toYear; isoYear += 1) {
    const weeks = weeksInYear(isoYear);
    years.push({ isoYear, fromWeek, weeks });
    fromWeek += weeks;
  }
  return years;
}
