/**
 * Why a plot has no lawful sequence: a smallest set of rules that can't all be kept, and what lifting each of them frees.
 *
 * Rule    First the fewest years are sought in which the plot has no sequence. Then rules are laid aside one after another, those of the rotation's structure first and pins last; one that changes nothing stays aside.
 * Holds   no sequence keeps the whole set; with any one member laid aside there is one. The past, that a year carries one course, and rules that
 *         whoever asks holds for given, are never members.
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

/** Rules that nobody could lift, whatever was wished: they stay in every trial and are never said. */
export type IsGiven = (rule: PlotRule) => boolean;

/** Null when the plot has a lawful sequence. */
export function conflictOf(
  problem: RotationProblem,
  plotIndex: number,
  isGiven: IsGiven = () => false,
): Conflict | null {
  const plot = problem.plots[plotIndex];
  if (plot === undefined || !plot.isRotated) return null;
  const all = rulesOfPlot(problem, plot);
  const given = all.filter(isGiven);
  const own = all.filter((rule) => !isGiven(rule));
  if (canKeep(problem, plotIndex, all)) return null;
  const soonest = soonestConflict(problem, plotIndex, all);
  const near = smallestOf(soonest, plotIndex, { rules: own, given });
  return { plotIndex, rules: smallestOf(problem, plotIndex, { rules: near, given }) };
}

/** The same farm over the fewest years in which the plot already has no sequence: fewer rules have a part in it. */
function soonestConflict(problem: RotationProblem, plotIndex: number, rules: readonly PlotRule[]): RotationProblem {
  for (let years = 1; years < problem.years; years++) {
    const shorter = { ...problem, years };
    if (!canKeep(shorter, plotIndex, rules)) return shorter;
  }
  return problem;
}

interface OwnAndGiven {
  readonly rules: readonly PlotRule[];
  readonly given: readonly PlotRule[];
}

function smallestOf(problem: RotationProblem, plotIndex: number, { rules, given }: OwnAndGiven): readonly PlotRule[] {
  let core = rules;
  for (const rule of rules) {
    const without = core.filter((one) => one !== rule);
    if (!canKeep(problem, plotIndex, [...given, ...without])) core = without;
  }
  return core;
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
