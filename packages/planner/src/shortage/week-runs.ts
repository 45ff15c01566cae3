/** Runs of weeks that belong together: one finding for a gap, not one for each of its weeks. */
import type { BoxCalendarWeek } from '../promise/box-weeks.ts';

export interface WeekRun {
  readonly firstWeek: number;
  readonly lastWeek: number;
  /** Box weeks in it. */
  readonly weeks: readonly number[];
}

/** Groups sorted weeks; weeks without a box do not part a run. */
export function weekRuns(weeks: readonly number[], calendar: readonly BoxCalendarWeek[]): readonly WeekRun[] {
  const runs: number[][] = [];
  for (const week of [...new Set(weeks)].toSorted((a, b) => a - b)) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run !== undefined && last !== undefined && isNextBoxWeek(calendar, last, week)) run.push(week);
    else runs.push([week]);
  }
  return runs.map((run) => ({ firstWeek: run[0] ?? 0, lastWeek: run.at(-1) ?? 0, weeks: run }));
}

function isNextBoxWeek(calendar: readonly BoxCalendarWeek[], last: number, week: number): boolean {
  for (let between = last + 1; between < week; between += 1) if (calendar[between]?.closed === null) return false;
  return true;
}
