/** Rows of a table out of a sheet, by its columns, with every problem of every cell. */
import type { DayOrder, DecimalSign } from '@leywright/measures';
import { plainHeading, type Sheet, type SheetRow } from '../folder/csv.ts';
import type { Fault, ProblemCode, ProblemList, ProblemPlace } from '../folder/problem.ts';
import type { Names } from '../names/names.ts';
import { nearest } from '../names/nearest.ts';
import type { Cell, Column, Row, Table } from './column.ts';
import { number } from './plain-kinds.ts';

const portion = number('', { least: 0 });

export interface Reading {
  readonly names: Names;
  readonly problems: ProblemList;
  /** As farm.json says; null = told from each file. */
  readonly decimals: DecimalSign | null;
  readonly dayOrder: DayOrder | null;
  readonly money: string;
}

/** A row without faults in its cells. `fault` tells one that shows only beside other rows. */
export interface Placed<R> {
  readonly value: R;
  readonly line: number;
  /** Cells under headings that grow with the farm, by the ending after the table's beginning. */
  readonly growing: ReadonlyMap<string, number>;
  readonly fault: (code: ProblemCode, column: string | null, fault?: Fault) => undefined;
}

/** All sound rows; rows that stand twice are told and left out. */
export function readTable<R>(table: Table<R>, sheet: Sheet, reading: Reading): Placed<R>[] {
  const columns = Object.entries(table.columns) as [keyof R & string, Column<unknown>][];
  const places = headingPlaces(
    table,
    columns.map(([, column]) => column),
    sheet,
    reading,
  );
  const decimals =
    reading.decimals ??
    decimalsOf(
      sheet,
      columns
        .flatMap(([, column]) => column.headings)
        .filter((one) => one.numeric)
        .map((one) => one.name),
      places,
    );
  const rows = sheet.rows.map((row) =>
    readRow<R>(row, { table, columns, sheet, places, reading: { ...reading, decimals } }),
  );
  return withoutTwins(
    table,
    rows.filter((row) => row !== null),
  );
}

type Places = ReadonlyMap<string, number>;

function headingPlaces<R>(
  table: Table<R>,
  columns: readonly Column<unknown>[],
  sheet: Sheet,
  reading: Reading,
): Places {
  const { problems } = reading;
  const known = new Map(
    columns.flatMap((column) =>
      [...column.headings.map((one) => one.name), ...column.alsoCalled].map((name) => [name, column] as const),
    ),
  );
  const places = new Map<string, number>();
  sheet.headings.forEach((written, at) => {
    if (written === '') return;
    const heading = plainHeading(written);
    const place = { file: sheet.file, line: sheet.headingLine, column: written };
    const named = known.get(heading);
    const name = named?.alsoCalled.includes(heading) ? (named.headings[0]?.name ?? heading) : heading;
    if (places.has(name)) problems.add('heading-twice', place, { found: written });
    else if (named !== undefined) places.set(name, at);
    else if (table.growing !== undefined && heading.startsWith(table.growing.beginning))
      places.set(growingHeading(written, place, table.growing, reading), at);
    else tellUnknown(written, [...known.keys()], place, problems);
  });
  for (const column of columns) tellUnits(column, sheet, places, problems);
  return places;
}

/** A heading near a known one is most likely that one misspelled, and its cells would be lost: that stops. Others are notes of their own. */
function tellUnknown(heading: string, known: readonly string[], place: ProblemPlace, problems: ProblemList): void {
  const near = nearest(heading, known);
  problems.add('unknown-heading', place, {
    found: heading,
    nearest: near,
    gravity: near.length > 0 ? 'stops' : 'look',
  });
}

function growingHeading(
  heading: string,
  place: ProblemPlace,
  growing: NonNullable<Table<unknown>['growing']>,
  reading: Reading,
): string {
  const ending = heading.slice(growing.beginning.length);
  const named = reading.names[growing.of].find(ending);
  if (named.kind === 'one') return growing.beginning + named.id;
  const near = reading.names[growing.of].nearest(ending).map((id) => growing.beginning + id);
  reading.problems.add('unknown-heading', place, { found: heading, nearest: near });
  return heading;
}

function tellUnits(column: Column<unknown>, sheet: Sheet, places: Places, problems: ProblemList): void {
  const given = column.headings.map((one) => one.name).filter((name) => places.has(name));
  if (sheet.headings.length === 0) return;
  const place = { file: sheet.file, line: sheet.headingLine, column: given[1] ?? column.headings[0]?.name ?? null };
  if (column.takes === 'one' && given.length > 1) problems.add('two-units', place, { found: given.join(', ') });
  if (column.required && given.length === 0)
    problems.add('missing-heading', place, { nearest: column.headings.map((one) => one.name) });
}

