/** What a plan costs, rule by rule, reckoned from the plan itself and not from the model that found it. */
import {
  pastOption,
  type RotationPlan,
  type RotationProblem,
  rotatedPlots,
  stabilityScore,
} from '../rotation-problem/problem.ts';
import { askedAres, bandAres, freeAres, splitParts } from './coupling.ts';

export const softRules = ['area', 'balance', 'order', 'cover', 'stability', 'split'] as const;
export type SoftRule = (typeof softRules)[number];

export type RuleScores = Readonly<Record<SoftRule, number>>;

export interface PlanScore {
  readonly totalScore: number;
  readonly byRule: RuleScores;
}

/** Courses of a plan by plot and year, as places in the list of courses. */
export function coursesOfPlan(problem: RotationProblem, plan: RotationPlan): readonly (readonly number[])[] {
  const courseOf = new Map(problem.options.map((one) => [one.id, problem.courses.indexOf(one.course)]));
  return plan.map((options) => options.map((id) => courseOf.get(id) ?? -1));
}

export function scoreOfPlan(problem: RotationProblem, plan: RotationPlan): PlanScore {
  const { weights } = problem;
  const scores: Record<SoftRule, number> = { area: 0, balance: 0, order: 0, cover: 0, stability: 0, split: 0 };
  const courses = coursesOfPlan(problem, plan);
  for (const [courseIndex, course] of problem.courses.entries()) {
    let beforeAres = 0;
    for (let year = 0; year < problem.years; year++) {
      const ares = aresOfCourse(problem, courses, { courseIndex, year });
      const asked = askedAres(problem, course, year);
      const [low, high] = bandAres(problem, course, year);
      scores.area += (weights.areaWeight * (Math.max(0, low - ares) + Math.max(0, ares - high))) / asked;
      const change = Math.max(0, Math.abs(ares - beforeAres) - freeAres(problem, course, year));
      if (year > 0) scores.balance += (weights.balanceWeight * change) / asked;
      beforeAres = ares;
    }
  }
  for (const plotIndex of rotatedPlots(problem)) addPlotScores(scores, problem, { plan, plotIndex });
  for (const [first, other] of splitParts(problem))
    for (let year = 0; year < problem.years; year++)
      if (courses[first]?.[year] !== courses[other]?.[year]) scores.split += weights.splitWeight;
  const totalScore = softRules.reduce((sum, rule) => sum + scores[rule], 0);
  return { totalScore, byRule: scores };
}

function aresOfCourse(
  problem: RotationProblem,
  courses: readonly (readonly number[])[],
  at: { readonly courseIndex: number; readonly year: number },
): number {
  let areaM2 = 0;
  for (const plotIndex of rotatedPlots(problem))
    if (courses[plotIndex]?.[at.year] === at.courseIndex) areaM2 += problem.plots[plotIndex]?.areaM2 ?? 0;
  return areaM2 / 100;
}

interface PlotOfPlan {
  readonly plan: RotationPlan;
  readonly plotIndex: number;
}

function addPlotScores(scores: Record<SoftRule, number>, problem: RotationProblem, { plan, plotIndex }: PlotOfPlan) {
  const plot = problem.plots[plotIndex];
  if (plot === undefined) return;
  const optionOf = (id: string | undefined) => problem.options.find((one) => one.id === id);
  let before = pastOption(problem, plot.history.at(-1) ?? '')?.course ?? null;
  for (const [year, id] of (plan[plotIndex] ?? []).entries()) {
    const option = optionOf(id);
    if (option === undefined) continue;
    const { course } = option;
    if (before !== null && problem.standardNext[before] !== course) scores.order += problem.weights.orderWeight;
    scores.cover += problem.weights.optionWeight * option.costScore + (plot.dearScore[course] ?? 0);
    scores.stability += stabilityScore(problem, plot, { year, course });
    before = course;
  }
}
