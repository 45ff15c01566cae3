/** What this machine keeps of its farms, so that they open when the server is out of reach. */
import type { Entry, ReceivedEntry } from '@leywright/book';
import type { Day } from '@leywright/measures';
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

export interface KeptFarm {
  readonly id: string;
  readonly name: string;
  readonly sample: boolean;
}

export interface Who {
  readonly person: string;
  readonly role: string;
}

/** Small things kept beside the books. */
export interface Facts {
  /** The farm that was open last. */
  readonly farm: string;
  /** The latest day the server named. */
  readonly today: Day;
  /** This device in the book, and how many entries it has made. */
  readonly device: { readonly id: string; readonly made: number };
  /** Who is signed in on this device, or was when the server was last reached. */
  readonly who: Who;
}

export interface Keep {
  readonly farms: () => Promise<readonly KeptFarm[]>;
  readonly putFarm: (farm: KeptFarm) => Promise<void>;
  /** In the order of their `seq`. */
  readonly entries: (farm: string) => Promise<readonly ReceivedEntry[]>;
  readonly putEntries: (farm: string, entries: readonly ReceivedEntry[]) => Promise<void>;
  /** Takes a farm's book away, when the server has another under the same name. */
  readonly dropEntries: (farm: string) => Promise<void>;
  /** Entries made here that the server has not got yet. */
  readonly unsent: (farm: string) => Promise<readonly Entry[]>;
  readonly putUnsent: (entry: Entry) => Promise<void>;
  readonly dropUnsent: (entries: readonly Entry[]) => Promise<void>;
  readonly fact: <F extends keyof Facts>(name: F) => Promise<Facts[F] | null>;
  readonly putFact: <F extends keyof Facts>(name: F, value: Facts[F]) => Promise<void>;
}

interface Shelves extends DBSchema {
  readonly farms: { readonly key: string; readonly value: KeptFarm };
  readonly entries: { readonly key: [string, number]; readonly value: ReceivedEntry };
  readonly unsent: { readonly key: [string, string]; readonly value: Entry };
  readonly facts: { readonly key: string; readonly value: Facts[keyof Facts] };
}

const name = 'leywright';
const version = 1;

/** The browser's own store; where it is shut (a private window), memory, which lasts as long as the page. */
export async function openKeep(): Promise<Keep> {
  try {
    return onDisk(await openDB<Shelves>(name, version, { upgrade: makeShelves }));
  } catch {
    return inMemory();
  }
}

function makeShelves(shelves: IDBPDatabase<Shelves>): void {
  shelves.createObjectStore('farms', { keyPath: 'id' });
  shelves.createObjectStore('entries', { keyPath: ['farm', 'seq'] });
  shelves.createObjectStore('unsent', { keyPath: ['farm', 'id'] });
  shelves.createObjectStore('facts');
}

function onDisk(shelves: IDBPDatabase<Shelves>): Keep {
  const ofFarm = (farm: string) => IDBKeyRange.bound([farm], [farm, []]);
  return {
    farms: () => shelves.getAll('farms'),
    putFarm: async (farm) => void (await shelves.put('farms', farm)),
    entries: (farm) => shelves.getAll('entries', ofFarm(farm)),
    putEntries: async (_farm, entries) => {
      const writing = shelves.transaction('entries', 'readwrite');
      await Promise.all([...entries.map((entry) => writing.store.put(entry)), writing.done]);
    },
    dropEntries: (farm) => shelves.delete('entries', ofFarm(farm)),
    unsent: (farm) => shelves.getAll('unsent', ofFarm(farm)),
    putUnsent: async (entry) => void (await shelves.put('unsent', entry)),
    dropUnsent: async (entries) => {
      const writing = shelves.transaction('unsent', 'readwrite');
      await Promise.all([...entries.map(({ farm, id }) => writing.store.delete([farm, id])), writing.done]);
    },
    fact: async (fact) => ((await shelves.get('facts', fact)) ?? null) as never,
    putFact: async (fact, value) => void (await shelves.put('facts', value, fact)),
  };
}

export function inMemory(): Keep {
  const farms = new Map<string, KeptFarm>();
  const books = new Map<string, readonly ReceivedEntry[]>();
  const facts = new Map<string, unknown>();
  let waiting: readonly Entry[] = [];
  return {
    farms: async () => [...farms.values()],
    putFarm: async (farm) => void farms.set(farm.id, farm),
    entries: async (farm) => books.get(farm) ?? [],
    putEntries: async (farm, entries) => void books.set(farm, [...(books.get(farm) ?? []), ...entries]),
    dropEntries: async (farm) => void books.delete(farm),
    unsent: async (farm) => waiting.filter((entry) => entry.farm === farm),
    putUnsent: async (entry) => {
      waiting = [...waiting, entry];
    },
    dropUnsent: async (entries) => {
      waiting = waiting.filter((entry) => !entries.some(({ id }) => id === entry.id));
    },
    fact: async (fact) => (facts.get(fact) ?? null) as never,
    putFact: async (fact, value) => void facts.set(fact, value),
  };
}
