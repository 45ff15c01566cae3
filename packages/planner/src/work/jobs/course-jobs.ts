/** Work that the farm counts by the course or the crop as a whole, in hours a hectare, spread over the weeks it takes place in. */

import type { Course } from '@leywright/book';
import { dayNumber, dayOf } from '@leywright/measures';
import type { PlotGround } from '../../plan/ground.ts';
import type { Job } from '../../plan/work.ts';
import { householdsOf } from '../../promise/demand.ts';
import { householdGround } from '../../reach/household-ground.ts';
import type { SupplyRun } from '../../supply/supply-run.ts';
import type { Rated } from '../rates.ts';
import { jobOf, type StandAt } from './job.ts';

/** Field work of courses lies between these months, north of the equator (common practice). */
const season = { fromMonth: 3, toMonth: 10 };

/** Plots on a course with hours of its own in the year, and the course. */
export function countedCourse(run: SupplyRun, plot: PlotGround): Course | null {
  const at = plot.courses.find((one) => one.year === run.input.year);
  const course = run.input.farm.rotation?.courses.find((one) => one.id === at?.course);
  return course === undefined || course.hoursPerHa === null ? null : course;
}

export function courseJobs(run: SupplyRun, plot: PlotGround, course: Course): readonly (Job | null)[] {
  const perHousehold = householdGround(run, run.input.farm.rotation?.courses ?? []).get(course.id) ?? 0;
  const plots = run.input.ground.filter((one) => countedCourse(run, one)?.id === course.id).length;
  const areaM2 = course.hoursFollow === 'ground' ? plot.area.netM2 : (perHousehold * householdsOf(run.promise)) / plots;
  const hours = ((course.hoursPerHa ?? 0) * areaM2) / 10_000;
  const { fromDay, weeks } = seasonOf(run);
  return spread(hours, weeks, 'courses.csv/hours_per_ha').map((rated, at) => {
    const job = jobOf({
      kind: 'whole-course',
      nth: `${course.id}-${plot.plot}-${run.input.year}-${at + 1}`,
      fromDay: fromDay + 7 * at,
      toDay: fromDay + 7 * at + 6,
      rated,
      name: course.name,
      areaM2,
    });
    return job === null ? null : { ...job, plot: plot.plot, letter: plot.letter };
  });
}

/** A crop for which the farm gives its own hours a hectare. */
export function wholeCropJobs(at: StandAt, hoursPerHa: number): readonly (Job | null)[] {
  const from = dayNumber(at.stand.from);
  const weeks = Math.max(1, Math.round((dayNumber(at.stand.to) - from) / 7));
  return spread((hoursPerHa * at.stand.areaM2) / 10_000, weeks, 'crops.csv/hours_per_ha').map((rated, nth) =>
    jobOf({ kind: 'whole-course', stand: at, nth: nth + 1, fromDay: from + 7 * nth, toDay: from + 7 * nth + 6, rated }),
  );
}

function seasonOf(run: SupplyRun): { readonly fromDay: number; readonly weeks: number } {
  const isSouth = run.input.farm.about.place.latDeg < 0;
  if (isSouth) return { fromDay: run.axis.dayOf(run.fromWeek), weeks: run.toWeek - run.fromWeek };
  const first = Math.max(run.fromWeek, run.axis.weekOf(dayNumber(dayOf(run.input.year, season.fromMonth, 1))));
  const last = Math.min(run.toWeek - 1, run.axis.weekOf(dayNumber(dayOf(run.input.year, season.toMonth, 31))));
  return { fromDay: run.axis.dayOf(first), weeks: last - first + 1 };
}

function spread(hours: number, weeks: number, basis: string): readonly Rated[] {
  const each = hours / weeks;
  return each === 0
    ? []
    : Array.from({ length: weeks }, () => ({ hours: { low: each, typ: each, high: each }, basis }));
}
