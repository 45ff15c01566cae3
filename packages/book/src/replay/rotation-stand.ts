/** A stand that only the rotation proposes, found by its id. */
import { type Day, dayInYear, type MonthDay } from '@leywright/measures';
import type { Stand } from '../farm/stand.ts';
import type { Draft } from './draft.ts';
import { tableOf } from './draft.ts';

/** Ids of proposed stands are made of plot, course year and key: `c-2027-carrots`. Null when the rotation proposes no such stand. */
export function standByRotation(draft: Draft, id: string): Stand | null {
  const { rotation } = draft;
  if (rotation === null) return null;
  for (const course of rotation.courses) {
    for (const proposed of course.stands) {
      const start = proposed.plant ?? proposed.sow;
      const match = id.endsWith(`-${proposed.key}`)
        ? /^(.+)-(\d{4})$/.exec(id.slice(0, -proposed.key.length - 1))
        : null;
      const plot = tableOf(draft, 'plots').get(match?.[1] ?? '');
      if (match === null || plot === undefined || start === null) continue;
      const year = Number(match[2]);
      if (courseOfPlot(draft, plot.id, year) !== course.id) continue;
      const inYear = year + proposed.startYearOffset;
      return {
        id: id as Stand['id'],
        succession: null,
        plot: plot.id,
        span: proposed.span,
        what: proposed.what,
        kind: proposed.kind,
        variety: proposed.variety,
        state: rotation.state,
        sownOn: proposed.sow === null ? null : sowDay(proposed.sow, start, inYear),
        plantedOn: proposed.plant === null ? null : dayInYear(proposed.plant, inYear),
        from: dayInYear(start, inYear),
        to: dayInYear(proposed.end, year + proposed.endYearOffset),
        undersownIn:
          proposed.undersownIn === null ? null : (`${plot.id}-${year}-${proposed.undersownIn}` as Stand['id']),
        course: course.id,
        courseYear: year,
        establishedShare: null,
        endedBy: null,
        reason: null,
        yieldTHa: null,
      };
    }
  }
  return null;
}

/** Modules sown in autumn for planting in spring are sown the year before. */
function sowDay(sow: MonthDay, start: MonthDay, year: number): Day {
  return dayInYear(sow, sow > start ? year - 1 : year);
}

/** Each year every plot moves one course on. */
function courseOfPlot(draft: Draft, plotId: string, year: number): string | null {
  const { rotation } = draft;
  const start = tableOf(draft, 'plots').get(plotId)?.courseAtStart ?? null;
  const courses = rotation?.courses ?? [];
  const at = courses.findIndex((course) => course.id === start);
  if (rotation === null || at < 0 || year < rotation.firstYear) return null;
  return courses[(at + year - rotation.firstYear) % courses.length]?.id ?? null;
}
