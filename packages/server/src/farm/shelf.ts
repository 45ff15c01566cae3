/** Farms as the book tells them, kept ready while no entry has come in since; and their plans. */
import { aboutFarm, type BookFinding, emptyFarm, type Farm, type ReceivedEntry, replay } from '@leywright/book';
import type { FarmId } from '@leywright/measures';
import { makePlanner, type Plan, type PlanWish } from '@leywright/planner';
import type { Store, StoredFarm } from '@leywright/store';

export interface OpenFarm {
  readonly stored: StoredFarm;
  readonly farm: Farm;
  /** Without the records of what was done: what the tables of a farm folder hold. */
  readonly described: () => Farm;
  readonly bookFindings: readonly BookFinding[];
}

export interface FarmShelf {
  /** null when there is no such farm. */
  readonly open: (id: FarmId) => Promise<OpenFarm | null>;
  readonly plan: (open: OpenFarm, wish: PlanWish) => Plan;
}

/** Farms kept at once; the longest unused goes first. */
const KEPT = 8;
const PAGE_ENTRIES = 5000;

export function farmShelf(store: Store): FarmShelf {
  const kept = new Map<FarmId, OpenFarm>();
  const planner = makePlanner();
  return {
    open: async (id) => {
      const stored = await store.farm(id);
      if (stored === null) return null;
      const ready = kept.get(id);
      const open = ready?.stored.lastSeq === stored.lastSeq ? ready : replayed(stored, await allEntries(store, id));
      kept.delete(id);
      kept.set(id, open);
      const [oldest] = kept.keys();
      if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest);
      return open;
    },
    plan: (open, wish) => planner.plan(open.farm, wish),
  };
}

/** The whole book of a farm, in order. */
export async function allEntries(store: Store, id: FarmId): Promise<readonly ReceivedEntry[]> {
  const entries: ReceivedEntry[] = [];
  for (;;) {
    const page = await store.entriesAfter(id, entries.at(-1)?.seq ?? 0, PAGE_ENTRIES);
    entries.push(...page);
    if (page.length < PAGE_ENTRIES) return entries;
  }
}

/** Before its first entry a farm is a name; its place comes with the entry that describes it. */
const nowhere = {
  latDeg: 0,
  lonDeg: 0,
  elevationM: null,
  near: null,
  jurisdiction: 'England',
  timeZone: 'Europe/London',
} as const;

function replayed(stored: StoredFarm, entries: readonly ReceivedEntry[]): OpenFarm {
  const base = emptyFarm(aboutFarm(stored.id, stored.name, nowhere));
  const { farm, findings } = replay(base, entries);
  return {
    stored,
    farm,
    bookFindings: findings,
    described: () => replay(base, entries, { only: 'descriptions' }).farm,
  };
}
