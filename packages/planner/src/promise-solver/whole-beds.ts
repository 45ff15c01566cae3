/**
 * Whole beds by diving: what is sown and whole is fixed, then a third of the rest that lies nearest to whole, and the model is answered again, until
 * every succession has whole beds.
 *
 * Holds   what comes out keeps every limit of the model; where a batch cannot be rounded to its nearest, it is rounded down, which takes ground,
 *         hours and store from nobody.
 */
import type { PromiseModel } from '../promise-model/promise-model.ts';
import type { KeptAnswer, KeptModel, ModelChange } from './kept-model.ts';

export interface DiveAsk {
  readonly timeLimitS: number;
  readonly nowS: () => number;
  /** Share of what is not yet fixed that is fixed at each step. */
  readonly batchShare?: number;
}

const wholeTolerance = 1e-6;

interface Candidate {
  readonly at: number;
  readonly beds: number;
  readonly nearest: number;
  readonly off: number;
}

/** Null when time ran out before every succession was whole. */
export async function diveToWholeBeds(
  model: PromiseModel,
  from: { readonly kept: KeptModel; readonly answer: KeptAnswer },
  ask: DiveAsk,
): Promise<KeptAnswer | null> {
  const untilS = ask.nowS() + ask.timeLimitS;
  const open = new Set(model.problem.successions.flatMap((one, at) => (one.pinnedM2 === null ? [at] : [])));
  let { answer } = from;
  while (open.size > 0) {
    const values = answer.values;
    const leftS = untilS - ask.nowS();
    if (values === null || leftS <= 0) return null;
    const batch = nextBatch(candidates(model, values, open), ask);
    answer = await from.kept.run({ change: fixed(model, batch, (one) => one.nearest), timeLimitS: leftS });
    if (answer.ending === 'infeasible')
      answer = await from.kept.run({ change: fixed(model, batch, roundedDown), timeLimitS: leftS });
    for (const one of batch) open.delete(one.at);
  }
  return answer.ending === 'optimal' ? answer : null;
}

/** Frees what the dive has fixed, so that the model can be asked something else. */
export function freedBeds({ problem, places }: PromiseModel): ModelChange {
  return {
    columns: problem.successions.flatMap((one, at) =>
      one.pinnedM2 === null ? [{ placeIndex: places.beds[at] ?? 0, low: 0, high: Number.POSITIVE_INFINITY }] : [],
    ),
  };
}

function candidates(model: PromiseModel, values: Float64Array, open: ReadonlySet<number>): readonly Candidate[] {
  return [...open]
    .map((at) => {
      const beds = Math.max(0, values[model.places.beds[at] ?? 0] ?? 0);
      const nearest = nearestBeds(beds, model.problem.successions[at]?.leastBeds ?? 1);
      return { at, beds, nearest, off: Math.abs(beds - nearest) };
    })
    .toSorted((a, b) => a.off - b.off || a.at - b.at);
}

function nearestBeds(beds: number, leastBeds: number): number {
  const nearest = Math.round(beds);
  if (nearest >= leastBeds) return nearest;
  return beds < leastBeds / 2 ? 0 : leastBeds;
}

/** What is not sown stays free until all else is whole: it may yet make up for what rounding takes. */
function nextBatch(sorted: readonly Candidate[], { batchShare = 1 / 3 }: DiveAsk): readonly Candidate[] {
  const broken = sorted.filter((one) => one.off > wholeTolerance);
  if (broken.length === 0) return sorted;
  const whole = sorted.filter((one) => one.off <= wholeTolerance && one.nearest > 0);
  return [...whole, ...broken.slice(0, Math.ceil(broken.length * batchShare))];
}

function roundedDown({ beds, nearest }: Candidate): number {
  return nearest <= beds + wholeTolerance ? nearest : Math.max(0, Math.min(Math.floor(beds), nearest - 1));
}

function fixed({ places }: PromiseModel, batch: readonly Candidate[], bedsOf: (one: Candidate) => number): ModelChange {
  return {
    columns: batch.map((one) => {
      const count = bedsOf(one);
      return { placeIndex: places.beds[one.at] ?? 0, low: count, high: count };
    }),
  };
}
