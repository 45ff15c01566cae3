/**
 * What a column of the farm folder is. One list of columns drives the reader, the writer and the page that documents the folder, so the
 * three cannot drift apart.
 */
import type { DayOrder, DecimalSign } from '@leywright/measures';
import type { Fault, ProblemCode } from '../folder/problem.ts';
import type { NameKind, Names } from '../names/names.ts';

/** One cell being read: what is known around it, and where its faults go. */
export interface Cell {
  readonly names: Names;
  readonly decimals: DecimalSign | null;
  /** True in files parted by semicolons that show no other sign: there 1.234 may well be a thousand. */
  readonly pointMayPartThousands: boolean;
  readonly dayOrder: DayOrder | null;
  /** Currency of the farm's money, as EUR. */
  readonly money: string;
  readonly fault: (code: ProblemCode, fault?: Fault) => undefined;
}

/** How one cell is read and written. `read` gives undefined after it has said what is wrong. */
export interface Kind<T> {
  /** For people: what the cell holds. */
  readonly holds: string;
  readonly numeric?: boolean;
  readonly read: (text: string, cell: Cell) => T | undefined;
  readonly write: (value: T, money: string) => string;
}

/** The same figure in several units, each under its own heading: `gross_m2`, `gross_ha`. The first is the one written. */
export type Units = readonly (Kind<number> & { readonly ending: string })[];

export interface Heading {
  readonly name: string;
  readonly holds: string;
  readonly numeric: boolean;
}

/** The cells of one row that belong to a column. */
export interface Row {
  /** The trimmed text under a heading; '' when empty or when the file has no such heading. */
  readonly text: (heading: string) => string;
  readonly cell: (heading: string) => Cell;
}

export interface Column<T> {
  /** `one`: at most one of the headings stands in a file. `group`: they belong together, or replace one another row by row. */
  readonly headings: readonly Heading[];
  readonly takes: 'one' | 'group';
  /** Other headings it may stand under, such as `plot` for the `id` of plots.csv. */
  readonly alsoCalled: readonly string[];
  readonly required: boolean;
  readonly meaning: string;
  /** Undefined after a fault has been told. */
  readonly read: (row: Row) => T | undefined;
  /** One text a heading. */
  readonly write: (value: T, money: string) => readonly string[];
}

export type Columns<R> = { readonly [K in keyof R]-?: Column<R[K]> };

export interface Table<R> {
  readonly file: string;
  /** One sentence for people. */
  readonly about: string;
  readonly columns: Columns<R>;
  /** Fields that together may stand only once; empty when rows may repeat. */
  readonly key: readonly (keyof R & string)[];
  /** Names of headings that grow with the farm: `portion_` and the id of a box size. */
  readonly growing?: { readonly beginning: string; readonly of: NameKind };
}

interface ColumnForm {
  readonly alsoCalled?: readonly string[];
}

/** A cell that must be given. */
export function must<T>(name: string, kind: Kind<T> | Units, meaning: string, form: ColumnForm = {}): Column<T> {
  return columnOf<T>({
    name,
    kind,
    meaning,
    form,
    required: true,
    empty: (row, first) => row.cell(first).fault('missing-value'),
  });
}

/** A cell that may be empty: null = not known. */
export function may<T>(name: string, kind: Kind<T> | Units, meaning: string, form: ColumnForm = {}): Column<T | null> {
  return columnOf<T | null>({
    name,
    kind: kind as Kind<T | null> | Units,
    meaning,
    form,
    required: false,
    empty: () => null,
  });
}

/** A cell that may be empty and then means `fallback`; only where an empty cell truly says so. */
export function orElse<T>(name: string, kind: Kind<T> | Units, fallback: T, meaning: string): Column<T> {
  return columnOf<T>({ name, kind, meaning, form: {}, required: false, empty: () => fallback });
}

interface Making<T> {
  readonly name: string;
  readonly kind: Kind<T> | Units;
  readonly meaning: string;
  readonly form: ColumnForm;
  readonly required: boolean;
  readonly empty: (row: Row, firstHeading: string) => T | undefined;
}

function columnOf<T>(making: Making<T>): Column<T> {
  const { name, kind, meaning, form, required, empty } = making;
  const kinds = (
    isUnits(kind)
      ? kind.map((unit) => ({ ...unit, heading: unit.ending === '' ? name : `${name}_${unit.ending}` }))
      : [{ ...kind, heading: name }]
  ) as readonly (Kind<T> & { heading: string })[];
  const alsoCalled = form.alsoCalled ?? [];
  return {
    headings: kinds.map((one) => ({ name: one.heading, holds: one.holds, numeric: one.numeric ?? false })),
    takes: 'one',
    alsoCalled,
    required,
    meaning,
    read(row) {
      for (const one of kinds) {
        const text = row.text(one.heading);
        if (text !== '') return one.read(text, row.cell(one.heading));
      }
      return empty(row, kinds[0]?.heading ?? name);
    },
    write: (value, money) => kinds.map((one, at) => (at > 0 || value === null ? '' : one.write(value, money))),
  };
}

function isUnits<T>(kind: Kind<T> | Units): kind is Units {
  return Array.isArray(kind);
}
