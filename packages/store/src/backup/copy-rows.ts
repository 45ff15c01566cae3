/** Rows from one database of ours to another, table by table, whichever database each is. Both stand at the same migration. */
import { type Kysely, sql } from 'kysely';
import type { StoreTables } from '../schema/tables.ts';
import type { TableShape } from './table-shapes.ts';

const ROWS_A_PAGE = 1000;

type Row = Readonly<Record<string, unknown>>;

/** Copies all rows of these tables, in this order; gives how many there were. */
export async function copyRows(
  from: Kysely<StoreTables>,
  to: Kysely<StoreTables>,
  tables: readonly TableShape[],
): Promise<number> {
  let count = 0;
  for (const table of tables) {
    let last: Row | null = null;
    for (;;) {
      const page = await pageAfter(from, table, last);
      if (page.length > 0) await insert(to, table, page);
      count += page.length;
      last = page.at(-1) ?? null;
      if (page.length < ROWS_A_PAGE) break;
    }
  }
  return count;
}

/** The rows whose key comes after that of `last`, by the whole key at once. */
async function pageAfter(
  db: Kysely<StoreTables>,
  { name, columns, key }: TableShape,
  last: Row | null,
): Promise<readonly Row[]> {
  const list = sql.join(columns.map((column) => sql.ref(column)));
  const keys = sql.join(key.map((column) => sql.ref(column)));
  const place = sql.join(key.map((column) => sql.val(last?.[column])));
  const after = last === null ? sql`` : sql`where (${keys}) > (${place})`;
  const { rows } =
    await sql<Row>`select ${list} from ${sql.table(name)} ${after} order by ${keys} limit ${ROWS_A_PAGE}`.execute(db);
  return rows;
}

async function insert(db: Kysely<StoreTables>, { name, columns }: TableShape, rows: readonly Row[]): Promise<void> {
  const list = sql.join(columns.map((column) => sql.ref(column)));
  const values = sql.join(rows.map((row) => sql`(${sql.join(columns.map((column) => sql.val(row[column])))})`));
  await sql`insert into ${sql.table(name)} (${list}) values ${values}`.execute(db);
}
