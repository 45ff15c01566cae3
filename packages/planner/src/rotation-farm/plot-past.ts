/**
 * What a plot's own stands leave open for the years to plan: which course it comes from, what is fixed, what is barred and until when.
 *
 * Rule    Stands that were said or recorded, and those of courses before the first year, are fixed. A course is barred in a year in which one of its stands would want
 *         ground that a fixed stand holds, or would break a hard rest with one. Where a fixed stand covers the plot at midsummer and the
 *         order has nothing standing on there, the plot is held that year: what stands there stays.
 * Holds   the real days count, not what the course said: a crop that was lost asks for the rest it really leaves.
 */
import type { Course, Plot, Rotation } from '@leywright/book';
import { dayAt, dayNumber, dayOf, yearOf } from '@leywright/measures';
import { type GroundStand, groundStand } from '../ground/ground-stand.ts';
import { courseOf, courseStandsOn } from '../rotation/lay-out.ts';
import { type Apart, brokenBetween, mayEndEarlier, overlapsBetween, type PairSetting } from './course-pairs.ts';

export interface PlotPast {
  /** Course of the year before the first, and of the years before that; null where not known. Oldest first. */
  readonly courses: readonly (string | null)[];
  /** By course: years from the first, 0 on, in which it must not stand, and why. */
  readonly barred: Readonly<Record<string, readonly Barred[]>>;
  /** By year from the first: the course that is fixed. */
  readonly pins: Readonly<Record<string, string>>;
  /** Years from the first in which what stands there stays. */
  readonly heldYears: readonly number[];
}

export interface Barred {
  readonly year: number;
  readonly because: readonly Apart[];
}

export interface PastSetting {
  readonly rotation: Rotation;
  readonly firstYear: number;
  readonly years: number;
  readonly pair: Omit<PairSetting, 'plot' | 'year'>;
  readonly isSouth: boolean;
}

const pastYears = 12;
const coveredShare = 0.8;

export function plotPast(plot: Plot, stands: readonly GroundStand[], setting: PastSetting): PlotPast {
  const { firstYear, years, rotation } = setting;
  const since = dayNumber(dayOf(firstYear - pastYears, 1, 1));
  const fixed = stands.filter((one) => isFixed(one, firstYear) && one.toDay > since);
  const pins: Record<string, string> = {};
  for (const { stand } of fixed)
    if (stand.course !== null && stand.courseYear !== null && stand.courseYear >= firstYear)
      pins[String(stand.courseYear - firstYear)] = stand.course;
  const every = Array.from({ length: years }, (_, year) => year);
  const heldYears = every.filter((year) => pins[year] === undefined && isHeld(plot, fixed, { ...setting, year }));
  const barred = Object.fromEntries(
    rotation.courses.map((course) => [course.id, barredYears(course, plot, { fixed, setting })] as const),
  );
  const courses = Array.from({ length: pastYears }, (_, at) =>
    pastCourse(plot, stands, { rotation, year: firstYear - pastYears + at }),
  );
  return { courses, barred, pins, heldYears };
}

function isFixed(one: GroundStand, firstYear: number): boolean {
  return one.origin !== 'rotation' || (one.stand.courseYear ?? 0) < firstYear;
}

function pastCourse(
  plot: Plot,
  stands: readonly GroundStand[],
  { rotation, year }: { readonly rotation: Rotation; readonly year: number },
): string | null {
  const laidOut = courseOf(rotation, plot, year);
  if (laidOut !== null) return laidOut.id;
  const said = new Set(stands.filter((one) => one.stand.courseYear === year).flatMap((one) => one.stand.course ?? []));
  const [only] = said;
  return said.size === 1 && rotation.courses.some((course) => course.id === only) ? (only ?? null) : null;
}

