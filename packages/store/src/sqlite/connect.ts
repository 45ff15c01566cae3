/**
 * The one place that knows which SQLite is under us: the one built into Node (22.13 and newer), else the same programming
 * interface from `@photostructure/sqlite` (Node 20).
 */

/** What a cell of SQLite may hold here; whole numbers past 2^53 are never stored. */
export type SqliteValue = null | number | bigint | string | Uint8Array;

export interface SqliteStatement {
  all(...values: readonly SqliteValue[]): unknown[];
  run(...values: readonly SqliteValue[]): {
    readonly changes: number | bigint;
    readonly lastInsertRowid: number | bigint;
  };
  iterate(...values: readonly SqliteValue[]): IterableIterator<unknown>;
}

export interface SqliteConnection {
  exec(sql: string): void;
  prepare(sql: string): SqliteStatement;
  close(): void;
}

interface SqliteModule {
  readonly DatabaseSync: new (path: string, options?: { readonly readOnly?: boolean }) => SqliteConnection;
  /** Page by page, giving way to other work between; not in every Node that has `node:sqlite`. */
  readonly backup?: (from: SqliteConnection, path: string, options?: { readonly rate?: number }) => Promise<unknown>;
}

/** Opens the file, making it when there is none. Throws what SQLite throws. */
export async function connectSqlite(
  path: string,
  { readOnly = false }: { readonly readOnly?: boolean } = {},
): Promise<SqliteConnection> {
  const { DatabaseSync } = await sqliteModule();
  return new DatabaseSync(path, { readOnly });
}

/** About 16 MB at once: a large store is copied in seconds, and the server answers in between. */
const PAGES_A_STEP = 4000;

/** Copies an open database to a new file that stands by itself. */
export async function copySqlite(connection: SqliteConnection, path: string): Promise<void> {
  const { backup } = await sqliteModule();
  if (backup === undefined) {
    connection.prepare('vacuum into ?').run(path);
    return;
  }
  await backup(connection, path, { rate: PAGES_A_STEP });
  const copy = await connectSqlite(path);
  copy.exec('pragma journal_mode = delete'); // it can then be read where nothing may be written
  copy.close();
}

async function sqliteModule(): Promise<SqliteModule> {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  const isBuiltIn = major > 22 || (major === 22 && minor >= 13);
  // A name in a variable, because the types of Node 20 do not know the built-in module.
  const builtIn: string = 'node:sqlite';
  return isBuiltIn
    ? ((await import(builtIn)) as SqliteModule)
    : ((await import('@photostructure/sqlite')) as unknown as SqliteModule);
}

/** The first cell of the first row; undefined when there is no row. */
export function firstCell(connection: SqliteConnection, sql: string): unknown {
  const row = connection.prepare(sql).all()[0] as Readonly<Record<string, unknown>> | undefined;
  return row === undefined ? undefined : Object.values(row)[0];
}
