import { words } from '../words.ts';
import type { Call, FromWorker, ToWorker, WorkerCalls } from './messages.ts';
import type { PlanSource, Seen } from './plan-source.ts';

interface Waiting {
  readonly resolve: (value: never) => void;
  readonly reject: (fault: Error) => void;
}

/** The page's end of the worker: passes questions on, and keeps what there is to see. */
export function workerSource(worker: Worker): PlanSource {
  const listeners = new Set<() => void>();
  const waiting = new Map<number, Waiting>();
  let seen: Seen = { kind: 'working', sentence: words.state.opening };
  let asked = 0;
  const show = (next: Seen) => {
    seen = next;
    for (const listener of listeners) listener();
  };
  worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
    if (data.kind === 'seen') return show(data.seen);
    const one = waiting.get(data.id);
    waiting.delete(data.id);
    if (data.kind === 'answer') one?.resolve(data.value as never);
    else one?.reject(new Error(data.sentence));
  };
  worker.onerror = () => show({ kind: 'failed', view: viewIn(seen), sentence: words.state.noWorker });
  const post = (message: ToWorker) => worker.postMessage(message);
  const ask = <C extends Call>(call: C, ...said: Parameters<WorkerCalls[C]>) =>
    new Promise<Awaited<ReturnType<WorkerCalls[C]>>>((resolve, reject) => {
      asked += 1;
      waiting.set(asked, { resolve, reject });
      post({ kind: 'call', id: asked, call, words: said });
    });
  lookAgainWhenSeen(() => post({ kind: 'look-again' }));
  return {
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    seen: () => seen,
    focusYear: (isoYear) => void ask('focusYear', isoYear),
    setShows: (shows) => void ask('setShows', shows),
    why: (figureId) => ask('why', figureId),
    record: (wish) => ask('record', wish),
    undo: (entries) => ask('undo', entries),
    correct: (entries, correction) => ask('correct', entries, correction),
    farms: () => ask('farms'),
    knownPlaces: () => ask('knownPlaces'),
    openFarm: (id) => ask('openFarm', id),
    begin: (beginning) => ask('begin', beginning),
    openSample: () => ask('openSample'),
    readFolder: (files) => ask('readFolder', files),
    mendFolder: (mends) => ask('mendFolder', mends),
    takeFolder: () => ask('takeFolder'),
  };
}

function viewIn(seen: Seen) {
  return 'view' in seen ? seen.view : null;
}

function lookAgainWhenSeen(look: () => void): void {
  window.addEventListener('online', look);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') look();
  });
}
