/** Starts a thread of the solver. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';

/** Beside this file among the sources, and beside the bundle when built. */
export function startWorker(): Worker {
  const place = new URL('./highs-worker.mjs', import.meta.url);
  if (!existsSync(fileURLToPath(place))) throw new Error(`The solver's thread is not at ${place.pathname}.`);
  const worker = new Worker(place, { execArgv: [] });
  // A thread that dies while no one waits for it is found dead by the next run.
  worker.on('error', () => undefined);
  worker.unref();
  return worker;
}
