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
type Chosen<R, Empty> = {
  readonly [N in keyof R & string as Camel<N>]: (R[N] extends readonly (infer V)[] ? V : never) | Empty;
};

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

type Reader = (text: string) => readonly [value: unknown, why: CellProblem['why'] | null];

/** Reads one row. Bad cells become null (or an empty text) and are handed to `onProblem`; the validation lists them. */
export function readRow<C extends Columns>(
  columns: C,
  cell: (column: string) => string,
  onProblem: (problem: CellProblem) => void,
): RowOf<C> {
  const row: Record<string, unknown> = {};
  for (const [names, read] of readersOf(columns)) {
    for (const column of names) {
      const [value, why] = read(cell(column));
      row[camel(column)] = value;
      if (why !== null) onProblem({ column, found: cell(column), why });
    }
  }
  return row as RowOf<C>;
}

function readersOf(columns: Columns): readonly (readonly [names: readonly string[], read: Reader])[] {
  const chosen = (lists: Columns['oneOf'], mayBeEmpty: boolean) =>
    Object.entries(lists ?? {}).map(([name, list]) => [[name], chosenFrom(list, mayBeEmpty)] as const);
  return [
    [columns.words, (text) => [text, text === '' ? 'empty' : null]],
    [columns.maybeWords ?? [], (text) => [text || null, null]],
    [columns.amounts ?? [], (text) => readAmount(text, false)],
    [columns.maybeAmounts ?? [], (text) => readAmount(text, true)],
    [columns.dates ?? [], (text) => readDate(text, false)],
    [columns.maybeDates ?? [], (text) => readDate(text, true)],
    [columns.lists ?? [], (text) => [splitList(text), null]],
    [columns.yesNo ?? [], (text) => [text === 'yes', text === 'yes' || text === 'no' ? null : 'not-yes-or-no']],
    ...chosen(columns.oneOf, false),
    ...chosen(columns.maybeOneOf, true),
  ];
}

function chosenFrom(list: readonly string[], mayBeEmpty: boolean): Reader {
  return (text) => {
    if (text === '' && mayBeEmpty) return [null, null];
    return [text, list.includes(text) ? null : 'not-in-list'];
  };
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
