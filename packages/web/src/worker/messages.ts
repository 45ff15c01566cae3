import type { PlanSource, Seen } from './plan-source.ts';

/** What the page asks of the worker. */
export type Call = keyof WorkerCalls;
export type WorkerCalls = Omit<PlanSource, 'subscribe' | 'seen'>;

export type ToWorker =
  | { readonly kind: 'call'; readonly id: number; readonly call: Call; readonly words: readonly unknown[] }
  /** The page is looked at again, or the network is back: see what came in meanwhile. */
  | { readonly kind: 'look-again' };

export type FromWorker =
  | { readonly kind: 'seen'; readonly seen: Seen }
  | { readonly kind: 'answer'; readonly id: number; readonly value: unknown }
  | { readonly kind: 'fault'; readonly id: number; readonly sentence: string };
