import type { Kysely } from 'kysely';
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

  async backupTo(_path: string): Promise<void> {
    throw new Error('not yet');
  }
}
