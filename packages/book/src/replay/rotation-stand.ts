/** A stand that only the rotation proposes, found by its id. */
import { type Day, dayInYear, type MonthDay } from '@leywright/measures';
import type { Plot } from '../farm/land.ts';
import type { Course, CourseStand, Rotation, Stand } from '../farm/stand.ts';
import { type Draft, tableOf } from './draft.ts';

interface Proposed {
  readonly plot: Stand['plot'];
  readonly year: number;
  readonly course: Course;
  readonly stand: CourseStand;
}

/** Ids of proposed stands are made of plot, course year and key: `c-2027-carrots`. Null when the rotation proposes no such stand. */
export function standByRotation(draft: Draft, id: string): Stand | null {
  if (draft.rotation === null) return null;
  const proposed = proposedUnder(draft, draft.rotation, id);
  return proposed === null ? null : standOf(id as Stand['id'], proposed, draft.rotation.state);
}

/** A plot's id may hold years and hyphens of its own, so every way to cut the id is tried against the courses. */
function proposedUnder(draft: Draft, rotation: Rotation, id: string): Proposed | null {
  for (const cut of id.matchAll(/(?<=[^-])-(?=(\d{4})-)/g)) {
    const year = Number(cut[1]);
    const plot = tableOf(draft, 'plots').get(id.slice(0, cut.index));
    const course = plot === undefined ? undefined : courseOf(rotation, plot, year);
    const stand = course?.stands.find((one) => one.key === id.slice(cut.index + 6));
    if (plot !== undefined && course !== undefined && stand !== undefined)
      return { plot: plot.id, year, course, stand };
  }
  return null;
}

/** Each year every plot moves one course on, but where a placement says otherwise. */
function courseOf(rotation: Rotation, plot: Pick<Plot, 'id' | 'courseAtStart'>, year: number): Course | undefined {
  const placed = rotation.placed?.find((one) => one.plot === plot.id && one.year === year);
  if (placed !== undefined) return rotation.courses.find((course) => course.id === placed.course);
  const at = rotation.courses.findIndex((course) => course.id === plot.courseAtStart);
  if (at < 0 || year < rotation.firstYear) return undefined;
  return rotation.courses[(at + year - rotation.firstYear) % rotation.courses.length];
}

function standOf(id: Stand['id'], { plot, year, course, stand }: Proposed, state: Rotation['state']): Stand | null {
  const start = stand.plant ?? stand.sow;
  if (start === null) return null;
  const inYear = year + stand.startYearOffset;
  return {
    ...{ id, plot, state, course: course.id, courseYear: year, succession: null },
    ...{ span: stand.span, what: stand.what, kind: stand.kind, variety: stand.variety },
    sownOn: stand.sow === null ? null : sowDay(stand.sow, start, inYear),
    plantedOn: stand.plant === null ? null : dayInYear(stand.plant, inYear),
    from: dayInYear(start, inYear),
    to: dayInYear(stand.end, year + stand.endYearOffset),
    undersownIn: stand.undersownIn === null ? null : (`${plot}-${year}-${stand.undersownIn}` as Stand['id']),
    ...{ establishedShare: null, endedBy: null, reason: null, yieldTHa: null },
  };
}

/** Modules sown in autumn for planting in spring are sown the year before. */
function sowDay(sow: MonthDay, start: MonthDay, year: number): Day {
  return dayInYear(sow, sow > start ? year - 1 : year);
}
