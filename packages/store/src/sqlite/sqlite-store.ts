import { type Kysely, sql } from 'kysely';
import { wholeFile } from '../backup/whole-file.ts';
import { SqlStore } from '../books/sql-store.ts';
import type { StoreTables } from '../schema/tables.ts';
import { connectSqlite, copySqlite, firstCell, type SqliteConnection } from './connect.ts';
import { troubleOfSqlite } from './trouble.ts';

export class SqliteStore extends SqlStore {
  readonly #connection: SqliteConnection;

  constructor(db: Kysely<StoreTables>, connection: SqliteConnection) {
    // Every transaction takes the one lock for writing when it begins.
    super(db, {
      lockFarm: async () => undefined,
      troubleOf: troubleOfSqlite,
      // Erased rows are written over (`secure_delete`), but the log holds them until it is merged.
      forget: async () => {
        await sql`pragma wal_checkpoint(truncate)`.execute(db);
      },
    });
    this.#connection = connection;
  }

  backupTo(path: string): Promise<void> {
    return this.tried(() =>
      wholeFile(path, async (draft) => {
        await copySqlite(this.#connection, draft);
        await refuseDamagedCopy(draft);
      }),
    );
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
