/** More work than hands, run of weeks by run of weeks; and hands whose hours nobody wrote down. */
import { addDays, mondayOf } from '@leywright/measures';
import { levelWork } from '../hands/level.ts';
import type { Finding } from '../plan/finding.ts';
import type { Work, WorkWeek } from '../plan/work.ts';
import { mend, supplyFinding } from '../shortage/say.ts';

/** Hours over the hands by less than this share are not told: no table knows a week's work so nearly. */
const overShare = 0.05;
/** How long levelling may look before a finding is made: it is asked for with every change of the plan. */
const searchedSteps = 500;

export function workFindings(work: Work, today: string): readonly Finding[] {
  if (work.yearH === 0) return [];
  if (work.weeks.every((week) => week.handsH === null)) {
    return [
      supplyFinding('hands-unknown', {
        gravity: 'look',
        place: { year: work.year },
        figures: { hoursH: work.yearH, year: work.year },
        mend: [mend('write-hours')],
      }),
    ];
  }
  const runs = runsOver(work.weeks);
  if (runs.length === 0) return [];
  const levelled = new Map(levelWork(work, { mostSteps: searchedSteps }).weeks.map((week) => [week.week, week]));
  return runs.map((run) =>
    overHands(work, run, { today, canBeLevelled: run.every((week) => !isOver(levelled.get(week.week))) }),
  );
}

function isOver(week: { readonly hoursH: number; readonly handsH: number | null } | undefined): boolean {
  return week !== undefined && week.handsH !== null && week.hoursH > week.handsH * (1 + overShare);
}

function runsOver(weeks: readonly WorkWeek[]): readonly (readonly WorkWeek[])[] {
  const runs: WorkWeek[][] = [];
  let open: WorkWeek[] | null = null;
  for (const week of weeks) {
    if (!isOver({ hoursH: week.hours.typ, handsH: week.handsH })) open = null;
    else if (open !== null) open.push(week);
    else {
      open = [week];
      runs.push(open);
    }
  }
  return runs;
}

function overHands(
  work: Work,
  run: readonly WorkWeek[],
  { today, canBeLevelled }: { readonly today: string; readonly canBeLevelled: boolean },
): Finding {
  const first = run[0];
  const worst = run.reduce((most, week) =>
    week.hours.typ - (week.handsH ?? 0) > most.hours.typ - (most.handsH ?? 0) ? week : most,
  );
  const last = run.at(-1) ?? worst;
  const from = mondayOf((first ?? worst).week);
  const to = addDays(mondayOf(last.week), 6);
  const overH = run.reduce((sum, week) => sum + week.hours.typ - (week.handsH ?? 0), 0);
  return supplyFinding('hours-over-hands', {
    // What moving jobs inside their days puts right is only worth a look.
    gravity: to < today ? 'note' : canBeLevelled ? 'look' : 'put-right',
    place: { week: worst.week, year: work.year, from, to },
    figures: {
      week: worst.week,
      hoursH: worst.hours.typ,
      handsH: worst.handsH,
      weeks: run.length > 1 ? run.length : null,
      lowH: worst.hours.low,
      highH: worst.hours.high,
      overH,
    },
    mend: [
      mend('move-what-can-wait', { week: worst.week, hoursH: worst.hours.typ - (worst.handsH ?? 0) }),
      mend('find-hands', { from, to, hoursH: overH }),
    ],
    why: worst.why,
  });
}
