/**
 * Plans a rotation: a good plan at once, then the proof, and better plans while the proof takes its time.
 *
 * Rule    First the descent; its plan is where the proof of the flow model starts. While that runs the descent goes on, and where it finds
 *         no more, neighbourhoods are solved: a few plots free in all years, the rest as in the best plan.
 * Holds   the score is reckoned from the plan itself; the bound is the solver's own; stopping at any time keeps the best plan. The hard rules
 *         of each plot stand in its graph, so a plan never breaks one; a plot without a lawful sequence is named before anything is solved.
 */

import { assignmentModel } from '../rotation-model/assignment-model.ts';
import { pathOfCourses } from '../rotation-model/best-path.ts';
import { type Courses, flowModel, type RotationModel } from '../rotation-model/flow-model.ts';
import { coursesOfPlan, type PlanScore, scoreOfPlan } from '../rotation-model/score.ts';
import { type PlotGraph, plotGraph } from '../rotation-model/state-graph.ts';
import { type RotationPlan, type RotationProblem, rotatedPlots } from '../rotation-problem/problem.ts';
import { type Descent, descent } from './descent.ts';
import { neighbourhoods } from './neighbourhood.ts';
import { chanceFrom } from './seeded.ts';
import type { SolveAnswer, Solver, StopSign } from './solver.ts';

export interface RotationAsk {
  readonly timeLimitS: number;
  /** Proof is enough when the plan is within this share of the bound; 0 asks for the optimum. */
  readonly gapShare: number;
  readonly seed?: number;
  readonly formulation?: 'flow' | 'assignment';
  readonly stop?: StopSign;
  readonly onBetter?: (so: Progress) => void;
}

export interface Progress {
  readonly elapsedS: number;
  readonly plan: RotationPlan;
  readonly totalScore: number;
  readonly boundScore: number;
  readonly gapShare: number;
}

export type RotationAnswer =
  | ({
      readonly kind: 'plan';
      readonly status: PlanStatus;
      readonly score: PlanScore;
      readonly failure: string | null;
    } & Progress)
  | { readonly kind: 'no-plan'; readonly elapsedS: number; readonly plots: readonly number[] };

/** `optimal` is proven to the gap asked for; `time` and `stopped` are the best so far; `unproven` means the solver failed and the plan still holds. */
export const planStatuses = ['optimal', 'time', 'stopped', 'unproven'] as const;
export type PlanStatus = (typeof planStatuses)[number];

/** Differences below this are rounding. */
const tinyScore = 1e-6;
/** By which the solver's own bound may be off when it says that it is done. */
const solverTolerance = 1e-4;
const firstDescentS = 1;
const firstStallS = 0.25;
const stallSPerPlot = 0.02;
const chunkS = 0.02;
const laterStallS = 0.5;

export async function solveRotation(
  problem: RotationProblem,
  ask: RotationAsk,
  solver: Solver,
): Promise<RotationAnswer> {
  const startedS = solver.nowS();
  const graphs = rotatedPlots(problem).map((plotIndex) => plotGraph(problem, plotIndex));
  const blocked = graphs.filter((graph) => !graph.isFeasible).map((graph) => graph.plotIndex);
  if (blocked.length > 0) return { kind: 'no-plan', elapsedS: solver.nowS() - startedS, plots: blocked };
  const search = new Search(problem, graphs, { ask, solver, startedS });
  await search.descend(
    Math.min(firstDescentS, ask.timeLimitS / 5),
    Math.min(firstStallS, stallSPerPlot * graphs.length),
  );
  return search.prove();
}

interface SearchWith {
  readonly ask: RotationAsk;
  readonly solver: Solver;
  readonly startedS: number;
}

class Search {
  readonly #problem: RotationProblem;
  readonly #graphs: readonly PlotGraph[];
  readonly #with: SearchWith;
  readonly #descent: Descent;
  readonly #chance: () => number;
  #boundScore = Number.NEGATIVE_INFINITY;

  constructor(problem: RotationProblem, graphs: readonly PlotGraph[], how: SearchWith) {
    this.#problem = problem;
    this.#graphs = graphs;
    this.#with = how;
    this.#chance = chanceFrom(how.ask.seed ?? 1);
    this.#descent = descent(problem, graphs, this.#chance);
    this.#tell();
  }

  /** Shakes until the time is over, or nothing better was found for a while. */
  async descend(mostS: number, stallS: number): Promise<void> {
    const { solver } = this.#with;
    const begunS = solver.nowS();
    let betterS = begunS;
    while (!this.#isOver() && solver.nowS() - begunS < mostS && solver.nowS() - betterS < stallS) {
      const chunkBegunS = solver.nowS();
      let isBetter = false;
      while (solver.nowS() - chunkBegunS < chunkS) isBetter = this.#descent.step() || isBetter;
      if (isBetter) {
        betterS = solver.nowS();
        this.#tell();
      }
      await solver.pause();
    }
  }

