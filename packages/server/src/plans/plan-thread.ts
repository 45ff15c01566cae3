/** The thread that works plans out, with a store and a shelf of its own. */
import { parentPort, workerData } from 'node:worker_threads';
import { gzipSync } from 'node:zlib';
import { openStore } from '@leywright/store';
import { farmShelf } from '../farm/shelf.ts';
import { type PlanAsked, planText } from './plan-text.ts';

const quickest = 1;

const opened = await openStore((workerData as { readonly url: string }).url);
if (opened.kind === 'refused') throw new Error(opened.problem.code);
const shelf = farmShelf(opened.store);

parentPort?.on('message', async ({ turn, asked }: { readonly turn: number; readonly asked: PlanAsked | null }) => {
  if (asked === null) {
    await opened.store.close();
    parentPort?.close();
    return;
  }
  try {
    const text = await planText(shelf, asked);
    // Copies of their own, so that they can be handed over without another.
    const bytes = new Uint8Array(text.bytes);
    const gzipped = new Uint8Array(gzipSync(text.bytes, { level: quickest }));
    parentPort?.postMessage({ turn, text: { ...text, bytes, gzipped } }, [bytes.buffer, gzipped.buffer]);
  } catch (error) {
    parentPort?.postMessage({ turn, fault: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
