/** Taking kilos out of a lot or a bin, and putting them in. */
import type { Source } from './chain.ts';

/** Kilos less than this are rounding. */
export const tinyKg = 1e-9;

/** What lies somewhere, by lot; the empty key stands for "not known". */
export type Heap = Map<string, number>;
const notKnown = '';

export function heapKg(heap: ReadonlyMap<string, number>): number {
  let sum = 0;
  for (const kg of heap.values()) sum += kg;
  return sum;
}

export interface Taken {
  readonly sources: readonly Source[];
  /** Kilos asked for beyond what was there; among the sources as not known. */
  readonly lackingKg: number;
}

/** Takes kilos from all that lies there, by share. What is not there comes from nowhere known. */
export function takeFrom(heap: Heap, kg: number): Taken {
  const thereKg = heapKg(heap);
  const share = thereKg <= tinyKg ? 0 : Math.min(1, kg / thereKg);
  const sources: Source[] = [];
  for (const [lot, lying] of heap) {
    const taken = lying * share;
    if (share >= 1) heap.delete(lot);
    else heap.set(lot, lying - taken);
    if (taken > 0) sources.push({ lot: lot === notKnown ? null : lot, kg: taken });
  }
  const missingKg = kg - Math.min(kg, thereKg);
  if (missingKg <= tinyKg) return { sources, lackingKg: 0 };
  return { sources: joined([...sources, { lot: null, kg: missingKg }]), lackingKg: missingKg };
}

export function putInto(heap: Heap, sources: readonly Source[]): void {
  for (const { lot, kg } of sources) heap.set(lot ?? notKnown, (heap.get(lot ?? notKnown) ?? 0) + kg);
}

/** Each lot once. */
export function joined(sources: readonly Source[]): readonly Source[] {
  const heap: Heap = new Map();
  putInto(heap, sources);
  return [...heap].map(([lot, kg]) => ({ lot: lot === notKnown ? null : lot, kg }));
}

export function sourcesKg(sources: readonly Source[]): number {
  return sources.reduce((sum, source) => sum + source.kg, 0);
}
