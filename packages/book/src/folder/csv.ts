/** CSV texts cut into cells, with the line of every row. */
import { parse } from 'csv-parse/browser/esm/sync';
import type { ProblemList } from './problem.ts';

export interface SheetRow {
  /** As a spreadsheet counts rows: the heading is line 1, blank rows count, a cell with line breaks is still one row. */
  readonly line: number;
  /** Line in a text editor on which the row begins; greater than `line` below cells with line breaks. */
  readonly textLine: number;
  readonly cells: readonly string[];
}

export interface Sheet {
  readonly file: string;
  /** As written. */
  readonly headings: readonly string[];
  /** Line of the heading row: 1 unless blank rows stand before it. */
  readonly headingLine: number;
  readonly rows: readonly SheetRow[];
  readonly partedBy: ',' | ';' | '\t';
}

/** Rows of a CSV text. Comma, semicolon or tab, told from its heading. Null, with a problem, when it cannot be cut. */
export function readSheet(file: string, text: string, problems: ProblemList): Sheet | null {
  const partedBy = partingSign(text);
  const records = cut(file, text, partedBy, problems);
  if (records === null) return null;
  const rows = placed(records).filter((row) => row.cells.some((cell) => cell !== ''));
  const [heading, ...rest] = rows[0]?.cells[0]?.startsWith('sep=') ? rows.slice(1) : rows;
  if (heading === undefined) return { file, headings: [], headingLine: 1, rows: [], partedBy };
  return { file, headings: heading.cells, headingLine: heading.line, rows: rest, partedBy };
}

/** All rows of a CSV text with their cells as written, blank rows too. */
export function cutSheet(file: string, text: string, problems: ProblemList): string[][] | null {
  return cut(file, text, partingSign(text), problems);
}

function cut(file: string, text: string, delimiter: string, problems: ProblemList): string[][] | null {
  try {
    return parse(text, {
      delimiter,
      bom: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
      record_delimiter: ['\r\n', '\n', '\r'],
    });
  } catch (error) {
    const rowsBefore = (error as { records?: number }).records;
    problems.add('quotes-broken', { file, line: rowsBefore === undefined ? null : rowsBefore + 1, column: null });
    return null;
  }
}

function placed(records: readonly string[][]): SheetRow[] {
  let textLine = 1;
  return records.map((record, at) => {
    const row = { line: at + 1, textLine, cells: record.map((cell) => cell.trim()) };
    textLine +=
      1 + record.reduce((breaks, cell) => breaks + (/[\r\n]/.test(cell) ? cell.split(/\r\n|\r|\n/).length - 1 : 0), 0);
    return row;
  });
}

/** Spreadsheets of places that write 1,5 part cells by semicolons. */
function partingSign(text: string): Sheet['partedBy'] {
  const first = /^\uFEFF?\s*([^\r\n]*)/.exec(text)?.[1] ?? '';
  const named = /^sep=([,;\t])$/i.exec(first.trim())?.[1];
  if (named !== undefined) return named as Sheet['partedBy'];
  const heading = first.slice(0, 10_000).replace(/"[^"]*"/g, '');
  const count = (sign: string) => heading.split(sign).length - 1;
  return ([';', '\t'] as const).reduce<Sheet['partedBy']>(
    (best, sign) => (count(sign) > count(best) ? sign : best),
    ',',
  );
}

/** A heading as the tables know it: `Gross m2` is `gross_m2`. */
export function plainHeading(heading: string): string {
  return heading.toLowerCase().replace(/[\s-]+/g, '_');
}
