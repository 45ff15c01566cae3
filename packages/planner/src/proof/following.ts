/** What is known while the records are followed; changed in place, and never seen outside. */
import type { EntryBody, Farm, InForce } from '@leywright/book';
import type { Batch, Flow, Handing, Hold, LinkFault, LinkFaultCode, Lot, Run, Sowing, Touch, Use } from './chain.ts';
import type { Heap } from './take.ts';

export interface FollowWith {
  readonly farm: Pick<Farm, 'plots'>;
  /** Kilos of one head or bunch of a crop; null = not known. */
  readonly unitKgOf: (crop: string, unit: 'head' | 'bunch') => number | null;
}

export interface Following extends FollowWith {
  readonly lots: Map<string, Lot>;
  readonly left: Map<string, Heap>;
  readonly bins: Map<string, { store: string | null; readonly ever: Heap; readonly now: Heap }>;
  readonly runs: Map<string, Run>;
  readonly handings: Handing[];
  readonly flows: Flow[];
  readonly batches: Map<string, Batch>;
  readonly uses: Use[];
  readonly sowings: Sowing[];
  readonly touches: Touch[];
  readonly holds: Hold[];
  readonly faults: LinkFault[];
  readonly labels: ReadonlyMap<string, string>;
}

export type Body<K extends EntryBody['kind']> = Extract<EntryBody, { kind: K }>;

/** The heap of a crop in a store, where nobody names bins. */
export function poolOf(store: string, crop: string): string {
  return `${store}/${crop}`;
}

export function binOf(to: Following, id: string, store: string | null) {
  const known = to.bins.get(id) ?? { store, ever: new Map<string, number>(), now: new Map<string, number>() };
  to.bins.set(id, known);
  return known;
}

export function fault(
  to: Following,
  { entry, root }: InForce,
  told: { readonly code: LinkFaultCode; readonly named: string; readonly kg: number | null },
): void {
  to.faults.push({ ...told, on: entry.doneOn, entries: [root.id] });
}
