/**
 * A linear model kept in a thread of its own, answered again after each change.
 *
 * Holds   answers come in the order asked; a stopped or late run ends its thread, and the next run starts one with the model and every change
 *         made so far, so that nothing asked is ever lost.
 */

import type { Worker } from 'node:worker_threads';
import type { KeptAnswer, KeptAsk, KeptModel, LinearModel, ModelChange, ModelKeeper } from '@leywright/planner';
import { startWorker } from './highs-thread.ts';

const lateMs = 3_000;
const graceMs = 1_500;
const stopLookMs = 50;

export function highsKeeper(): ModelKeeper {
  return { keep: keptModel };
}

function keptModel(model: LinearModel): KeptModel {
  const changes: ModelChange[] = [];
  let worker: Worker | null = null;
  let before: Promise<unknown> = Promise.resolve();
  const open = async (): Promise<Worker> => {
    if (worker !== null) return worker;
    const started = startWorker();
    worker = started;
    await told(started, { kept: 'open', model }, { waitMs: 60_000 });
    return started;
  };
  const runNow = async (ask: KeptAsk): Promise<KeptAnswer> => {
    const isNew = worker === null;
    const thread = await open();
    if (ask.change !== undefined) changes.push(ask.change);
    const change = isNew ? together(changes) : (ask.change ?? null);
    thread.ref();
    const answer = await ran(thread, { ...ask, isCold: isNew || ask.isCold === true }, change);
    thread.unref();
    if (answer.isSound) return answer.answer;
    worker = null;
    await thread.terminate();
    return answer.answer;
  };
  return {
    run: (ask) => {
      const answer = before.then(() => runNow(ask));
      before = answer.catch(() => undefined);
      return answer;
    },
    close: async () => {
      await before;
      await worker?.terminate();
      worker = null;
    },
  };
}

function together(changes: readonly ModelChange[]): ModelChange {
  return {
    columns: changes.flatMap((one) => one.columns ?? []),
    rows: changes.flatMap((one) => one.rows ?? []),
    costs: changes.flatMap((one) => one.costs ?? []),
    entries: changes.flatMap((one) => one.entries ?? []),
  };
}

interface Ran {
  readonly answer: KeptAnswer;
  readonly isSound: boolean;
}

async function ran(worker: Worker, ask: KeptAsk, change: ModelChange | null): Promise<Ran> {
  const stopFlag = new Int32Array(new SharedArrayBuffer(4));
  const job = { kept: 'run', change, timeLimitS: ask.timeLimitS, isCold: ask.isCold === true, stopFlag };
  const watched = { waitMs: ask.timeLimitS * 1000 + lateMs, stopFlag, stop: ask.stop };
  const said = await told(worker, job, watched);
  const none = { values: null, rowPriceWeight: null, totalScore: Number.POSITIVE_INFINITY };
  if (said.kind === 'kept')
    return { answer: { ...said, failure: said.ending === 'failed' ? 'no answer' : null }, isSound: true };
  if (said.kind === 'broken') return { answer: { ...none, ending: 'failed', failure: said.failure }, isSound: false };
  return { answer: { ...none, ending: said.kind, failure: null }, isSound: false };
}

type Said =
  | ({ readonly kind: 'kept' } & Omit<KeptAnswer, 'failure'>)
  | { readonly kind: 'broken'; readonly failure: string }
  | { readonly kind: 'time' }
  | { readonly kind: 'stopped' };

interface Watched {
  readonly waitMs: number;
  readonly stopFlag?: Int32Array;
  readonly stop?: KeptAsk['stop'];
}

/** Tells the thread something and waits for its answer, for the end of its time, or for a stop that it does not heed. */
function told(worker: Worker, job: unknown, watched: Watched): Promise<Said> {
  return new Promise((resolve) => {
    const startedMs = performance.now();
    let stoppedMs: number | null = null;
    const end = (said: Said) => {
      clearInterval(watch);
      worker.off('message', end).off('error', fail).off('exit', leave);
      resolve(said);
    };
    const fail = (error: Error) => end({ kind: 'broken', failure: `${error.name}: ${error.message.slice(0, 200)}` });
    const leave = () => end({ kind: 'broken', failure: 'the thread ended by itself' });
    const watch = setInterval(() => {
      const nowMs = performance.now();
      if (stoppedMs === null && watched.stop?.isStopped() === true) {
        stoppedMs = nowMs;
        if (watched.stopFlag !== undefined) Atomics.store(watched.stopFlag, 0, 1);
      }
      if (stoppedMs !== null && nowMs - stoppedMs > graceMs) end({ kind: 'stopped' });
      else if (nowMs - startedMs > watched.waitMs) end({ kind: 'time' });
    }, stopLookMs);
    worker.on('message', end).on('error', fail).on('exit', leave);
    worker.postMessage(job);
  });
}
