/** What both databases do alike; how each locks, fails and is copied is its own. */
import type { Entry, ReceivedEntry } from '@leywright/book';
import type { EntryId, FarmId } from '@leywright/measures';
import type { Kysely, Transaction } from 'kysely';
import { householdsOver } from '../people/households.ts';
import { peopleOver } from '../people/people.ts';
import type { HouseholdStore } from '../people/seam.ts';
import type { StoreTables } from '../schema/tables.ts';
import type { Appended, Founded, NewFarm, Receipt, Store, StoredFarm } from '../store.ts';
import { StoreTrouble, type StoreTroubleCode } from '../trouble.ts';
import { appendEntries, foundFarm, receivedById } from './append.ts';
import { farmOfRow, receivedOfRow, storedFarms } from './rows.ts';

/** Where the two databases differ. */
export interface Manners {
  /** Makes whoever else would write into this farm's book wait until the step is done. */
  readonly lockFarm: (step: Transaction<StoreTables>, farm: FarmId) => Promise<void>;
  /** What an error of the database means to a person; null when it is a fault of ours. */
  readonly troubleOf: (error: unknown) => StoreTroubleCode | null;
  /** Leaves no copy of what was erased lying about in the database's own files, as far as it can be told to. */
  readonly forget: () => Promise<void>;
}

export abstract class SqlStore implements Store {
  readonly people: Store['people'];
  readonly households: HouseholdStore;
  protected readonly db: Kysely<StoreTables>;
  readonly #manners: Manners;

  constructor(db: Kysely<StoreTables>, manners: Manners) {
    this.db = db;
    this.#manners = manners;
    this.people = this.#triedEach(peopleOver(db));
    this.households = this.#triedEach(householdsOver(db, manners.forget));
  }

  farms(): Promise<readonly StoredFarm[]> {
    return this.tried(async () =>
      (await storedFarms(this.db).orderBy('farms.created_at').orderBy('farms.farm_id').execute()).map(farmOfRow),
    );
  }

  farm(id: FarmId): Promise<StoredFarm | null> {
    return this.tried(async () => {
      const row = await storedFarms(this.db).where('farms.farm_id', '=', id).executeTakeFirst();
      return row === undefined ? null : farmOfRow(row);
    });
  }

  foundFarm(farm: NewFarm, receipt: Receipt): Promise<Founded> {
    return this.tried(() => this.db.transaction().execute((step) => foundFarm(step, farm, receipt)));
  }

  appendEntries(farm: FarmId, entries: readonly Entry[], receipt: Receipt): Promise<Appended> {
    return this.tried(async () => {
      const appended = await this.db.transaction().execute(async (step) => {
        await this.#manners.lockFarm(step, farm);
        return appendEntries(step, farm, { entries, receipt });
      });
      if (entries.some(({ body }) => body?.kind === 'withdrawn')) await this.#manners.forget();
      return appended;
    });
  }

  entriesAfter(farm: FarmId, seq: number, limit: number): Promise<readonly ReceivedEntry[]> {
    return this.tried(async () => {
      const rows = await this.db
        .selectFrom('entries')
        .selectAll()
        .where('farm_id', '=', farm)
        .where('seq', '>', seq)
        .orderBy('seq')
        .limit(limit)
        .execute();
      return rows.map(receivedOfRow);
    });
  }

  entriesById(farm: FarmId, ids: readonly EntryId[]): Promise<readonly ReceivedEntry[]> {
    return this.tried(async () => [...(await receivedById(this.db, farm, ids)).values()]);
  }

  abstract backupTo(path: string): Promise<void>;

  async close(): Promise<void> {
    await this.db.destroy();
  }

  /** Lets an error through as what it means to a person, where it means something. */
  protected async tried<T>(work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      const code = this.#manners.troubleOf(error);
      throw code === null ? error : new StoreTrouble(code, error);
    }
  }

  #triedEach<T extends object>(asked: T): T {
    return new Proxy(asked, {
      get: (from, name) => {
        const work: unknown = Reflect.get(from, name);
        if (typeof work !== 'function') return work;
        return (...words: readonly unknown[]) => this.tried(async () => Reflect.apply(work, from, words) as unknown);
      },
    });
  }
}
