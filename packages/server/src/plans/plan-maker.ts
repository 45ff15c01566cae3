/** Where plans are worked out: here, or in a thread beside the server, so that a pull or a record never waits for a plan. */
import { Worker } from 'node:worker_threads';
import type { FarmShelf } from '../farm/shelf.ts';
import type { PlanMaker } from './kept-plans.ts';
import { type PlanAsked, type PlanText, planText } from './plan-text.ts';

export function makeHere(shelf: FarmShelf): PlanMaker {
  return { make: (asked) => planText(shelf, asked), close: async () => undefined };
}

function bufferOf(bytes: Uint8Array): Buffer {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

interface Answer {
  readonly turn: number;
  readonly text?: PlanText;
  readonly fault?: string;
}

interface Waiting {
  readonly resolve: (text: PlanText) => void;
  readonly reject: (error: Error) => void;
}

/** One thread over the store at `url`. It starts with the first question; when it dies, the questions it had fail and the next starts another. */
function makeInThread(url: string): PlanMaker {
  let worker: Worker | null = null;
  let turn = 0;
  const waiting = new Map<number, Waiting>();
  const failAll = (error: Error) => {
    worker = null;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  };
  const started = (): Worker => {
    const thread = startThread(url);
    thread.on('message', ({ turn: of, text, fault }: Answer) => {
      const asker = waiting.get(of);
      waiting.delete(of);
      if (text === undefined) asker?.reject(new Error(fault ?? 'the thread of plans said nothing'));
      else asker?.resolve({ ...text, bytes: bufferOf(text.bytes), gzipped: text.gzipped && bufferOf(text.gzipped) });
    });
    thread.on('error', failAll);
    thread.on('exit', () => failAll(new Error('the thread of plans ended')));
    return thread;
  };
  return {
    make: (asked: PlanAsked) =>
      new Promise((resolve, reject) => {
        worker ??= started();
        turn += 1;
        waiting.set(turn, { resolve, reject });
        worker.postMessage({ turn, asked });
      }),
    close: async () => {
      const ending = worker;
      if (ending === null) return;
      const ended = new Promise((resolve) => ending.once('exit', resolve));
      ending.postMessage({ turn: 0, asked: null });
      await ended;
    },
  };
}

/** Beside the bundled program lies a bundle of the thread. Run from its sources there is none: then plans are worked out here. */
export function threadIfBuilt(url: string): PlanMaker | null {
  return import.meta.url.endsWith('.ts') ? null : makeInThread(url);
}

function startThread(url: string): Worker {
  return new Worker(new URL('./plan-thread.mjs', import.meta.url), { workerData: { url } });
}
