/** For each year of a plot: what every course there would cost, the plot's other years laid anew and the other plots as they are. */

import type { Arc, PlotGraph } from '../rotation-model/state-graph.ts';
import type { RotationPlan, RotationProblem } from '../rotation-problem/problem.ts';
import { plotAmongOthers } from './around.ts';

export interface CellChoice {
  readonly course: string;
  /** What the whole plan would cost more with it here. */
  readonly extraScore: number;
}

export interface CellWhy {
  readonly year: number;
  readonly course: string;
  /** All other courses that are lawful here, the cheapest first. */
  readonly others: readonly CellChoice[];
  /** Courses no lawful sequence of this plot has in this year. */
  readonly barred: readonly string[];
}

export interface CellAsk {
  readonly plan: RotationPlan;
  readonly plotIndex: number;
}

export function cellChoices(problem: RotationProblem, { plan, plotIndex }: CellAsk): readonly CellWhy[] {
  const { graph, extra, courses } = plotAmongOthers(problem, plan, plotIndex);
  const stepScore = (arc: Arc) => arc.costScore + extra(arc);
  const through = scoresThrough(graph, stepScore);
  return courses.map((courseIndex, year) => {
    const here = through[year] ?? new Map<number, number>();
    const ownScore = here.get(courseIndex) ?? Number.POSITIVE_INFINITY;
    const others = [...here]
      .filter(([index]) => index !== courseIndex)
      .map(([index, score]) => ({ course: problem.courses[index] ?? '', extraScore: score - ownScore }))
      .sort((a, b) => a.extraScore - b.extraScore);
    return {
      year,
      course: problem.courses[courseIndex] ?? '',
      others,
      barred: problem.courses.filter((_, index) => !here.has(index)),
    };
  });
}

/** By year and course: the score of the cheapest sequence that has the course in that year. */
function scoresThrough(graph: PlotGraph, stepScore: (arc: Arc) => number): readonly ReadonlyMap<number, number>[] {
  const years = graph.arcsByYear.length;
  const ahead: Map<number, number>[] = [];
  ahead[years] = new Map([[0, 0]]);
  for (let year = years - 1; year >= 0; year--) {
    const best = new Map<number, number>();
    for (const arc of graph.arcsByYear[year] ?? [])
      lower(best, arc.fromIndex, stepScore(arc) + (ahead[year + 1]?.get(arc.toIndex) ?? Number.POSITIVE_INFINITY));
    ahead[year] = best;
  }
  let behind = new Map<number, number>([[0, 0]]);
  return graph.arcsByYear.map((arcs, year) => {
    const through = new Map<number, number>();
    const reached = new Map<number, number>();
    for (const arc of arcs) {
      const so = (behind.get(arc.fromIndex) ?? Number.POSITIVE_INFINITY) + stepScore(arc);
      lower(reached, arc.toIndex, so);
      lower(through, arc.courseIndex, so + (ahead[year + 1]?.get(arc.toIndex) ?? Number.POSITIVE_INFINITY));
    }
    behind = reached;
    return through;
  });
}

function lower(scores: Map<number, number>, key: number, score: number): void {
  if (score < (scores.get(key) ?? Number.POSITIVE_INFINITY)) scores.set(key, score);
}