/** Which sign stands before decimals: told from the cells that can be read only one way. Null when none tells, or they disagree. */
function decimalsOf(sheet: Sheet, headings: readonly string[], places: Places): DecimalSign | null {
  let points = false;
  let commas = false;
  for (const at of headings.flatMap((name) => places.get(name) ?? [])) {
    for (const { cells } of sheet.rows) {
      const found = (cells[at] ?? '').replace(/\s*%$/, '');
      points ||= /^[+-]?(\d*\.(\d{1,2}|\d{4,})|0\.\d+|\d{1,3}(,\d{3})+\.\d+)$/.test(found);
      commas ||= /^[+-]?(\d*,(\d{1,2}|\d{4,})|0,\d+|\d{1,3}(\.\d{3})+,\d+)$/.test(found);
    }
  }
  if (points === commas) return null;
  return points ? 'point' : 'comma';
}

interface RowReading<R> {
  readonly table: Table<R>;
  readonly columns: readonly (readonly [keyof R & string, Column<unknown>])[];
  readonly sheet: Sheet;
  readonly places: Places;
  readonly reading: Reading;
}

function readRow<R>(found: SheetRow, rowReading: RowReading<R>): Placed<R> | null {
  const { columns, sheet, places, reading, table } = rowReading;
  const before = reading.problems.stopping();
  const fault = faultIn(found, sheet, reading.problems);
  const text = (heading: string) => found.cells[places.get(heading) ?? -1] ?? '';
  const row: Row = { text, cell: (heading) => cellOf(heading, text(heading), { sheet, reading, fault }) };
  tellLoose(found, sheet, fault);
  const value = Object.fromEntries(
    columns.map(([field, column]) => [field, known(column, places) ? column.read(row) : undefined]),
  );
  const growing =
    table.growing === undefined
      ? []
      : [...places.keys()].filter((one) => one.startsWith(table.growing?.beginning ?? '') && text(one) !== '');
  const figures = growing.map(
    (heading) => [heading.slice(table.growing?.beginning.length), growingFigure(row, heading)] as const,
  );
  if (reading.problems.stopping() !== before) return null;
  // A heading that must be there and is not has stopped the whole file already.
  if (Object.values(value).some((one) => one === undefined)) return null;
  return {
    value: value as R,
    line: found.line,
    growing: new Map(figures.map(([ending, figure]) => [ending, figure ?? 0])),
    fault,
  };
}

function known(column: Column<unknown>, places: Places): boolean {
  return !column.required || column.headings.some((one) => places.has(one.name));
}

function growingFigure(row: Row, heading: string): number | undefined {
  const cell = row.cell(heading);
  return portion.read(row.text(heading), cell);
}

function faultIn(found: SheetRow, sheet: Sheet, problems: ProblemList): Placed<unknown>['fault'] {
  const textLine = found.textLine === found.line ? {} : { textLine: found.textLine };
  return (code, column, fault = {}) => {
    problems.add(
      code,
      { file: sheet.file, line: found.line, column },
      { ...fault, figures: { ...fault.figures, ...textLine } },
    );
    return undefined;
  };
}

interface CellPlace {
  readonly sheet: Sheet;
  readonly reading: Reading;
  readonly fault: Placed<unknown>['fault'];
}

function cellOf(heading: string, found: string, { sheet, reading, fault }: CellPlace): Cell {
  return {
    names: reading.names,
    decimals: reading.decimals,
    dayOrder: reading.dayOrder,
    money: reading.money,
    pointMayPartThousands: sheet.partedBy === ';',
    fault: (code, more) => fault(code, heading, { found: found === '' ? null : found, ...more }),
  };
}

/** Cells beyond the last heading would be lost: most often a comma inside an unquoted text. */
function tellLoose(found: SheetRow, sheet: Sheet, fault: Placed<unknown>['fault']): void {
  const loose = found.cells.filter((cell, at) => cell !== '' && (sheet.headings[at] ?? '') === '');
  if (loose.length > 0) fault('cells-without-heading', null, { found: loose.join(sheet.partedBy) });
}

function withoutTwins<R>(table: Table<R>, rows: readonly Placed<R>[]): Placed<R>[] {
  if (table.key.length === 0) return [...rows];
  const first = new Map<string, number>();
  return rows.filter((row) => {
    const key = JSON.stringify(table.key.map((field) => row.value[field]));
    const before = first.get(key);
    if (before === undefined) first.set(key, row.line);
    else tellTwin(table, row, before);
    return before === undefined;
  });
}

function tellTwin<R>(table: Table<R>, row: Placed<R>, firstLine: number): void {
  const [field = ''] = table.key;
  const heading = (table.columns[field as keyof R & string] as Column<unknown>).headings[0]?.name ?? field;
  const found = table.key
    .map((one) => spoken(row.value[one]))
    .filter((one) => one !== '')
    .join(', ');
  row.fault(table.key.length === 1 ? 'id-twice' : 'row-twice', heading, { found, figures: { firstLine } });
}

function spoken(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}
