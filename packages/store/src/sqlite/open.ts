/** Opens an SQLite file so that what was acknowledged survives a crash: WAL, synchronous FULL, checked before use. */
import { accessSync, constants } from 'node:fs';
import { dirname } from 'node:path';
import { Kysely } from 'kysely';
import { migrate, newestMigration } from '../schema/migrations.ts';
import type { StoreTables } from '../schema/tables.ts';
import type { Opened } from '../store.ts';
import { messageOf } from '../trouble.ts';
import { connectSqlite, firstCell, type SqliteConnection } from './connect.ts';
import { nodeSqliteDialect } from './dialect.ts';
import { SqliteStore } from './sqlite-store.ts';
import { troubleOfSqlite } from './trouble.ts';

const WAIT_FOR_WRITER_MS = 5_000;
/** Of SQLite's `PRAGMA synchronous`. */
const FULL = 2;

export async function openSqliteStore(path: string): Promise<Opened> {
  let connection: SqliteConnection | null = null;
  try {
    connection = await connectSqlite(path);
    makeDurable(connection);
    const damage = firstCell(connection, 'pragma integrity_check');
    if (damage !== 'ok') return refuse(connection, { code: 'damaged-database', found: String(damage) });
    const db = new Kysely<StoreTables>({ dialect: nodeSqliteDialect(connection) });
    const migrated = await migrate(db, 'sqlite');
    if (migrated.kind === 'newer')
      return refuse(connection, { code: 'newer-database', found: migrated.found, known: newestMigration });
    return { kind: 'open', store: new SqliteStore(db, connection) };
  } catch (error) {
    return refuse(connection, problemOf(error, path));
  }
}

/** Sets, then asks back: a setting that did not take is our fault and must not be met by a crash in harvest. */
function makeDurable(connection: SqliteConnection): void {
  connection.exec(`pragma busy_timeout = ${WAIT_FOR_WRITER_MS}`);
  connection.exec('pragma journal_mode = wal');
  connection.exec('pragma synchronous = full');
  connection.exec('pragma foreign_keys = on');
  connection.exec('pragma secure_delete = on'); // a withdrawn body leaves no trace in the file
  const isDurable =
    firstCell(connection, 'pragma journal_mode') === 'wal' &&
    Number(firstCell(connection, 'pragma synchronous')) === FULL &&
    Number(firstCell(connection, 'pragma foreign_keys')) === 1;
  if (!isDurable) throw new Error('SQLite would not keep a write-ahead log with full synchronisation here.');
}

type Problem = Extract<Opened, { kind: 'refused' }>['problem'];

function refuse(connection: SqliteConnection | null, problem: Problem): Opened {
  connection?.close();
  return { kind: 'refused', problem };
}

function problemOf(error: unknown, path: string): Problem {
  const found = messageOf(error);
  if (/not a database/i.test(found)) return { code: 'not-a-database' };
  return { code: troubleOfSqlite(error) ?? (mayOnlyBeRead(path) ? 'read-only-store' : 'cannot-open'), found };
}

/** SQLite says no more than that it cannot open a file with a log where nothing may be written. */
function mayOnlyBeRead(path: string): boolean {
  try {
    accessSync(dirname(path), constants.R_OK);
    accessSync(dirname(path), constants.W_OK);
    return false;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : null;
    return code === 'EROFS' || code === 'EACCES';
  }
}
