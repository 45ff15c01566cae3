/**
 * What stands in the columns of a reference table, and the typed row that follows from it.
 *
 * A table of a hundred columns is not typed out a second time: its columns are listed once by what they hold, and the row's
 * type is made of that list. `yield_typ_t_ha` in the file is `yieldTypTHa` in code, its unit still at the end.
 */
import { type MonthDay, readMonthDay } from '@leywright/measures';

/** Columns of one table by what they hold; `maybe…` may be empty, and then the row says null. */
export interface Columns {
  readonly words: readonly string[];
  readonly maybeWords?: readonly string[];
  readonly amounts?: readonly string[];
  readonly maybeAmounts?: readonly string[];
  readonly dates?: readonly string[];
  readonly maybeDates?: readonly string[];
  readonly lists?: readonly string[];
  readonly yesNo?: readonly string[];
  readonly oneOf?: Readonly<Record<string, readonly string[]>>;
  readonly maybeOneOf?: Readonly<Record<string, readonly string[]>>;
}

type Camel<S extends string> = S extends `${infer Head}_${infer Rest}` ? `${Head}${Capitalize<Camel<Rest>>}` : S;
type Names<L> = L extends readonly (infer N extends string)[] ? N : never;
type Part<L, V> = { readonly [N in Names<L> as Camel<N>]: V };
type Chosen<R, Empty> = { readonly [N in keyof R & string as Camel<N>]: (R[N] extends readonly (infer V)[] ? V : never) | Empty };

/** The row of a table with these columns. */
export type RowOf<C extends Columns> = Part<C['words'], string> &
  Part<C['maybeWords'], string | null> &
  Part<C['amounts'], number> &
  Part<C['maybeAmounts'], number | null> &
  Part<C['dates'], MonthDay> &
  Part<C['maybeDates'], MonthDay | null> &
  Part<C['lists'], readonly string[]> &
  Part<C['yesNo'], boolean> &
  Chosen<C['oneOf'], never> &
  Chosen<C['maybeOneOf'], null>;

/** A cell that is not what its column should hold. */
export interface CellProblem {
  readonly column: string;
  readonly found: string;
  readonly why: 'empty' | 'not-a-number' | 'not-a-date' | 'not-yes-or-no' | 'not-in-list';
}

/** `yield_typ_t_ha` as `yieldTypTHa`. */
export function camel(column: string): string {
  return column.replace(/_([a-zA-Z0-9])/g, (_, letter: string) => letter.toUpperCase());
}

/** Reads one row. Bad cells become null (or an empty text) and are handed to `onProblem`; the validation lists them. */
export function readRow<C extends Columns>(columns: C, cell: (column: string) => string, onProblem: (problem: CellProblem) => void): RowOf<C> {
  const row: Record<string, unknown> = {};
  const put = (column: string, value: unknown, why: CellProblem['why'] | null) => {
    row[camel(column)] = value;
    if (why !== null) onProblem({ column, found: cell(column), why });
  };
  for (const column of columns.words) put(column, cell(column), cell(column) === '' ? 'empty' : null);
  for (const column of columns.maybeWords ?? []) put(column, cell(column) || null, null);
  for (const [names, mayBeEmpty] of [[columns.amounts, false], [columns.maybeAmounts, true]] as const) {
    for (const column of names ?? []) put(column, ...readAmount(cell(column), mayBeEmpty));
  }
  for (const [names, mayBeEmpty] of [[columns.dates, false], [columns.maybeDates, true]] as const) {
    for (const column of names ?? []) put(column, ...readDate(cell(column), mayBeEmpty));
  }
  for (const column of columns.lists ?? []) put(column, splitList(cell(column)), null);
  for (const column of columns.yesNo ?? []) put(column, cell(column) === 'yes', /^(yes|no)$/.test(cell(column)) ? null : 'not-yes-or-no');
  for (const [column, list] of Object.entries(columns.oneOf ?? {})) put(column, cell(column), list.includes(cell(column)) ? null : 'not-in-list');
  for (const [column, list] of Object.entries(columns.maybeOneOf ?? {})) {
    put(column, cell(column) || null, cell(column) === '' || list.includes(cell(column)) ? null : 'not-in-list');
  }
  return row as RowOf<C>;
}

/** The parts of a cell joined by `;`, none for an empty cell. */
export function splitList(text: string): readonly string[] {
  return text === '' ? [] : text.split(';').map((part) => part.trim());
}

function readAmount(text: string, mayBeEmpty: boolean): [number | null, CellProblem['why'] | null] {
  if (text === '') return [null, mayBeEmpty ? null : 'empty'];
  return /^-?\d+(\.\d+)?$/.test(text) ? [Number(text), null] : [null, 'not-a-number'];
}

function readDate(text: string, mayBeEmpty: boolean): [MonthDay | null, CellProblem['why'] | null] {
  if (text === '') return [null, mayBeEmpty ? null : 'empty'];
  const date = readMonthDay(text);
  return [date, date === null ? 'not-a-date' : null];
}
