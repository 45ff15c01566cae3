/** Rules of one plot in the form the state graph steps by: numbers instead of names. */
import { type CourseOption, leftBy, type RotationPlot, type RotationProblem } from '../rotation-problem/problem.ts';
import { type PlotRule, rulesOfPlot } from './rules.ts';

/** Longer than any rotation: no ley that we know of. */
export const noLeyYears = 999;

export interface OptionRules {
  readonly id: string;
  /** Place of its course in the list of courses. */
  readonly courseIndex: number;
  readonly isContinuation: boolean;
  readonly isLey: boolean;
  readonly costScore: number;
  /** Places of its hosts in the list of organisms. */
  readonly hosts: readonly number[];
  readonly leaves: readonly number[];
}

export interface PlotRules {
  readonly years: number;
  readonly options: readonly OptionRules[];
  readonly pastOptions: readonly OptionRules[];
  readonly restYears: readonly number[];
  /** By course: whether it may follow another; null where anything may come before. */
  readonly mayFollow: readonly (ReadonlySet<number> | null)[];
  /** By course: the one that must follow; -1 for none. */
  readonly nextIndex: readonly number[];
  readonly mostSinceLeyYears: readonly number[];
  readonly isNever: readonly boolean[];
  /** By course: years in which it must not stand. */
  readonly barredYears: readonly ReadonlySet<number>[];
  /** By year: the course pinned; -1 for none. */
  readonly pinIndex: readonly number[];
}

/** The rules of a plot, or only those given. */
export function plotRules(
  problem: RotationProblem,
  plot: RotationPlot,
  rules: readonly PlotRule[] = rulesOfPlot(problem, plot),
): PlotRules {
  const organisms = Object.keys(problem.restYears);
  const courseIndex = (course: string) => problem.courses.indexOf(course);
  const optionRules = (one: CourseOption): OptionRules => ({
    id: one.id,
    courseIndex: courseIndex(one.course),
    isContinuation: one.isContinuation,
    isLey: problem.leyCourses.includes(one.course),
    costScore: problem.weights.optionWeight * one.costScore + (plot.dearScore[one.course] ?? 0),
    hosts: one.hosts.map((host) => organisms.indexOf(host)),
    leaves: leftBy(one).map((host) => organisms.indexOf(host)),
  });
  const made = {
    years: problem.years,
    options: problem.options.map(optionRules),
    pastOptions: (problem.pastOptions ?? []).map(optionRules),
    restYears: organisms.map(() => 0),
    mayFollow: problem.courses.map((): ReadonlySet<number> | null => null),
    nextIndex: problem.courses.map(() => -1),
    mostSinceLeyYears: problem.courses.map(() => noLeyYears),
    isNever: problem.courses.map(() => false),
    barredYears: problem.courses.map((): ReadonlySet<number> => new Set()),
    pinIndex: Array.from({ length: problem.years }, () => -1),
  };
  for (const rule of rules) {
    if (rule.kind === 'rest') made.restYears[organisms.indexOf(rule.organism)] = rule.restYears;
    else if (rule.kind === 'pin') made.pinIndex[rule.year] = courseIndex(rule.course);
    else addCourseRule(made, rule, courseIndex);
  }
  return made;
}

interface CourseRulesMade {
  readonly mayFollow: (ReadonlySet<number> | null)[];
  readonly nextIndex: number[];
  readonly mostSinceLeyYears: number[];
  readonly isNever: boolean[];
  readonly barredYears: ReadonlySet<number>[];
}

function addCourseRule(
  made: CourseRulesMade,
  rule: Exclude<PlotRule, { kind: 'rest' | 'pin' }>,
  courseIndex: (course: string) => number,
): void {
  const at = courseIndex(rule.course);
  if (rule.kind === 'follows') made.mayFollow[at] = new Set(rule.after.map(courseIndex));
  else if (rule.kind === 'followed-by') made.nextIndex[at] = courseIndex(rule.next);
  else if (rule.kind === 'since-ley') made.mostSinceLeyYears[at] = rule.mostYears;
  else if (rule.kind === 'barred') made.barredYears[at] = new Set(rule.years);
  else made.isNever[at] = true;
}
