/**
 * The solver seam in Node: HiGHS in worker threads, so that no one who asks is ever blocked.
 *
 * Holds   a stopped run gives what it has within the time of grace, if need be by ending its thread; a thread whose machine code aborted is
 *         never used again, and the run is tried once more in a fresh one; a thread is renewed after some runs, because the memory it
 *         has taken never shrinks.
 */
import type { Worker } from 'node:worker_threads';
import type { SolveAnswer, SolveAsk, Solver } from '@leywright/planner';
import { startWorker } from './highs-thread.ts';

const graceMs = 1_500;
const lateMs = 3_000;
const stopLookMs = 50;
const runsPerWorker = 25;

export interface HighsSolver extends Solver {
  /** Ends all threads. The solver can be used again afterwards. */
  readonly close: () => Promise<void>;
}

interface Seat {
  readonly worker: Worker;
  runs: number;
}

export function highsSolver(): HighsSolver {
  const idle: Seat[] = [];
  const take = (): Seat => idle.pop() ?? { worker: startWorker(), runs: 0 };
  const giveBack = (seat: Seat) => {
    if (seat.runs < runsPerWorker) idle.push(seat);
    else void seat.worker.terminate();
  };
  const runOnce = async (ask: SolveAsk): Promise<SolveAnswer> => {
    const seat = take();
    seat.runs += 1;
    seat.worker.ref();
    const ran = await runOn(seat.worker, ask);
    seat.worker.unref();
    if (ran.isWorkerSound) giveBack(seat);
    else await seat.worker.terminate();
    return ran.answer;
  };
  return {
    solve: async (ask) => {
      const first = await runOnce(ask);
      if (first.ending !== 'failed' || first.values !== null) return first;
      return runOnce(ask);
    },
    nowS: () => performance.now() / 1000,
    pause: () => new Promise((resolve) => setImmediate(resolve)),
    close: async () => {
      await Promise.all(idle.splice(0).map((seat) => seat.worker.terminate()));
    },
  };
}

type Message =
  | { readonly kind: 'better'; readonly values: Float64Array | null; readonly boundScore: number }
  | ({ readonly kind: 'done' } & Omit<SolveAnswer, 'failure'>)
  | { readonly kind: 'broken'; readonly failure: string };

interface Ran {
  readonly answer: SolveAnswer;
  readonly isWorkerSound: boolean;
}

function runOn(worker: Worker, ask: SolveAsk): Promise<Ran> {
  return new Promise((resolve) => {
    const stopFlag = new Int32Array(new SharedArrayBuffer(4));
    const best: { values: Float64Array | null; boundScore: number } = {
      values: null,
      boundScore: Number.NEGATIVE_INFINITY,
    };
    const startedMs = performance.now();
    let stoppedMs: number | null = null;
    const end = (ran: Ran) => {
      clearInterval(watch);
      worker.off('message', hear).off('error', fail).off('exit', leave);
      resolve(ran);
    };
    const unsound = (ending: SolveAnswer['ending'], failure: string | null) =>
      end({ answer: { ending, ...best, failure }, isWorkerSound: false });
    const watch = setInterval(() => {
      const nowMs = performance.now();
      if (stoppedMs === null && ask.stop?.isStopped() === true) {
        stoppedMs = nowMs;
        Atomics.store(stopFlag, 0, 1);
      }
      if (stoppedMs !== null && nowMs - stoppedMs > graceMs) unsound('stopped', null);
      else if (nowMs - startedMs > ask.timeLimitS * 1000 + lateMs) unsound('time', null);
    }, stopLookMs);
    const hear = (message: Message) => {
      if (message.kind === 'better') {
        best.values = message.values ?? best.values;
        best.boundScore = Math.max(best.boundScore, message.boundScore);
        ask.onBetter?.(message);
      } else if (message.kind === 'broken') unsound('failed', message.failure);
      else end({ answer: doneAnswer(message, best), isWorkerSound: true });
    };
    const fail = (error: Error) => unsound('failed', `${error.name}: ${error.message.slice(0, 200)}`);
    const leave = () => unsound('failed', 'the thread ended by itself');
    worker.on('message', hear).on('error', fail).on('exit', leave);
    const { model, timeLimitS, gapShare, start = [] } = ask;
    worker.postMessage({ model, timeLimitS, gapShare, start, stopFlag });
  });
}

function doneAnswer(
  message: Extract<Message, { kind: 'done' }>,
  best: { readonly values: Float64Array | null; readonly boundScore: number },
): SolveAnswer {
  return {
    ending: message.ending,
    values: message.values ?? best.values,
    boundScore: Math.max(message.boundScore, best.boundScore),
    failure: message.ending === 'failed' ? 'the solver gave no answer' : null,
  };
}
