/**
 * The other way round: these plots, these hands, how many households? For every year of the rotation, with what binds.
 *
 * Rule    A household's ground of a course is the ground of everything promised that grows in it; a course feeds as many households as its plot holds
 *         that ground, rounded down; a year feeds what its least course feeds; the farm promises what its least year feeds. Hours: field hours grow with
 *         the households (or with the ground, for leys), packing with the boxes, delivery with the weeks.
 * Source  arithmetic, in the farm's own figures.
 * Checks  test/reach/seven-plots.test.ts (seven unequal plots, worked by hand)
 * Holds   more ground never feeds fewer; null where a yield or the hours are not known.
 * Leaves out  the shape of plots; a crop on half a plot may bind before its course does.
 */
import type { Course } from '@leywright/book';
import type { CourseReach, Reach, ReachYear } from '../plan/supply.ts';
import { householdsOf } from '../promise/demand.ts';
import { placementOf } from '../rotation/lay-out.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import { type HouseholdGround, householdGround } from './household-ground.ts';
import { reachHours } from './reach-hours.ts';

/** Null for a farm without a rotation or a promise. */
export function reachOf(run: SupplyRun): Reach | null {
  const { rotation } = run.input.farm;
  if (rotation === null || rotation.courses.length === 0 || householdsOf(run.promise) === 0) return null;
  const ground = householdGround(run, rotation.courses);
  const firstYear = Math.max(run.input.year, rotation.firstYear);
  const years = rotation.courses.map((_, at) => reachYear(run, rotation.courses, { ground, year: firstYear + at }));
  const byLand = leastYear(years);
  const labour = reachHours(run, { courses: rotation.courses, ground, years, households: byLand?.households ?? null });
  // Hands alone say nothing while the ground is not known.
  const households = byLand === null ? null : Math.min(byLand.households, labour?.households ?? byLand.households);
  return {
    years,
    byLand,
    bestYear: bestYear(years),
    hours: labour?.hours ?? null,
    byLabour: labour?.households ?? null,
    households,
    binding: households === null ? 'unknown' : households === byLand?.households ? 'land' : 'labour',
    why: `reach/${run.input.year}`,
  };
}

function reachYear(
  run: SupplyRun,
  courses: readonly Course[],
  at: { ground: HouseholdGround; year: number },
): ReachYear {
  const reaches = courses.map((course) => courseReach(run, course, at));
  const bound = reaches.filter((reach) => reach.households !== null);
  const least = bound.reduce<CourseReach | null>(
    (min, reach) => (min === null || (reach.households ?? 0) < (min.households ?? 0) ? reach : min),
    null,
  );
  const isKnown = courses.every((course) => at.ground.get(course.id) !== null);
  return {
    year: at.year,
    courses: reaches,
    households: isKnown ? (least?.households ?? null) : null,
    binding: isKnown ? (least?.course ?? null) : null,
  };
}

function courseReach(
  run: SupplyRun,
  course: Course,
  { ground, year }: { ground: HouseholdGround; year: number },
): CourseReach {
  const plots = plotsInCourse(run, course.id, year);
  const netM2 = plots.reduce((sum, plot) => sum + plot.netM2, 0);
  const m2Household = ground.get(course.id) ?? 0;
  return {
    course: course.id,
    plot: plots[0]?.plot ?? null,
    netM2,
    m2Household,
    households: m2Household === 0 ? null : Math.floor(netM2 / m2Household + 1e-9),
  };
}

/** Plots on a course in a year: each plot moves one course on every year. The largest first. */
export function plotsInCourse(
  run: SupplyRun,
  course: string,
  year: number,
): readonly { readonly plot: string; readonly netM2: number }[] {
  const { farm, ground } = run.input;
  const rotation = farm.rotation;
  if (rotation === null) return [];
  const places = rotation.courses.length;
  const at = rotation.courses.findIndex((one) => one.id === course);
  const plots = farm.plots.filter((plot) => {
    const placed = placementOf(rotation, plot.id, year);
    if (placed !== null) return placed.course === course;
    const start = rotation.courses.findIndex((one) => one.id === plot.courseAtStart);
    return start >= 0 && (((start + year - rotation.firstYear) % places) + places) % places === at;
  });
  const net = new Map(ground.map((plot) => [plot.plot, plot.area.netM2]));
  return plots
    .map((plot) => ({ plot: plot.id as string, netM2: net.get(plot.id) ?? 0 }))
    .toSorted((a, b) => b.netM2 - a.netM2);
}

function leastYear(years: readonly ReachYear[]): Reach['byLand'] {
  let least: Reach['byLand'] = null;
  for (const year of years) {
    if (year.households === null || year.binding === null) return null;
    if (least !== null && least.households <= year.households) continue;
    const course = year.courses.find((one) => one.course === year.binding);
    least = { households: year.households, year: year.year, course: year.binding, plot: course?.plot ?? null };
  }
  return least;
}

function bestYear(years: readonly ReachYear[]): number | null {
  const known = years.filter((year) => year.households !== null);
  if (known.length === 0) return null;
  return known.reduce((best, year) => ((year.households ?? 0) > (best.households ?? 0) ? year : best)).year;
}
