/**
 * A quick search for good plans: plot by plot the cheapest sequence given all others, again and again, with a few plots shaken in between.
 *
 * Rule    Biology is lawful plot by plot, so any choice of one path for each plot is a plan. The best answer of one plot to the others is a
 *         shortest path. A shake takes two to five plots off, gives them sequences under scores blurred by chance, and lets all answer.
 * Holds   the same seed gives the same plans; the score of the best never rises. It proves nothing.
 */

import { type BestPath, bestPath } from '../rotation-model/best-path.ts';
import type { Arc, PlotGraph } from '../rotation-model/state-graph.ts';
import type { RotationPlan, RotationProblem } from '../rotation-problem/problem.ts';
import { type OtherPlots, otherPlots } from './other-plots.ts';
import type { Chance } from './seeded.ts';

export interface Descent {
  /** One shake and the answers to it. True when a better plan was found. */
  readonly step: () => boolean;
  readonly bestScore: () => number;
  readonly bestPlan: () => RotationPlan;
  /** Goes on from a plan found elsewhere, when it is better. */
  readonly adopt: (paths: Paths, score: number) => void;
}

/** By plot: the arcs it takes. */
export type Paths = ReadonlyMap<number, readonly Arc[]>;

const mostShaken = 5;
/** A score less than this better is the same. */
const leastBetter = 1e-9;

export function descent(problem: RotationProblem, graphs: readonly PlotGraph[], chance: Chance): Descent {
  const search = new DescentSearch(problem, graphs, chance);
  return {
    step: () => search.step(),
    bestScore: () => search.best.score,
    bestPlan: () =>
      problem.plots.map((_, plotIndex) => (search.best.paths.get(plotIndex) ?? []).map((arc) => arc.option)),
    adopt: (paths, score) => search.adopt({ paths, score }),
  };
}

interface Scored {
  readonly paths: Paths;
  readonly score: number;
}

class DescentSearch {
  readonly #graphs: readonly PlotGraph[];
  readonly #chance: Chance;
  readonly #others: OtherPlots;
  readonly #now = new Map<number, readonly Arc[]>();
  readonly #blurScore: number;
  #current: Scored;
  best: Scored;

  constructor(problem: RotationProblem, graphs: readonly PlotGraph[], chance: Chance) {
    this.#graphs = graphs;
    this.#chance = chance;
    this.#others = otherPlots(problem);
    this.#blurScore = problem.weights.orderWeight + problem.weights.balanceWeight / 4;
    for (const graph of graphs) this.#place(graph, bestPath(graph, this.#others.extraFor(graph.plotIndex)));
    this.#settle();
    this.best = this.#scored();
    this.#current = this.best;
  }

  /** One shake and the answers to it. A little worse is let pass now and then, so that the search does not stay where it is. */
  step(): boolean {
    this.#restore(this.#current.paths);
    this.#shake();
    this.#settle();
    const found = this.#scored();
    const worseScore = found.score - this.#current.score;
    const easeScore = 0.02 * this.best.score + 0.01;
    if (worseScore <= leastBetter || this.#chance() < Math.exp(-worseScore / easeScore)) this.#current = found;
    if (found.score >= this.best.score - leastBetter) return false;
    this.best = found;
    return true;
  }

  adopt(found: Scored): void {
    if (found.score >= this.best.score) return;
    this.best = found;
    this.#current = found;
  }

  #place(graph: PlotGraph, path: BestPath | null): void {
    if (path === null) throw new Error(`Plot ${graph.plotIndex} has no lawful sequence.`);
    this.#now.set(graph.plotIndex, path.arcs);
    this.#others.put(graph.plotIndex, coursesOf(path.arcs));
  }

  /** The best answer of one plot to all others. True when it is better than what it had. */
  #answer(graph: PlotGraph): boolean {
    const { plotIndex } = graph;
    const had = this.#now.get(plotIndex) ?? [];
    this.#others.take(plotIndex);
    const extra = this.#others.extraFor(plotIndex);
    const path = bestPath(graph, extra);
    const isBetter = path !== null && path.totalScore < scoreOf(had, extra) - leastBetter;
    if (isBetter) this.#place(graph, path);
    else this.#others.put(plotIndex, coursesOf(had));
    return isBetter;
  }

  #settle(): void {
    let isMoving = true;
    while (isMoving) {
      isMoving = false;
      for (const graph of shuffled(this.#graphs, this.#chance)) if (this.#answer(graph)) isMoving = true;
    }
  }

  #shake(): void {
    const count = Math.min(this.#graphs.length, 2 + Math.floor(this.#chance() * (mostShaken - 1)));
    const shaken = shuffled(this.#graphs, this.#chance).slice(0, count);
    for (const graph of shaken) this.#others.take(graph.plotIndex);
    for (const graph of shaken) {
      const extra = this.#others.extraFor(graph.plotIndex);
      this.#place(
        graph,
        bestPath(graph, (arc) => extra(arc) + this.#chance() * this.#blurScore),
      );
    }
  }

  #restore(paths: Paths): void {
    for (const [plotIndex, arcs] of paths) {
      this.#others.take(plotIndex);
      this.#now.set(plotIndex, arcs);
      this.#others.put(plotIndex, coursesOf(arcs));
    }
  }

  #scored(): Scored {
    let score = this.#others.coupledScore();
    for (const arcs of this.#now.values()) for (const arc of arcs) score += arc.costScore;
    return { paths: new Map(this.#now), score };
  }
}

function coursesOf(arcs: readonly Arc[]): readonly number[] {
  return arcs.map((arc) => arc.courseIndex);
}

function scoreOf(arcs: readonly Arc[], extra: (arc: Arc) => number): number {
  return arcs.reduce((sum, arc) => sum + arc.costScore + extra(arc), 0);
}

function shuffled<T>(items: readonly T[], chance: Chance): readonly T[] {
  const mixed = [...items];
  for (let at = mixed.length - 1; at > 0; at--) {
    const other = Math.floor(chance() * (at + 1));
    const here = mixed[at];
    const there = mixed[other];
    if (here === undefined || there === undefined) continue;
    mixed[at] = there;
    mixed[other] = here;
  }
  return mixed;
}
