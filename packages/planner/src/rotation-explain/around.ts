/** One plot of a plan with all others held: what each of its sequences would change in the whole score. */

import type { ExtraScore } from '../rotation-model/best-path.ts';
import { coursesOfPlan } from '../rotation-model/score.ts';
import { type PlotGraph, plotGraph } from '../rotation-model/state-graph.ts';
import { type RotationPlan, type RotationProblem, rotatedPlots } from '../rotation-problem/problem.ts';
import { otherPlots } from '../rotation-solver/other-plots.ts';

export interface PlotAmongOthers {
  readonly graph: PlotGraph;
  readonly extra: ExtraScore;
  /** Courses the plan has here, as places in the list of courses. */
  readonly courses: readonly number[];
}

export function plotAmongOthers(problem: RotationProblem, plan: RotationPlan, plotIndex: number): PlotAmongOthers {
  const courses = coursesOfPlan(problem, plan);
  const others = otherPlots(problem);
  for (const index of rotatedPlots(problem)) if (index !== plotIndex) others.put(index, courses[index] ?? []);
  return { graph: plotGraph(problem, plotIndex), extra: others.extraFor(plotIndex), courses: courses[plotIndex] ?? [] };
}
