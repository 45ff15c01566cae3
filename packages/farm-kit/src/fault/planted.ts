/** What a planted fault is: the farm with it in, records that bring it, and the place where it must be reported. */
import type { Entry, Farm, Stand } from '@leywright/book';
import { asDay, type Day } from '@leywright/measures';
import type { Place } from '@leywright/planner';
import { course, rotation } from '../build/stand.ts';
import type { Chance } from '../make/chance.ts';

export interface Planted {
  readonly farm: Farm;
  /** Records received before the farm is planned; none for faults of the plan. */
  readonly entries: readonly Entry[];
  /** Where it is to be found: every key given here must be so in the finding's place. */
  readonly place: Place;
}

export type Planter = (farm: Farm, chance: Chance) => Planted;

/** A fault that needs no records. */
export function planted(farm: Farm, place: Place): Planted {
  return { farm, entries: [], place };
}

export function withStands(farm: Farm, stands: readonly Stand[]): Farm {
  return { ...farm, stands: [...farm.stands, ...stands] };
}

export interface CourseYear {
  readonly plot: string;
  readonly year: number;
}

/** Years in which a plot is on a course, from one year to another. */
export function yearsOnCourse(farm: Farm, courseId: string, from: number, to: number): readonly CourseYear[] {
  const turning = farm.rotation ?? rotation(from, [course('none')]);
  const at = turning.courses.findIndex((one) => one.id === courseId);
  return farm.plots.flatMap((plot) => {
    const start = turning.courses.findIndex((one) => one.id === plot.courseAtStart);
    if (start < 0) return [];
    return Array.from({ length: to - from + 1 }, (_, index) => from + index)
      .filter((year) => (start + year - turning.firstYear) % turning.courses.length === at)
      .map((year) => ({ plot: plot.id, year }));
  });
}

/** A day of the year that many years on. */
export function inYear(year: number, monthDay: string): Day {
  return asDay(`${year}-${monthDay}`);
}
