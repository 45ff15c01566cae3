import { closeSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Entry, ReceivedEntry } from '@leywright/book';
import type { FarmId } from '@leywright/measures';
import { type Kysely, sql } from 'kysely';
import { appendEntries, foundFarm } from '../books/append.ts';
import { farmOfRow, receivedOfRow, storedFarms } from '../books/rows.ts';
import type { StoreTables } from '../schema/tables.ts';
import type { Appended, Founded, NewFarm, Receipt, Store, StoredFarm } from '../store.ts';
import { connectSqlite, firstCell, type SqliteConnection } from './connect.ts';

export class SqliteStore implements Store {
  readonly #db: Kysely<StoreTables>;
  readonly #connection: SqliteConnection;

  constructor(db: Kysely<StoreTables>, connection: SqliteConnection) {
    this.#db = db;
    this.#connection = connection;
  }

  async farms(): Promise<readonly StoredFarm[]> {
    return (await storedFarms(this.#db).orderBy('farms.created_at').orderBy('farms.farm_id').execute()).map(farmOfRow);
  }

  async farm(id: FarmId): Promise<StoredFarm | null> {
    const row = await storedFarms(this.#db).where('farms.farm_id', '=', id).executeTakeFirst();
    return row === undefined ? null : farmOfRow(row);
  }

  foundFarm(farm: NewFarm, receipt: Receipt): Promise<Founded> {
    return this.#db.transaction().execute((step) => foundFarm(step, farm, receipt));
  }

  appendEntries(farm: FarmId, entries: readonly Entry[], receipt: Receipt): Promise<Appended> {
    return this.#db.transaction().execute((step) => appendEntries(step, farm, { entries, receipt }));
  }

  async entriesAfter(farm: FarmId, seq: number, limit: number): Promise<readonly ReceivedEntry[]> {
    const rows = await this.#db
      .selectFrom('entries')
      .selectAll()
      .where('farm_id', '=', farm)
      .where('seq', '>', seq)
      .orderBy('seq')
      .limit(limit)
      .execute();
    return rows.map(receivedOfRow);
  }

  async backupTo(path: string): Promise<void> {
    const draft = `${path}.part`;
    rmSync(draft, { force: true });
    await sql`vacuum into ${draft}`.execute(this.#db);
    await refuseDamagedCopy(draft);
    syncToDisk(draft); // SQLite does not, for a copy made this way
    renameSync(draft, path);
    syncToDisk(dirname(path));
  }

  async close(): Promise<void> {
    await this.#db.destroy();
  }

  /** What the tests ask to see that nothing acknowledged can be lost. */
  setting(name: 'journal_mode' | 'synchronous' | 'foreign_keys'): unknown {
    return firstCell(this.#connection, `pragma ${name}`);
  }
}

async function refuseDamagedCopy(path: string): Promise<void> {
  const copy = await connectSqlite(path);
  const damage = firstCell(copy, 'pragma integrity_check');
  copy.close();
  if (damage !== 'ok') throw new Error(`The copy at ${path} is damaged: ${String(damage)}`);
}

function syncToDisk(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
