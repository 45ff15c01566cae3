/** Mending a farm folder in place: what stands where a problem points, and the same file with something else there. */
import { stringify } from 'csv-stringify/browser/esm/sync';
import { cutSheet, plainHeading, readSheet } from '../folder/csv.ts';
import { type ProblemPlace, problemList } from '../folder/problem.ts';
import { textOf } from '../folder/text.ts';

/** What is written at a place: a cell, a value of a JSON file, a line of the book. Null where a place is none of these. */
export function writtenAt(bytes: string | Uint8Array, place: ProblemPlace): string | null {
  const text = textOf(place.file, bytes, problemList());
  if (text === null) return null;
  return kindOf(place.file).read(text, place);
}

/** The file as text with `to` written at the place. Null where `writtenAt` is null. What else stands in it stays. */
export function writeAt(bytes: string | Uint8Array, place: ProblemPlace, to: string): string | null {
  const text = textOf(place.file, bytes, problemList());
  if (text === null) return null;
  return kindOf(place.file).write(text, place, to);
}

interface FileKind {
  readonly read: (text: string, place: ProblemPlace) => string | null;
  readonly write: (text: string, place: ProblemPlace, to: string) => string | null;
}

function kindOf(file: string): FileKind {
  if (/\.csv$/i.test(file)) return csv;
  if (/\.jsonl$/i.test(file)) return lines;
  return /\.(geo)?json$/i.test(file) ? json : nothing;
}

const nothing: FileKind = { read: () => null, write: () => null };

const csv: FileKind = {
  read: (text, place) => {
    const found = cellOf(text, place);
    return found === null ? null : (found.records[found.row]?.[found.cell] ?? '');
  },
  write: (text, place, to) => {
    const found = cellOf(text, place);
    if (found === null) return null;
    const { records, row, cell, partedBy } = found;
    const mended = records.map((record, at) =>
      at === row
        ? Array.from({ length: Math.max(record.length, cell + 1) }, (_, i) => (i === cell ? to : (record[i] ?? '')))
        : record,
    );
    return stringify(mended, { delimiter: partedBy, quoted_match: /[\r\n;\t]/, record_delimiter: '\n' });
  },
};

function cellOf(text: string, { file, line, column }: ProblemPlace) {
  if (line === null || column === null) return null;
  const sheet = readSheet(file, text, problemList());
  const records = cutSheet(file, text, problemList());
  if (sheet === null || records === null || line < sheet.headingLine || line > records.length) return null;
  const cell = sheet.headings.findIndex((heading) => plainHeading(heading) === plainHeading(column));
  return cell < 0 ? null : { records, row: line - 1, cell, partedBy: sheet.partedBy };
}

const lineEnd = /\r\n|\r|\n/;

const lines: FileKind = {
  read: (text, { line }) => (line === null ? null : (text.split(lineEnd)[line - 1] ?? null)),
  write: (text, { line }, to) => {
    const all = text.split(lineEnd);
    return line === null || line > all.length ? null : all.map((one, at) => (at === line - 1 ? to : one)).join('\n');
  },
};

/** Longest value shown for mending; an outline of a plot is not mended by hand. */
const longestValue = 400;

const json: FileKind = {
  read: (text, place) => {
    const found = jsonValue(text, place);
    if (found === null) return null;
    const { value } = found;
    const written = value === undefined ? '' : typeof value === 'string' ? value : JSON.stringify(value);
    return written.length > longestValue ? null : written;
  },
  write: (text, place, to) => {
    const found = jsonValue(text, place);
    return found === null ? null : `${JSON.stringify(withValue(found.whole, found.keys, valueFrom(to)), null, 2)}\n`;
  },
};

function jsonValue(text: string, { column }: ProblemPlace) {
  if (column === null || column === '') return null;
  const keys = column.split('.');
  const whole = parsed(text);
  if (!isObject(whole) || keys.some((key) => key === '__proto__')) return null;
  const value = keys.reduce<unknown>(
    (at, key) => (isObject(at) && Object.hasOwn(at, key) ? at[key] : undefined),
    whole,
  );
  return { whole, keys, value };
}

function withValue(at: unknown, [key = '', ...deeper]: readonly string[], to: unknown): unknown {
  const inner = isObject(at) ? at[key] : undefined;
  const value = deeper.length === 0 ? to : withValue(inner, deeper, to);
  if (Array.isArray(at)) return at.map((one, place) => (String(place) === key ? value : one));
  return { ...(isObject(at) ? at : {}), [key]: value };
}

/** A number, a list or a word as JSON has it; anything else is a text. */
function valueFrom(written: string): unknown {
  const value = parsed(written);
  return value === undefined ? written : value;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
