/** A table written as CSV that reads back to the same rows: SI units, ISO days, decimal points. */
import { stringify } from 'csv-stringify/browser/esm/sync';
import type { Column, Table } from './column.ts';

/** CSV of the rows; headings under which nothing stands are left out unless they must be there. `growing` figures by row, by ending. */
export function writeTable<R>(
  table: Table<R>,
  rows: readonly R[],
  money: string,
  growing: readonly Readonly<Record<string, number>>[] = [],
): string {
  const columns = Object.entries(table.columns) as [keyof R & string, Column<unknown>][];
  const headings = columns.flatMap(([, column]) =>
    column.headings.map((one, at) => ({ name: one.name, always: column.required && at === 0 })),
  );
  const endings = [...new Set(growing.flatMap((one) => Object.keys(one)))];
  const cells = rows.map((row, at) => [
    ...columns.flatMap(([field, column]) => column.write(row[field], money)),
    ...endings.map((ending) => (Object.hasOwn(growing[at] ?? {}, ending) ? String(growing[at]?.[ending]) : '')),
  ]);
  const names = [
    ...headings,
    ...endings.map((ending) => ({ name: `${table.growing?.beginning}${ending}`, always: true })),
  ];
  const kept = names.map((_, at) => at).filter((at) => names[at]?.always || cells.some((row) => row[at] !== ''));
  return stringify(
    [names.map((one) => one.name), ...cells].map((row) => kept.map((at) => row[at])),
    { quoted_match: /[\r\n;\t]/, record_delimiter: '\n' },
  );
}
