/**
 * Why a plot has no lawful sequence: a smallest set of rules that can't all be kept, and what lifting each of them frees.
 *
 * Rule    Rules are laid aside one after another, those of the rotation's structure first and pins last; one that changes nothing stays aside.
 * Holds   no sequence keeps the whole set; with any one member laid aside there is one. The past, and that a year carries one course, are
 *         given and never members.
 */

import { plotRules } from '../rotation-model/plot-rules.ts';
import { type PlotRule, rulesOfPlot } from '../rotation-model/rules.ts';
import { plotGraph } from '../rotation-model/state-graph.ts';
import type { RotationProblem } from '../rotation-problem/problem.ts';

export interface Conflict {
  readonly plotIndex: number;
  readonly rules: readonly PlotRule[];
}

/** What one rule of a conflict would free. */
export interface Lifted {
  readonly rule: PlotRule;
  /** True when all other rules of the plot can be kept without it; false when they conflict among themselves as well. */
  readonly isEnough: boolean;
  /** Lawful sequences of the plot once it is lifted. */
  readonly sequences: number;
}

/** Whether a sequence keeps all the rules given, whatever the plot's other rules say. */
export function canKeep(problem: RotationProblem, plotIndex: number, rules: readonly PlotRule[]): boolean {
  const plot = problem.plots[plotIndex];
  return plot !== undefined && plotGraph(problem, plotIndex, plotRules(problem, plot, rules)).isFeasible;
}

/** Null when the plot has a lawful sequence. */
export function conflictOf(problem: RotationProblem, plotIndex: number): Conflict | null {
  const plot = problem.plots[plotIndex];
  if (plot === undefined || !plot.isRotated) return null;
  let core = [...rulesOfPlot(problem, plot)];
  if (canKeep(problem, plotIndex, core)) return null;
  for (const rule of [...core]) {
    const without = core.filter((one) => one !== rule);
    if (!canKeep(problem, plotIndex, without)) core = without;
  }
  return { plotIndex, rules: core };
}

/** Several conflicts of a plot: each further one does without the member of the last that a grower can change soonest. */
export function conflictsOf(problem: RotationProblem, plotIndex: number, most: number): readonly Conflict[] {
  const found: Conflict[] = [];
  let asked = problem;
  while (found.length < most) {
    const conflict = conflictOf(asked, plotIndex);
    if (conflict === null) break;
    found.push(conflict);
    const pin = conflict.rules.find((rule) => rule.kind === 'pin');
    if (pin === undefined) break;
    asked = withoutPin(asked, plotIndex, pin.year);
  }
  return found;
}

function withoutPin(problem: RotationProblem, plotIndex: number, pinYear: number): RotationProblem {
  const plots = problem.plots.map((plot, index) =>
    index === plotIndex
      ? { ...plot, pins: Object.fromEntries(Object.entries(plot.pins).filter(([year]) => Number(year) !== pinYear)) }
      : plot,
  );
  return { ...problem, plots };
}

/** For each member of a conflict what lifting it alone would free. */
export function liftedOf(problem: RotationProblem, conflict: Conflict): readonly Lifted[] {
  const plot = problem.plots[conflict.plotIndex];
  if (plot === undefined) return [];
  return conflict.rules.map((rule) => {
    const others = rulesOfPlot(problem, plot).filter((one) => !isSameRule(one, rule));
    const graph = plotGraph(problem, conflict.plotIndex, plotRules(problem, plot, others));
    return { rule, isEnough: graph.isFeasible, sequences: pathCount(graph.arcsByYear) };
  });
}

function isSameRule(a: PlotRule, b: PlotRule): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function pathCount(arcsByYear: ReturnType<typeof plotGraph>['arcsByYear']): number {
  let counts = new Map<number, number>([[0, 1]]);
  for (const arcs of arcsByYear) {
    const next = new Map<number, number>();
    for (const arc of arcs) next.set(arc.toIndex, (next.get(arc.toIndex) ?? 0) + (counts.get(arc.fromIndex) ?? 0));
    counts = next;
  }
  return counts.get(0) ?? 0;
}
