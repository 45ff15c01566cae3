/**
 * Rests between courses as the planner's organisms: each is left by one course, met by those that must keep so many years away from it.
 *
 * Holds   a plot with recorded organisms has the longer rests of its own marks; others have none of them.
 */
import type { CourseOption } from '../rotation-problem/problem.ts';
import { type CoursePair, coursePairs } from './course-pairs.ts';
import { pairSetting, type RotationFarm } from './rotation-farm.ts';

export interface CourseRules {
  readonly options: readonly CourseOption[];
  /** One year, which asks for nothing: what a plot asks for is its own longer rest. */
  readonly restYears: Readonly<Record<string, number>>;
  readonly restsOn: (plot: string) => Readonly<Record<string, number>>;
  /** The pairs behind an organism of the problem, as they are on a plot. */
  readonly pairsOf: (plot: string, organism: string) => readonly CoursePair[];
}

export function courseRules(made: RotationFarm): CourseRules {
  const { rotation, firstYear, setting } = made;
  const pairsByMarks = new Map<string, readonly CoursePair[]>();
  const pairsOn = new Map<string, readonly CoursePair[]>();
  for (const { plot, marks } of made.plots) {
    const key = JSON.stringify(marks.map(({ organism, span }) => [organism, span]));
    const pairs =
      pairsByMarks.get(key) ?? coursePairs(rotation.courses, { plot, year: firstYear, ...pairSetting(setting, marks) });
    pairsByMarks.set(key, pairs);
    pairsOn.set(plot.id, pairs);
  }
  const all = [...pairsByMarks.values()].flat();
  const organisms = [...new Set(all.map(organismOf))].sort();
  return {
    options: rotation.courses.map((course) => ({
      id: course.id,
      course: course.id,
      hosts: [...new Set(all.filter((pair) => pair.later === course.id).map(organismOf))].sort(),
      leaves: [...new Set(all.filter((pair) => pair.earlier === course.id).map(organismOf))].sort(),
      isContinuation: false,
      costScore: 0,
    })),
    restYears: Object.fromEntries(organisms.map((organism) => [organism, 1])),
    restsOn: (plot) => Object.fromEntries((pairsOn.get(plot) ?? []).map((pair) => [organismOf(pair), pair.needYears])),
    pairsOf: (plot, organism) => (pairsOn.get(plot) ?? []).filter((pair) => organismOf(pair) === organism),
  };
}

/** One for each ordered pair: what the earlier leaves for the later. Pairs alike in years on all plots could share one; they are told apart by name. */
function organismOf(pair: CoursePair): string {
  return `${pair.earlier} → ${pair.later}`;
}
