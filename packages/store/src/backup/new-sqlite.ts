/** A database file of our tables that nobody uses yet. */
import { Kysely } from 'kysely';
import { migrate } from '../schema/migrations.ts';
import type { StoreTables } from '../schema/tables.ts';
import { connectSqlite } from '../sqlite/connect.ts';
import { nodeSqliteDialect } from '../sqlite/dialect.ts';
import { type TableShape, tableShapes } from './table-shapes.ts';

/** Makes it at today's migration, and fills it in one transaction. */
export async function inNewSqlite(
  path: string,
  fill: (db: Kysely<StoreTables>, tables: readonly TableShape[]) => Promise<unknown>,
): Promise<void> {
  const connection = await connectSqlite(path);
  const db = new Kysely<StoreTables>({ dialect: nodeSqliteDialect(connection) });
  try {
    await migrate(db, 'sqlite');
    await db.transaction().execute((step) => fill(step, tableShapes(connection)));
  } finally {
    await db.destroy();
  }
}

/** Opens a file of ours at an older or today's migration, brings it up, and hands it over to be read. */
export async function overOldSqlite(
  path: string,
  read: (db: Kysely<StoreTables>, tables: readonly TableShape[]) => Promise<unknown>,
): Promise<void> {
  const connection = await connectSqlite(path);
  const db = new Kysely<StoreTables>({ dialect: nodeSqliteDialect(connection) });
  try {
    await migrate(db, 'sqlite');
    await read(db, tableShapes(connection));
  } finally {
    await db.destroy();
  }
}
