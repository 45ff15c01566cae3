/** The parts of the inspection pack as CSV, one file each. */
import type { Pack } from '@leywright/api';
import { stringify } from 'csv-stringify/sync';

export function packCsv(pack: Pack): ReadonlyMap<string, string> {
  return new Map(
    pack.parts.map((part) => [
      `${String(part.number).padStart(2, '0')}-${part.title.toLowerCase().replace(/[^a-z]+/g, '-')}.csv`,
      stringify([part.columns.map((column) => column.head), ...part.rows.map((row) => row.map(asText))]),
    ]),
  );
}

/** A spreadsheet runs a cell that begins so as a formula; an apostrophe keeps it text. A negative number is a number. */
function asText(cell: string): string {
  return /^[=+\-@\t\r]/.test(cell) && !/^-[\d.,]+$/.test(cell) ? `'${cell}` : cell;
}
