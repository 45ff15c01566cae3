/** Science models by name, and published values held against them. */
import { existsSync, readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { type CheckedRow, calcModelNamed, calcModels, runCheckTable } from '@leywright/agronomy';
import { refusalSentence } from '@leywright/api';
import { nearest } from '@leywright/book';
import { parse as parseCsv } from 'csv-parse/sync';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { textTable, wrapped } from '../tables/text-table.ts';
import { said } from '../words.ts';

export async function calcCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const read = parse(args);
  if ('sentence' in read) return refuse(io, [read.sentence]);
  const { json = false, list = false, help = false, checks } = read.values;
  if (list) return listModels(read.positionals, json, io);
  if (checks !== undefined) return checkTable(checks, json, io);
  const [name, extra] = read.positionals;
  if (name === undefined) return refuse(io, [said.noModel]);
  if (extra !== undefined) return refuse(io, [said.tooMany(extra)]);
  return help ? aboutModel(name, io) : runModel(name, json, io);
}

function parse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        json: { type: 'boolean' },
        list: { type: 'boolean' },
        help: { type: 'boolean' },
        checks: { type: 'string' },
      },
    });
  } catch (error) {
    return { sentence: error instanceof Error ? error.message : String(error) };
  }
}

/** All models, or those whose name or title has every word given. */
function listModels(words: readonly string[], json: boolean, io: Io): ExitCode {
  const models = Object.entries(calcModels).filter(([name, { title }]) =>
    words.every((word) => `${name} ${title}`.toLowerCase().includes(word.toLowerCase())),
  );
  if (json) {
    printJson(io, {
      models: models.map(([model, { title, inputs, outputs, source }]) => ({
        model,
        title,
        source,
        inputs: inputs.map(({ key, unit, meaning, optional = false, kind = 'number' }) => ({
          key,
          unit,
          meaning,
          optional,
          kind,
        })),
        outputs,
      })),
    });
    return 0;
  }
  io.out(
    models
      .map(
        ([name, model]) =>
          `${name}: ${model.title}\n${wrapped(`takes ${keysOf(model.inputs)}`, '    ')}\n${wrapped(`gives ${keysOf(model.outputs)}`, '    ')}`,
      )
      .join('\n'),
  );
  return 0;
}

/** What goes in and out of one model, with units, and where it is from. */
function aboutModel(name: string, io: Io): ExitCode {
  const model = calcModelNamed(name);
  if (model === null) return refuse(io, [said.noSuchModel(name, nearest(name, Object.keys(calcModels))[0] ?? null)]);
  const takes = model.inputs.map(({ key, unit, meaning, optional = false, kind = 'number' }) => [
    optional ? `${key}?` : key,
    unit,
    kind,
    meaning,
  ]);
  const gives = model.outputs.map(({ key, unit, meaning }) => [key, unit, '', meaning]);
  const columns = (head: string) => [{ head }, { head: 'Unit' }, { head: 'Kind' }, { head: 'Is' }];
  io.out(`${name}: ${model.title}\n\n${wrapped(`Source: ${model.source}`, '')}`);
  if (takes.length > 0) io.out(`\n${textTable(columns('Takes'), takes)}`);
  io.out(`\n${textTable(columns('Gives'), gives)}`);
  io.out(`\n${said.calcKinds}`);
  return 0;
}

/** lat deg, J (day of the year) …; what may be left out has a question mark. */
function keysOf(
  parts: readonly { readonly key: string; readonly unit: string; readonly optional?: boolean }[],
): string {
  return parts
    .map(
      ({ key, unit, optional }) =>
        `${key}${optional === true ? '?' : ''}${unit === '' || unit === '-' ? '' : ` (${unit})`}`,
    )
    .join(', ');
}

