/** The reference tables as text, as they stand in reference/*.csv. `scripts/embed-reference.mjs` writes tables.json from those files. */
import embedded from './tables.json' with { type: 'json' };

/** A table as its file has it: every cell a text. */
export interface TableText {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** The lines at the head of the file that begin with `#`: where the whole table comes from. */
  readonly comment: string;
}

// Cast once, here: the compiler's own type of a megabyte of JSON is no help to anyone.
const tables = embedded as unknown as Readonly<Record<string, TableText | string>>;

/** Names of all tables, as `crops` or `science/climate-normals`. */
export const tableNames: readonly string[] = Object.keys(tables).filter((name) => typeof tables[name] !== 'string');

/** The text of a table. Throws for a name that is none. */
export function tableText(name: string): TableText {
  const table = tables[name];
  if (table === undefined || typeof table === 'string') throw new Error(`There is no reference table "${name}".`);
  return table;
}

const keptCells = new WeakMap<TableText, readonly ((column: string) => string)[]>();

/** Each row as a question by column name. Throws when asked for a column the table has not. */
export function cellsOf(table: TableText): readonly ((column: string) => string)[] {
  let cells = keptCells.get(table);
  if (cells === undefined) {
    cells = readCells(table);
    keptCells.set(table, cells);
  }
  return cells;
}

function readCells(table: TableText): readonly ((column: string) => string)[] {
  const at = new Map(table.columns.map((column, index) => [column, index]));
  return table.rows.map((row) => (column: string) => {
    const index = at.get(column);
    if (index === undefined) throw new Error(`There is no column "${column}" among ${table.columns.join(', ')}.`);
    return row[index] ?? '';
  });
}
