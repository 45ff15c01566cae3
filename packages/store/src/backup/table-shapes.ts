/** Tables of an SQLite store as it stands: their columns, their keys, and an order in which none comes before one it points to. */
import type { SqliteConnection } from '../sqlite/connect.ts';

export interface TableShape {
  readonly name: string;
  readonly columns: readonly string[];
  /** Columns of the primary key, in its order. */
  readonly key: readonly string[];
}

/** All tables but the list of migrations: a new store makes its own. */
export function tableShapes(connection: SqliteConnection): readonly TableShape[] {
  const names = rows<{ name: string }>(
    connection,
    "select name from sqlite_master where type = 'table' and name not like 'sqlite_%' and name <> 'migrations' order by name",
  ).map(({ name }) => name);
  const placed = new Set<string>();
  const shapes: TableShape[] = [];
  const place = (name: string) => {
    if (placed.has(name)) return;
    placed.add(name);
    for (const { table } of rows<{ table: string }>(connection, `pragma foreign_key_list("${name}")`)) place(table);
    shapes.push(shapeOf(connection, name));
  };
  for (const name of names) place(name);
  return shapes;
}

function shapeOf(connection: SqliteConnection, name: string): TableShape {
  const columns = rows<{ name: string; pk: number }>(connection, `pragma table_info("${name}")`);
  const key = columns.filter((column) => Number(column.pk) > 0).sort((a, b) => Number(a.pk) - Number(b.pk));
  return { name, columns: columns.map((column) => column.name), key: key.map((column) => column.name) };
}

function rows<T>(connection: SqliteConnection, words: string): readonly T[] {
  return connection.prepare(words).all() as readonly T[];
}