  async prove(): Promise<RotationAnswer> {
    const { ask, solver } = this.#with;
    const model = this.#wholeModel();
    let answer: SolveAnswer | null = null;
    const proof = solver
      .solve({
        model: model.linear,
        timeLimitS: this.#leftS(),
        gapShare: ask.gapShare,
        start: model.startOf(coursesOfPlan(this.#problem, this.#descent.bestPlan())),
        stop: { isStopped: () => this.#isOver() },
        onBetter: (found) => {
          this.#raiseBound(found.boundScore);
          if (found.values !== null) this.#take(model.coursesOf(found.values));
        },
      })
      .then((given) => {
        answer = given;
        return given;
      });
    await this.#improveWhile(() => answer === null);
    const given = await proof;
    this.#raiseBound(given.boundScore);
    if (given.values !== null) this.#take(model.coursesOf(given.values));
    return this.#answer(given);
  }

  #wholeModel(): RotationModel {
    return this.#with.ask.formulation === 'assignment'
      ? assignmentModel(this.#problem)
      : flowModel(this.#problem, { graphs: this.#graphs });
  }

  async #improveWhile(isProving: () => boolean): Promise<void> {
    const { solver } = this.#with;
    const next = neighbourhoods(this.#problem, this.#graphs, this.#chance);
    const goesOn = () => isProving() && !this.#isOver();
    const untilProven = { isStopped: () => !goesOn() };
    while (goesOn()) {
      await this.descend(laterStallS, laterStallS / 2);
      if (!goesOn()) return;
      const near = next(coursesOfPlan(this.#problem, this.#descent.bestPlan()));
      const found = await solver.solve({
        ...near.ask,
        timeLimitS: Math.max(0.1, Math.min(near.ask.timeLimitS, this.#leftS())),
        stop: untilProven,
      });
      if (found.values !== null) this.#take(near.coursesOf(found.values));
    }
  }

  /** Takes over courses found by the solver, each plot by its cheapest options, when they are better. */
  #take(courses: Courses): void {
    const paths = new Map<number, NonNullable<ReturnType<typeof pathOfCourses>>['arcs']>();
    for (const graph of this.#graphs) {
      const path = pathOfCourses(graph, courses[graph.plotIndex] ?? []);
      if (path === null) return; // not whole yet
      paths.set(graph.plotIndex, path.arcs);
    }
    const plan = this.#problem.plots.map((_, index) => (paths.get(index) ?? []).map((arc) => arc.option));
    const { totalScore } = scoreOfPlan(this.#problem, plan);
    if (totalScore >= this.#descent.bestScore() - tinyScore / 1000) return;
    this.#descent.adopt(paths, totalScore);
    this.#tell();
  }

  #raiseBound(boundScore: number): void {
    if (!(boundScore > this.#boundScore)) return;
    this.#boundScore = boundScore;
    this.#tell();
  }

  #progress(): Progress {
    const totalScore = this.#descent.bestScore();
    const boundScore = Math.min(this.#boundScore, totalScore);
    return {
      elapsedS: this.#with.solver.nowS() - this.#with.startedS,
      plan: this.#descent.bestPlan(),
      totalScore,
      boundScore,
      gapShare: gapOf(totalScore, boundScore),
    };
  }

  #answer(given: SolveAnswer): RotationAnswer {
    const so = this.#progress();
    const score = scoreOfPlan(this.#problem, so.plan);
    const isProven = this.#isProven() || (given.ending === 'optimal' && this.#isWithin(solverTolerance));
    const isStopped = this.#with.ask.stop?.isStopped() === true;
    const isFailed = given.ending === 'failed' || given.ending === 'infeasible';
    const unproven: PlanStatus = isFailed ? 'unproven' : isStopped ? 'stopped' : 'time';
    const status = isProven ? 'optimal' : unproven;
    return { kind: 'plan', status, score, failure: given.failure, ...so };
  }

  #tell(): void {
    this.#with.ask.onBetter?.(this.#progress());
  }

  #leftS(): number {
    const { ask, solver, startedS } = this.#with;
    return Math.max(0.1, ask.timeLimitS - (solver.nowS() - startedS));
  }

  #isProven(): boolean {
    return this.#isWithin(tinyScore);
  }

  /** Whether the best plan is as near to the bound as was asked for. */
  #isWithin(toleranceScore: number): boolean {
    const best = this.#descent.bestScore();
    return best - this.#boundScore <= Math.max(toleranceScore, this.#with.ask.gapShare * Math.abs(best));
  }

  #isOver(): boolean {
    const { ask, solver, startedS } = this.#with;
    return ask.stop?.isStopped() === true || solver.nowS() - startedS >= ask.timeLimitS || this.#isProven();
  }
}

/** Share by which the plan may be away from the best there is; infinite while no bound is known. */
export function gapOf(totalScore: number, boundScore: number): number {
  const off = Math.max(0, totalScore - boundScore);
  return off <= tinyScore ? 0 : off / Math.max(Math.abs(totalScore), tinyScore);
}
