/**
 * Lays a rotation out as dated stands: what each plot carries in each course year, unless the grower said otherwise.
 *
 * Rule    In course year Y a plot is on the course (place of its first course + Y - first year), round and round, unless a placement names another. A stand begins on its planting
 *         (else sowing) day in Y + startYearOffset and leaves the ground on its end day in Y + endYearOffset. Its id is
 *         `<plot>-<Y>-<key>`; a stand of that id that is said or recorded stands in its place.
 * Holds   the same farm gives the same ids and days whatever the horizon; 29 February is the 28th in common years.
 */

import type { Course, CoursePlacement, CourseStand, Plot, Rotation, Stand } from '@leywright/book';
import { type Day, dayInYear, type StandId } from '@leywright/measures';

/** The course of a plot in a course year; null outside the rotation and before its first year. */
export function courseOf(
  rotation: Rotation | null,
  plot: Pick<Plot, 'id' | 'courseAtStart' | 'kind'>,
  courseYear: number,
): Course | null {
  if (rotation === null || plot.kind !== 'rotation') return null;
  const placed = placementOf(rotation, plot.id, courseYear);
  if (placed !== null) return rotation.courses.find((course) => course.id === placed.course) ?? null;
  if (plot.courseAtStart === null || courseYear < rotation.firstYear) return null;
  const start = rotation.courses.findIndex((course) => course.id === plot.courseAtStart);
  if (start < 0) return null;
  return rotation.courses[(start + courseYear - rotation.firstYear) % rotation.courses.length] ?? null;
}

/** Where a plot's course of a year is said, and not left to the order. */
export function placementOf(rotation: Rotation, plot: string, courseYear: number): CoursePlacement | null {
  return rotation.placed?.find((one) => one.plot === plot && one.year === courseYear) ?? null;
}

export function laidOutId(plot: string, courseYear: number, key: string): StandId {
  return `${plot}-${courseYear}-${key}` as StandId;
}

/** Stands the rotation puts on a plot in all course years up to a last one, but for those already said. */
export function laidOutStands(
  rotation: Rotation | null,
  plot: Plot,
  until: { readonly lastYear: number; readonly said: ReadonlySet<string> },
): readonly Stand[] {
  if (rotation === null) return [];
  const stands: Stand[] = [];
  for (let year = rotation.firstYear; year <= until.lastYear; year++) {
    const course = courseOf(rotation, plot, year);
    for (const one of course?.stands ?? []) {
      const id = laidOutId(plot.id, year, one.key);
      if (course === null || until.said.has(id)) continue;
      const state = placementOf(rotation, plot.id, year)?.state ?? rotation.state;
      const stand = laidOut(one, { plot, course, year, state });
      if (stand !== null && isOnFarm(plot, stand)) stands.push(stand);
    }
  }
  return stands;
}

interface CoursePlace {
  readonly plot: Plot;
  readonly course: Course;
  readonly year: number;
  readonly state: Rotation['state'];
}

/** The dated stands of a course on a plot in a year, whatever else stands there. */
export function courseStandsOn(course: Course, plot: Plot, year: number): readonly Stand[] {
  return course.stands.flatMap((one) => laidOut(one, { plot, course, year, state: 'pencil' }) ?? []);
}

/** Null for a course stand that is neither sown nor planted: the folder's reader says so. */
function laidOut(one: CourseStand, { plot, course, year, state }: CoursePlace): Stand | null {
  const start = one.plant ?? one.sow;
  if (start === null) return null;
  const startYear = year + one.startYearOffset;
  const from = dayInYear(start, startYear);
  const end = dayInYear(one.end, year + one.endYearOffset);
  return {
    id: laidOutId(plot.id, year, one.key),
    succession: null,
    plot: plot.id,
    span: one.span,
    what: one.what,
    kind: one.kind,
    variety: one.variety,
    state,
    sownOn: one.sow === null ? null : sowingDay(one, startYear),
    plantedOn: one.plant === null ? null : from,
    from,
    // An end before the start is the next year's: a course stand may cross new year without saying so.
    to: end > from ? end : dayInYear(one.end, year + one.endYearOffset + 1),
    undersownIn: one.undersownIn === null ? null : laidOutId(plot.id, year, one.undersownIn),
    course: course.id,
    courseYear: year,
    establishedShare: null,
    endedBy: null,
    reason: null,
    yieldTHa: null,
  };
}

/** Sown in trays in autumn and planted in spring: the sowing lies a year before. */
function sowingDay(one: CourseStand, startYear: number): Day | null {
  if (one.sow === null) return null;
  return dayInYear(one.sow, one.plant !== null && one.sow > one.plant ? startYear - 1 : startYear);
}

function isOnFarm(plot: Plot, stand: Stand): boolean {
  return (plot.to === null || stand.from < plot.to) && (plot.from === null || stand.from >= plot.from);
}
