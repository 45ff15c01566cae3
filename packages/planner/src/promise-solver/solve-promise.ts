/**
 * Solves a promise: first the linear plan, which is proven best, then whole beds by diving, then, when asked, a bound for whole beds.
 *
 * Holds   the objective of whole beds is never under the bound; a part that runs out of time says so and leaves the earlier answer standing.
 */
import { inWholeBeds, type PromiseModel, promiseModel } from '../promise-model/promise-model.ts';
import { type PromisePlan, planOfValues } from '../promise-model/promise-plan.ts';
import type { PromiseProblem } from '../promise-problem/problem.ts';
import type { Solver, StopSign } from '../rotation-solver/solver.ts';
import type { KeptAnswer, KeptModel, ModelKeeper } from './kept-model.ts';
import { diveToWholeBeds } from './whole-beds.ts';

export interface PromiseAsk {
  readonly timeLimitS: number;
  readonly wholeBeds: boolean;
  /** Seconds that may go into the bound of whole beds; none leaves the linear plan as the bound. */
  readonly proofS?: number;
  readonly proofGapShare?: number;
  readonly stop?: StopSign;
  /** The linear plan, as soon as there is one. */
  readonly onFirst?: (first: PromiseAnswer) => void;
}

export interface PromiseMachine {
  readonly keeper: ModelKeeper;
  readonly solver: Solver;
}

export interface PromiseAnswer {
  readonly status: KeptAnswer['ending'];
  readonly plan: PromisePlan | null;
  readonly totalScore: number;
  readonly boundScore: number;
  /** How far the plan may be from the best, as a share of it. */
  readonly gapShare: number;
  readonly elapsedS: number;
  readonly wholeBeds: WholeBeds | null;
  readonly failure: string | null;
}

export interface WholeBeds {
  readonly plan: PromisePlan;
  readonly totalScore: number;
  readonly boundScore: number;
  readonly gapShare: number;
  /** Until there was a plan in whole beds, and until its bound. */
  readonly elapsedS: number;
  readonly provenS: number;
}

export async function solvePromise(
  problem: PromiseProblem,
  ask: PromiseAsk,
  machine: PromiseMachine,
): Promise<PromiseAnswer> {
  const startedS = machine.solver.nowS();
  const model = promiseModel(problem);
  const kept = machine.keeper.keep(model.linear);
  try {
    const { answer, first } = await firstAnswer(model, kept, { ask, startedS, nowS: machine.solver.nowS });
    ask.onFirst?.(first);
    if (!ask.wholeBeds || answer.values === null) return first;
    return { ...first, wholeBeds: await wholeBedsOf(model, { kept, answer, ask, machine, startedS }) };
  } finally {
    await kept.close();
  }
}

async function firstAnswer(
  model: PromiseModel,
  kept: KeptModel,
  { ask, startedS, nowS }: { readonly ask: PromiseAsk; readonly startedS: number; readonly nowS: () => number },
): Promise<{ readonly answer: KeptAnswer; readonly first: PromiseAnswer }> {
  const stop = ask.stop === undefined ? {} : { stop: ask.stop };
  const answer = await kept.run({ timeLimitS: ask.timeLimitS, isCold: true, ...stop });
  const isOptimal = answer.ending === 'optimal';
  return {
    answer,
    first: {
      status: answer.ending,
      plan: answer.values === null ? null : planOfValues(model, answer.values),
      totalScore: answer.totalScore,
      boundScore: isOptimal ? answer.totalScore : Number.NEGATIVE_INFINITY,
      gapShare: isOptimal ? 0 : Number.POSITIVE_INFINITY,
      elapsedS: nowS() - startedS,
      wholeBeds: null,
      failure: answer.failure,
    },
  };
}

interface WholeAsk {
  readonly kept: KeptModel;
  readonly answer: KeptAnswer;
  readonly ask: PromiseAsk;
  readonly machine: PromiseMachine;
  readonly startedS: number;
}

async function wholeBedsOf(model: PromiseModel, whole: WholeAsk): Promise<WholeBeds | null> {
  const { kept, answer, ask, machine, startedS } = whole;
  const { nowS } = machine.solver;
  const dived = await diveToWholeBeds(model, { kept, answer }, { timeLimitS: ask.timeLimitS, nowS });
  if (dived?.values == null) return null;
  const elapsedS = nowS() - startedS;
  const best = { values: dived.values, totalScore: dived.totalScore, boundScore: answer.totalScore };
  const proven = (ask.proofS ?? 0) > 0 ? await proof(model, best, whole) : best;
  return {
    plan: planOfValues(model, proven.values),
    totalScore: proven.totalScore,
    boundScore: proven.boundScore,
    gapShare: (proven.totalScore - proven.boundScore) / Math.max(1e-9, Math.abs(proven.totalScore)),
    elapsedS,
    provenS: nowS() - startedS,
  };
}

interface Best {
  readonly values: Float64Array;
  readonly totalScore: number;
  readonly boundScore: number;
}

/** Raises the bound, and takes a better plan where one turns up on the way. */
async function proof(model: PromiseModel, best: Best, { ask, machine }: WholeAsk): Promise<Best> {
  const linear = inWholeBeds(model);
  const answer = await machine.solver.solve({
    model: linear,
    timeLimitS: ask.proofS ?? 0,
    gapShare: ask.proofGapShare ?? 0.01,
    start: Array.from(best.values, (value, column) => [column, value] as const),
    ...(ask.stop === undefined ? {} : { stop: ask.stop }),
  });
  const boundScore = Math.max(best.boundScore, answer.boundScore);
  const totalScore = answer.values === null ? Number.POSITIVE_INFINITY : scoreOf(linear.costWeight, answer.values);
  return answer.values !== null && totalScore < best.totalScore
    ? { values: answer.values, totalScore, boundScore }
    : { ...best, boundScore };
}

function scoreOf(costWeight: Float64Array, values: Float64Array): number {
  return values.reduce((sum, value, column) => sum + value * (costWeight[column] ?? 0), 0);
}
