/** Looks a backup over before anybody relies on it: whole pages, a version we read, and every farm's book sealed from its first entry to its last. */
import { existsSync, statSync } from 'node:fs';
import { type BookEnd, type Breach, type ReceivedEntry, verifyBook } from '@leywright/book';
import { receivedOfRow } from '../books/rows.ts';
import { newestMigration } from '../schema/migrations.ts';
import type { EntriesTable } from '../schema/tables.ts';
import { connectSqlite, firstCell, type SqliteConnection } from '../sqlite/connect.ts';
import { messageOf } from '../trouble.ts';

export interface BackedUpFarm {
  readonly id: string;
  readonly name: string;
  readonly entries: number;
}

export type Inspected =
  | { readonly kind: 'sound'; readonly migration: number; readonly farms: readonly BackedUpFarm[] }
  | { readonly kind: 'refused'; readonly problem: BackupProblem };

/** Why a backup is not one that can be put back. */
export type BackupProblem =
  | { readonly code: 'no-backup'; readonly found: string }
  | { readonly code: 'not-a-backup'; readonly found: string }
  | { readonly code: 'damaged-backup'; readonly found: string }
  | { readonly code: 'newer-database'; readonly found: number; readonly known: number }
  | { readonly code: 'broken-book'; readonly found: string; readonly seq: number; readonly how: Breach };

/** Leaves the file as it is. */
export async function inspectBackup(path: string): Promise<Inspected> {
  if (!existsSync(path) || !statSync(path).isFile()) return refused({ code: 'no-backup', found: path });
  let connection: SqliteConnection | null = null;
  try {
    connection = await connectSqlite(path, { readOnly: true });
    const damage = firstCell(connection, 'pragma integrity_check');
    if (damage !== 'ok') return refused({ code: 'damaged-backup', found: String(damage).split('\n')[0] ?? '' });
    return inspectTables(connection, path);
  } catch (error) {
    const said = messageOf(error);
    return refused(
      /not a database/i.test(said) ? { code: 'not-a-backup', found: path } : { code: 'damaged-backup', found: said },
    );
  } finally {
    connection?.close();
  }
}

function inspectTables(connection: SqliteConnection, path: string): Inspected {
  const isOurs = firstCell(
    connection,
    "select count(*) from sqlite_master where name in ('migrations', 'farms', 'entries')",
  );
  if (Number(isOurs) !== 3) return refused({ code: 'not-a-backup', found: path });
  const migration = Number(firstCell(connection, 'select max(number) from migrations') ?? 0);
  if (migration > newestMigration) return refused({ code: 'newer-database', found: migration, known: newestMigration });
  const farms = connection.prepare('select farm_id as id, name from farms order by farm_id').all() as {
    id: string;
    name: string;
  }[];
  const sound: BackedUpFarm[] = [];
  for (const { id, name } of farms) {
    const { entries, broken } = verifyPages(connection, id);
    if (broken !== null) return refused({ code: 'broken-book', found: id, ...broken });
    sound.push({ id, name, entries });
  }
  return { kind: 'sound', migration, farms: sound };
}

const ENTRIES_A_PAGE = 5000;

interface FarmVerified {
  readonly entries: number;
  readonly broken: { readonly seq: number; readonly how: Breach } | null;
}

/** Page by page: a book of thirty years need not be in memory at once. */
function verifyPages(connection: SqliteConnection, farm: string): FarmVerified {
  const page = connection.prepare('select * from entries where farm_id = ? and seq > ? order by seq limit ?');
  const withdrawn = withdrawnOf(connection, farm);
  let end: BookEnd | null = null;
  let entries = 0;
  for (;;) {
    const read: readonly ReceivedEntry[] = (page.all(farm, end?.seq ?? 0, ENTRIES_A_PAGE) as EntriesTable[]).map(
      receivedOfRow,
    );
    const result = verifyBook(read, end, withdrawn);
    if (!result.ok) return { entries, broken: { seq: result.firstBad.seq, how: result.firstBad.how } };
    entries += read.length;
    const last: ReceivedEntry | undefined = read.at(-1);
    if (last === undefined || read.length < ENTRIES_A_PAGE) return { entries, broken: null };
    end = { seq: last.seq, hash: last.hash };
  }
}

/** Entries whose bodies were taken away by an entry that may stand on a later page. */
function withdrawnOf(connection: SqliteConnection, farm: string): ReadonlySet<string> {
  const rows = connection
    .prepare(
      "select json_extract(body, '$.entry') as id from entries where farm_id = ? and json_extract(body, '$.kind') = 'withdrawn'",
    )
    .all(farm) as { id: string }[];
  return new Set(rows.map(({ id }) => id));
}

function refused(problem: BackupProblem): Inspected {
  return { kind: 'refused', problem };
}
