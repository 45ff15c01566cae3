/** The best sequences of one plot while all other plots stay as they are in the plan. */

import { pathOfCourses } from '../rotation-model/best-path.ts';
import type { Arc } from '../rotation-model/state-graph.ts';
import type { RotationPlan, RotationProblem } from '../rotation-problem/problem.ts';
import { plotAmongOthers } from './around.ts';

export interface PlotSequence {
  readonly options: readonly string[];
  readonly courses: readonly string[];
  /** What the whole plan would cost more with it than with what it has now; below zero where it would cost less. */
  readonly extraScore: number;
}

interface Begun {
  readonly score: number;
  readonly arcs: readonly Arc[];
  /** Its courses in one word, to tell sequences that differ in covers alone. */
  readonly key: string;
}

export interface PlotAsk {
  readonly plan: RotationPlan;
  readonly plotIndex: number;
  readonly most: number;
}

/** Best first; sequences that differ in covers alone count once, with the cheapest covers. */
export function bestSequences(problem: RotationProblem, { plan, plotIndex, most }: PlotAsk): readonly PlotSequence[] {
  const { graph, extra, courses } = plotAmongOthers(problem, plan, plotIndex);
  if (!graph.isFeasible) return [];
  let layer = new Map<number, readonly Begun[]>([[0, [{ score: 0, arcs: [], key: '' }]]]);
  for (const arcs of graph.arcsByYear) {
    const next = new Map<number, Begun[]>();
    for (const arc of arcs) {
      const step = arc.costScore + extra(arc);
      const reached = (layer.get(arc.fromIndex) ?? []).map((one) => ({
        score: one.score + step,
        arcs: [...one.arcs, arc],
        key: `${one.key} ${arc.courseIndex}`,
      }));
      next.set(arc.toIndex, [...(next.get(arc.toIndex) ?? []), ...reached]);
    }
    layer = new Map([...next].map(([state, begun]) => [state, cheapestOfEach(begun).slice(0, most)]));
  }
  const now = pathOfCourses(graph, courses);
  const nowScore = (now?.arcs ?? []).reduce((sum, arc) => sum + arc.costScore + extra(arc), 0);
  return (layer.get(0) ?? []).map((one) => ({
    options: one.arcs.map((arc) => arc.option),
    courses: one.arcs.map((arc) => problem.courses[arc.courseIndex] ?? ''),
    extraScore: one.score - nowScore,
  }));
}

function cheapestOfEach(begun: readonly Begun[]): readonly Begun[] {
  const sorted = [...begun].sort((a, b) => a.score - b.score);
  const seen = new Set<string>();
  return sorted.filter((one) => !seen.has(one.key) && seen.add(one.key));
}
