/** Farms as the book tells them, kept ready while no entry has come in since; and their plans. */
import {
  aboutFarm,
  asKnownOn,
  type BookFinding,
  emptyFarm,
  type Farm,
  type ReceivedEntry,
  replay,
} from '@leywright/book';
import type { Day, FarmId } from '@leywright/measures';
import { makePlanner, type Plan, type PlanWish } from '@leywright/planner';
import type { Store, StoredFarm } from '@leywright/store';

export interface OpenFarm {
  readonly stored: StoredFarm;
  readonly farm: Farm;
  /** Without the records of what was done: what the tables of a farm folder hold. */
  readonly described: () => Farm;
  readonly bookFindings: readonly BookFinding[];
}

/** As a visitor may see it: by what was known at the end of a day, and with or without prices. */
export interface Seen {
  readonly knownOn: Day | null;
  readonly money: boolean;
}

const everything: Seen = { knownOn: null, money: true };

export interface FarmShelf {
  /** null when there is no such farm. */
  readonly open: (id: FarmId, seen?: Seen) => Promise<OpenFarm | null>;
  readonly plan: (open: OpenFarm, wish: PlanWish) => Plan;
}

/** Farms kept at once; the longest unused goes first. */
const KEPT = 8;
const PAGE_ENTRIES = 5000;

export function farmShelf(store: Store): FarmShelf {
  const kept = new Map<string, OpenFarm>();
  const books = new Map<FarmId, readonly ReceivedEntry[]>();
  const planner = makePlanner();
  /** Only what came since is read: entries are never changed, but for bodies that were withdrawn. */
  const bookOf = async ({ id, lastSeq }: StoredFarm): Promise<readonly ReceivedEntry[]> => {
    const known = books.get(id) ?? [];
    const later = known.length === lastSeq ? [] : await entriesFrom(store, id, known.at(-1)?.seq ?? 0);
    const whole = later.some(({ body }) => body?.kind === 'withdrawn')
      ? await allEntries(store, id)
      : known.concat(later);
    books.delete(id);
    books.set(id, whole);
    const [oldest] = books.keys();
    if (books.size > KEPT && oldest !== undefined) books.delete(oldest);
    return whole;
  };
  return {
    open: async (id, seen = everything) => {
      const stored = await store.farm(id);
      if (stored === null) return null;
      const name = `${id} ${seen.knownOn ?? ''} ${seen.money}`;
      const ready = kept.get(name);
      const open = ready?.stored.lastSeq === stored.lastSeq ? ready : replayed(stored, await bookOf(stored), seen);
      kept.delete(name);
      kept.set(name, open);
      const [oldest] = kept.keys();
      if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest);
      return open;
    },
    plan: (open, wish) => planner.plan(open.farm, wish),
  };
}

/** The whole book of a farm, in order. */
export function allEntries(store: Store, id: FarmId): Promise<readonly ReceivedEntry[]> {
  return entriesFrom(store, id, 0);
}

async function entriesFrom(store: Store, id: FarmId, seq: number): Promise<readonly ReceivedEntry[]> {
  const entries: ReceivedEntry[] = [];
  for (;;) {
    const page = await store.entriesAfter(id, entries.at(-1)?.seq ?? seq, PAGE_ENTRIES);
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

function replayed(stored: StoredFarm, all: readonly ReceivedEntry[], { knownOn, money }: Seen): OpenFarm {
  const base = emptyFarm(aboutFarm(stored.id, stored.name, nowhere));
  const entries = knownOn === null ? all : asKnownOn(all, knownOn, replay(base, all).farm.about.place.timeZone);
  const { farm, findings } = replay(base, entries);
  const asSeen = (whole: Farm): Farm => (money ? whole : { ...whole, prices: [] });
  return {
    stored,
    farm: asSeen(farm),
    bookFindings: findings,
    described: () => asSeen(replay(base, entries, { only: 'descriptions' }).farm),
  };
}
