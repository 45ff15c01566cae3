/** Lets a request wait until a farm's book has grown. Within one server it hears at once; of what other servers write, within a second. */
import type { FarmId } from '@leywright/measures';
import type { Store } from '@leywright/store';

type Wake = () => void;

/** Requests that wait, by store and farm. */
const waiting = new WeakMap<Store, Map<FarmId, Set<Wake>>>();

const lookAgainMs = 1000;

/** Says that entries came in. */
export function tellNews(store: Store, farm: FarmId): void {
  for (const wake of waiting.get(store)?.get(farm) ?? []) wake();
}

/** Wakes everybody, so that a server that stops need not wait for them. */
export function tellAll(store: Store): void {
  for (const farm of waiting.get(store)?.keys() ?? []) tellNews(store, farm);
}

export interface Wait {
  readonly farm: FarmId;
  readonly after: number;
  readonly longestMs: number;
  readonly isGone: () => boolean;
}

/** Resolves when there is an entry after `after`, when the time is over, or when nobody listens any more. */
export async function waitForNews(store: Store, { farm, after, longestMs, isGone }: Wait): Promise<void> {
  const until = Date.now() + longestMs;
  while (!isGone()) {
    const stored = await store.farm(farm);
    const leftMs = until - Date.now();
    if (stored === null || stored.lastSeq > after || leftMs <= 0) return;
    await heard(store, farm, Math.min(leftMs, lookAgainMs));
  }
}

function heard(store: Store, farm: FarmId, ms: number): Promise<void> {
  const farms = waiting.get(store) ?? new Map<FarmId, Set<Wake>>();
  waiting.set(store, farms);
  const wakes = farms.get(farm) ?? new Set<Wake>();
  farms.set(farm, wakes);
  return new Promise((resolve) => {
    const wake = () => {
      clearTimeout(timer);
      wakes.delete(wake);
      resolve();
    };
    const timer = setTimeout(wake, ms);
    wakes.add(wake);
  });
}