async function runModel(name: string, json: boolean, io: Io): Promise<ExitCode> {
  const model = calcModelNamed(name);
  if (model === null) return refuse(io, [said.noSuchModel(name, nearest(name, Object.keys(calcModels))[0] ?? null)]);
  const inputs = readObject(await io.input());
  if (inputs === null) return refuse(io, [said.inputNotJson]);
  const answer = model.run(inputs, (file) => textOf(resolve(file)));
  if (answer.kind === 'problems')
    return refuse(
      io,
      answer.problems.map(({ key, why, found }) => refusalSentence(`calc-${why}`, { field: key, found })),
    );
  const units = Object.fromEntries(model.outputs.map(({ key, unit }) => [key, unit]));
  if (json) printJson(io, { model: name, outputs: answer.outputs, units });
  else
    io.out(
      textTable(
        [{ head: 'Output' }, { head: 'Value' }, { head: 'Unit' }, { head: 'Is' }],
        outputRows(answer.outputs, model.outputs),
      ),
    );
  return 0;
}

function outputRows(
  outputs: Readonly<Record<string, unknown>>,
  described: readonly { readonly key: string; readonly unit: string; readonly meaning: string }[],
) {
  return Object.entries(outputs).map(([key, value]) => {
    const about = described.find((one) => one.key === key);
    return [
      key,
      typeof value === 'number' ? String(Number(value.toPrecision(8))) : JSON.stringify(value),
      about?.unit ?? '',
      about?.meaning ?? '',
    ];
  });
}

async function checkTable(path: string, json: boolean, io: Io): Promise<ExitCode> {
  const text = await readFile(path, 'utf8').catch(() => null);
  if (text === null) return refuse(io, [said.noChecks(path)]);
  const rows = readRows(text);
  if (typeof rows === 'string') return refuse(io, [said.badChecks(path, rows)]);
  const checked = runCheckTable(rows, filesBeside(path));
  if (json) printJson(io, { rows: checked });
  else io.out(checksText(checked));
  return checked.every((row) => row.status === 'met') ? 0 : 1;
}

/** Files named in a table: from the folder that holds `checks/`, else from the table's own folder. */
function filesBeside(table: string): (file: string) => string | null {
  const own = dirname(resolve(table));
  const above = [own];
  for (let folder = own; dirname(folder) !== folder; folder = dirname(folder)) above.push(dirname(folder));
  const root = above.find((folder) => existsSync(resolve(folder, 'checks')));
  return (file) => (root === undefined ? null : textOf(resolve(root, file))) ?? textOf(resolve(own, file));
}

function textOf(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

const columns = ['id', 'inputs', 'expected', 'tolerance'] as const;
type Row = Readonly<Record<(typeof columns)[number], string>>;

/** The rows, or what is wrong with the table. */
function readRows(text: string): readonly Row[] | string {
  try {
    const rows = parseCsv(text, { columns: true, bom: true, skip_empty_lines: true, trim: true }) as Row[];
    const first = rows[0];
    return first !== undefined && columns.every((column) => Object.hasOwn(first, column)) ? rows : said.checksWant;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

function checksText(rows: readonly CheckedRow[]): string {
  const count = (status: CheckedRow['status']) => rows.filter((row) => row.status === status).length;
  const others = rows
    .filter((row) => row.status !== 'met')
    .map((row) => [row.id, row.status, JSON.stringify(row.got), JSON.stringify(row.expected), row.why]);
  const sum = `${count('met')} met, ${count('missed')} missed, ${count('unknown')} unknown, of ${rows.length}.`;
  return others.length === 0
    ? sum
    : `${textTable([{ head: 'Check' }, { head: 'Status' }, { head: 'Got' }, { head: 'Expected' }, { head: 'Why' }], others)}\n\n${sum}`;
}

function readObject(text: string): Readonly<Record<string, unknown>> | null {
  try {
    const value: unknown = JSON.parse(text);
    return value !== null && typeof value === 'object' && !Array.isArray(value)
      ? (value as Readonly<Record<string, unknown>>)
      : null;
  } catch {
    return null;
  }
}
