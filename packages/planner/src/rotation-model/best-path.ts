/** The cheapest lawful sequence of a plot, with what the other plots make of each course added to its own cost. */
import type { Arc, PlotGraph } from './state-graph.ts';

/** What an arc costs beside its own score. */
export type ExtraScore = (arc: Arc) => number;

export interface BestPath {
  readonly arcs: readonly Arc[];
  readonly totalScore: number;
}

/** Null when no sequence is lawful. An extra of infinity bars an arc. */
export function bestPath(graph: PlotGraph, extra: ExtraScore): BestPath | null {
  let scores: readonly number[] = [0];
  const into: (readonly (Arc | undefined)[])[] = [];
  for (const [year, arcs] of graph.arcsByYear.entries()) {
    const stateCount = graph.stateCounts[year + 1] ?? 0;
    const next: number[] = new Array(stateCount).fill(Number.POSITIVE_INFINITY);
    const cheapest: (Arc | undefined)[] = new Array(stateCount).fill(undefined);
    for (const arc of arcs) {
      const score = (scores[arc.fromIndex] ?? Number.POSITIVE_INFINITY) + arc.costScore + extra(arc);
      if (score < (next[arc.toIndex] ?? Number.POSITIVE_INFINITY)) {
        next[arc.toIndex] = score;
        cheapest[arc.toIndex] = arc;
      }
    }
    scores = next;
    into.push(cheapest);
  }
  const totalScore = scores[0] ?? Number.POSITIVE_INFINITY;
  if (!graph.isFeasible || !Number.isFinite(totalScore)) return null;
  const arcs: Arc[] = [];
  let state = 0;
  for (let year = into.length - 1; year >= 0; year--) {
    const arc = into[year]?.[state];
    if (arc === undefined) return null;
    arcs.unshift(arc);
    state = arc.fromIndex;
  }
  return { arcs, totalScore };
}

/** The cheapest options for given courses; null when these courses are not lawful here. */
export function pathOfCourses(graph: PlotGraph, courses: readonly number[]): BestPath | null {
  return bestPath(graph, (arc) => (courses[arc.year] === arc.courseIndex ? 0 : Number.POSITIVE_INFINITY));
}