/** Covered at midsummer by fixed stands of other years, where the order would have something new begin. */
function isHeld(
  plot: Plot,
  fixed: readonly GroundStand[],
  { rotation, firstYear, year, isSouth }: PastSetting & { readonly year: number },
): boolean {
  const agreed = courseOf(rotation, plot, firstYear + year);
  // A course that goes on with a ley is no news where that ley stands; where a perennial crop does, it is held.
  const isToGoOn = agreed !== null && agreed.stands.length === 0;
  const standing = isToGoOn ? fixed.filter((one) => one.stand.kind === 'crop') : fixed;
  return coverAtMidsummer(standing, firstYear + year, isSouth) >= coveredShare;
}

/** Share of the plot under stands of other course years on midsummer's day. */
export function coverAtMidsummer(stands: readonly GroundStand[], year: number, isSouth: boolean): number {
  const day = dayNumber(isSouth ? dayOf(year + 1, 1, 1) : dayOf(year, 7, 1));
  const spans = stands
    .filter(
      (one) =>
        (one.fromDay <= day && one.toDay > day && one.stand.courseYear !== year && one.stand.kind !== 'crop') ||
        isPerennial(one, day),
    )
    .map((one) => one.stand.span)
    .sort((a, b) => a.fromShare - b.fromShare);
  let share = 0;
  let reached = 0;
  for (const span of spans) {
    share += Math.max(0, span.toShare - Math.max(reached, span.fromShare));
    reached = Math.max(reached, span.toShare);
  }
  return share;
}

/** A crop that stood there a year before and stands there still. */
function isPerennial(one: GroundStand, day: number): boolean {
  return one.stand.kind === 'crop' && one.toDay > day && one.fromDay < day - 366;
}

interface AgainstFixed {
  readonly fixed: readonly GroundStand[];
  readonly setting: PastSetting;
}

function barredYears(course: Course, plot: Plot, { fixed, setting }: AgainstFixed): readonly Barred[] {
  const barred: Barred[] = [];
  const lastYear = Math.max(...fixed.map((one) => yearOf(dayAt(one.toDay))), setting.firstYear);
  for (let year = 0; year < setting.years; year++) {
    const because = apartFrom(course, plot, { fixed, setting, year });
    if (because.length > 0) barred.push({ year, because });
    // Rests only run out; once clear of the last fixed stand a course stays clear.
    else if (setting.firstYear + year > lastYear + 1) break;
  }
  return barred;
}

function apartFrom(course: Course, plot: Plot, at: AgainstFixed & { readonly year: number }): readonly Apart[] {
  const { setting, year } = at;
  const courseYear = setting.firstYear + year;
  const others = at.fixed.filter((one) => one.stand.courseYear !== courseYear);
  if (course.stands.length === 0) return leftEmpty(others, at);
  const said = new Set<string>(at.fixed.map((one) => one.stand.id));
  const laid = courseStandsOn(course, plot, courseYear)
    .filter((stand) => !said.has(stand.id))
    .map((stand) => groundStand(stand, 'rotation', setting.pair.crops));
  const rests = brokenBetween(others, laid, { plot, rests: setting.pair.rests, marks: setting.pair.marks });
  return [
    ...rests.map(
      (visit): Apart => ({ kind: 'rest', rule: visit.rule, name: visit.ruleName, infested: visit.infested }),
    ),
    ...overlapsBetween(others, laid)
      .filter((found) => found.earlier.origin !== 'rotation' || !mayEndEarlier(found))
      .map(({ earlier, later }): Apart => ({ kind: 'overlap', earlier: earlier.plant.name, later: later.plant.name })),
  ];
}

/** A course without stands of its own goes on with what stands there; in the first year that must be there already. */
function leftEmpty(
  fixed: readonly GroundStand[],
  { setting, year }: AgainstFixed & { readonly year: number },
): readonly Apart[] {
  if (year > 0 || coverAtMidsummer(fixed, setting.firstYear, setting.isSouth) >= coveredShare) return [];
  return [{ kind: 'nothing-stands' }];
}
