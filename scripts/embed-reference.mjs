// Turns the reference tables (packages/agronomy/reference/**/*.csv) into one JSON file the code can import anywhere.
//
// The CSV files are what people read and mend. The browser, the phone and the server cannot open files in the same way,
// so the pure packages import packages/agronomy/src/reference/tables.json, which this script writes and git ignores.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const projectFolder = resolve(dirname(fileURLToPath(import.meta.url)), '..');

/** Raised when the shape of the written file changes, so that older files are rebuilt. */
const SHAPE_VERSION = 1;

/**
 * @typedef {{ columns: string[], rows: string[][], comment: string }} ReferenceTable cells are text, as printed in the CSV
 * @typedef {{ tables: number, rows: number, written: boolean, file: string }} EmbedResult
 */

/**
 * Writes tables.json when the CSV files have changed since it was last written.
 * @param {{ from?: string, to?: string }} [places]
 * @returns {Promise<EmbedResult>}
 */
export async function embedReference(places = {}) {
  const from = places.from ?? join(projectFolder, 'packages/agronomy/reference');
  const to = places.to ?? join(projectFolder, 'packages/agronomy/src/reference/tables.json');
  const files = csvFilesUnder(from);
  const checksum = checksumOf(files);
  const known = checksumWritten(to);
  if (known === checksum) return { tables: files.length, rows: 0, written: false, file: to };

  const { parse } = await import('csv-parse/sync');
  /** @type {Record<string, ReferenceTable | string>} */
  const tables = {};
  let rows = 0;
  for (const file of files) {
    const table = readTable(file, parse);
    tables[file.name] = table;
    rows += table.rows.length;
  }
  tables.checksum = checksum;
  writeWhole(to, `${JSON.stringify(tables)}\n`);
  return { tables: files.length, rows, written: true, file: to };
}

/**
 * @param {{ path: string, name: string, text: string }} file
 * @param {typeof import('csv-parse/sync').parse} parse
 * @returns {ReferenceTable}
 */
function readTable(file, parse) {
  const lines = file.text.split(/\r?\n/);
  const commentLines = lines.findIndex((line) => !line.startsWith('#'));
  const comment = lines
    .slice(0, commentLines)
    .map((line) => line.replace(/^#\s?/, ''))
    .join('\n');
  /** @type {string[][]} */
  const [columns, ...rows] = parse(lines.slice(commentLines).join('\n'), {
    skip_empty_lines: true,
    relax_column_count: true,
  });
  if (columns === undefined) throw new Error(`${file.path} has no heading line. Give it one, or delete the file.`);
  const ragged = rows.findIndex((row) => row.length !== columns.length);
  if (ragged >= 0) {
    const row = rows[ragged] ?? [];
    throw new Error(
      `${file.path}, row ${ragged + 1} ("${row[0] ?? ''}") has ${row.length} cells where the heading has ${columns.length}. ` +
        'Most often a comma inside a cell is not quoted.',
    );
  }
  return { columns, rows, comment };
}

/** @param {string} folder @returns {{ path: string, name: string, text: string }[]} in order of name */
function csvFilesUnder(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.csv'))
    .map((path) => ({
      path: relative(projectFolder, join(folder, path)),
      name: path.slice(0, -'.csv'.length).split(sep).join('/'),
      text: readFileSync(join(folder, path), 'utf8').replace(/^\uFEFF/, ''),
    }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** @param {{ name: string, text: string }[]} files */
function checksumOf(files) {
  const hash = createHash('sha256').update(`shape ${SHAPE_VERSION}`);
  for (const file of files) hash.update(`\0${file.name}\0${file.text}`);
  return hash.digest('hex');
}

/** @param {string} path @returns {string | null} */
function checksumWritten(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8')).checksum ?? null;
  } catch {
    return null; // not written yet, or cut short: write it again
  }
}

/** Two commands may do this at once; a reader must never meet half a file. @param {string} path @param {string} text */
function writeWhole(path, text) {
  mkdirSync(dirname(path), { recursive: true });
  const draft = `${path}.${process.pid}.draft`;
  writeFileSync(draft, text);
  renameSync(draft, path);
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const result = await embedReference();
  console.log(
    result.written
      ? `Embedded ${result.tables} reference tables (${result.rows} rows).`
      : `The ${result.tables} reference tables are embedded already.`,
  );
}
