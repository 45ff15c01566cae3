/** Opens a PostgreSQL database so that what was acknowledged is on its disk: `fsync` and `synchronous_commit`, checked before use. */
import { Kysely, PostgresDialect, sql } from 'kysely';
import pg from 'pg';
import { migrate, newestMigration } from '../schema/migrations.ts';
import type { StoreTables } from '../schema/tables.ts';
import type { Opened } from '../store.ts';
import { messageOf } from '../trouble.ts';
import { PostgresStore } from './postgres-store.ts';
import { troubleOfPostgres } from './trouble.ts';

const CONNECTIONS = 10;
const WAIT_FOR_CONNECTION_MS = 10_000;
const WAIT_FOR_LOCK_MS = 10_000;

export async function openPostgresStore(url: string): Promise<Opened> {
  const pool = new pg.Pool({
    connectionString: url,
    max: CONNECTIONS,
    connectionTimeoutMillis: WAIT_FOR_CONNECTION_MS,
    lock_timeout: WAIT_FOR_LOCK_MS,
    application_name: 'leywright',
    options: '-c synchronous_commit=on',
  });
  // A connection that breaks while it rests is replaced by the pool; whoever asks next is told if none can be had.
  pool.on('error', () => undefined);
  const db = new Kysely<StoreTables>({ dialect: new PostgresDialect({ pool }) });
  try {
    const weak = await weakSetting(db);
    if (weak !== null) return await refuse(db, { code: 'forgetful-database', found: weak });
    const migrated = await migrate(db, 'postgres');
    if (migrated.kind === 'newer')
      return await refuse(db, { code: 'newer-database', found: migrated.found, known: newestMigration });
    return { kind: 'open', store: new PostgresStore(db) };
  } catch (error) {
    const trouble = troubleOfPostgres(error);
    return await refuse(
      db,
      trouble === null ? { code: 'cannot-open', found: messageOf(error) } : { code: trouble, found: messageOf(error) },
    );
  }
}

type Problem = Extract<Opened, { kind: 'refused' }>['problem'];

async function refuse(db: Kysely<StoreTables>, problem: Problem): Promise<Opened> {
  await db.destroy();
  return { kind: 'refused', problem };
}

/** A database that answers before the disk has it would forget acknowledged entries with the power. */
async function weakSetting(db: Kysely<StoreTables>): Promise<string | null> {
  for (const name of ['fsync', 'synchronous_commit', 'full_page_writes'] as const) {
    const { rows } = await sql<Record<string, string>>`select current_setting(${name}) as setting`.execute(db);
    if (rows[0]?.['setting'] === 'off') return name;
  }
  return null;
}
