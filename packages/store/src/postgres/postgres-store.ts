import type { Kysely } from 'kysely';
import { copyRows } from '../backup/copy-rows.ts';
import { inNewSqlite } from '../backup/new-sqlite.ts';
import { type Restored, restoreInto } from '../backup/restore.ts';
import { wholeFile } from '../backup/whole-file.ts';
import { SqlStore } from '../books/sql-store.ts';
import type { StoreTables } from '../schema/tables.ts';
import { troubleOfPostgres } from './trouble.ts';

export class PostgresStore extends SqlStore {
  constructor(db: Kysely<StoreTables>) {
    super(db, {
      // A statement of its own: the next one then sees what the one who held the lock has written.
      lockFarm: async (step, farm) => {
        await step.selectFrom('farms').select('farm_id').where('farm_id', '=', farm).forUpdate().execute();
      },
      troubleOf: troubleOfPostgres,
      // Its own vacuum takes old rows away; its log is kept as long as whoever runs it says.
      forget: async () => undefined,
    });
  }

  /** Into an SQLite file of the same tables: one kind of backup, whichever database is at work. All rows are of one moment. */
  backupTo(path: string): Promise<void> {
    return this.tried(() =>
      wholeFile(path, (draft) =>
        inNewSqlite(draft, (copy, tables) =>
          this.db
            .transaction()
            .setIsolationLevel('repeatable read')
            .execute((moment) => copyRows(moment, copy, tables)),
        ),
      ),
    );
  }

  /** Fills this store, which has no farm yet, from a backup; `scratch` is a file that may be written and thrown away. */
  restoreFrom(backup: string, scratch: string): Promise<Restored> {
    return this.tried(() => restoreInto(this.db, backup, scratch));
  }
}
