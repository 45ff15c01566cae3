/** A table of published values held against the models: met, missed or unknown, row by row, none passed over. */
import type { CalcValue, ReadText } from './calc-model.ts';
import { runCalc } from './registry.ts';

/** A row as its file has it: JSON in `inputs` and `expected`. */
export interface CheckRow {
  readonly id: string;
  readonly inputs: string;
  readonly expected: string;
  readonly tolerance: string;
}

export interface CheckedRow {
  readonly id: string;
  readonly status: 'met' | 'missed' | 'unknown';
  readonly got: CalcValue;
  readonly expected: CalcValue;
  /** Greatest distance found by output; null where it is not a distance (texts, yes and no). */
  readonly off: Readonly<Record<string, number | null>>;
  /** Why a row is unknown; empty otherwise. */
  readonly why: string;
}

/** Each row with what came out. Only the outputs a row expects are compared; `readText` reads the files that rows name. */
export function runCheckTable(rows: readonly CheckRow[], readText?: ReadText): readonly CheckedRow[] {
  return rows.map((row) => checkRow(row, readText));
}

function checkRow(row: CheckRow, readText?: ReadText): CheckedRow {
  const inputs = readObject(row.inputs);
  const expected = readObject(row.expected);
  const unknown = (why: string): CheckedRow => ({
    id: row.id,
    status: 'unknown',
    got: null,
    expected: expected as CalcValue,
    off: {},
    why,
  });
  if (inputs === null || expected === null) return unknown('inputs or expected is not a JSON object');
  const name = inputs['fn'];
  if (typeof name !== 'string') return unknown('inputs has no "fn"');
  const answer = runCalc(name, inputs, readText);
  if (answer === null) return unknown(`there is no model "${name}"`);
  if (answer.kind === 'problems')
    return unknown(
      answer.problems
        .map(({ key, why, found }) => `${key}: ${why}${why === 'no-answer' ? ` (${found})` : ''}`)
        .join('; '),
    );
  const missing = Object.keys(expected).filter((key) => !Object.hasOwn(answer.outputs, key));
  if (missing.length > 0) return unknown(`${name} gives no ${missing.join(', ')}`);
  const tolerances = readTolerance(row.tolerance);
  const off: Record<string, number | null> = {};
  let met = true;
  for (const [key, value] of Object.entries(expected)) {
    const got = answer.outputs[key] ?? null;
    const distance = distanceBetween(got, value as CalcValue, (one) => one);
    off[key] = Number.isFinite(distance) ? distance : null;
    const tolerance = tolerances(key);
    // A printed tolerance is decimal: a hair of binary rounding is not a miss.
    met &&= distanceBetween(got, value as CalcValue, asPrinted(tolerance)) <= tolerance + 1e-12;
  }
  const got = Object.fromEntries(Object.keys(expected).map((key) => [key, answer.outputs[key] ?? null]));
  return { id: row.id, status: met ? 'met' : 'missed', got, expected: expected as CalcValue, off, why: '' };
}

/**
 * What came out, in the decimals of the figure and its tolerance: 0.08361 is held as 0.0836 against 0.0834 ± 0.0002, since the figure was printed
 * so. Without a tolerance it is held as it is.
 */
function asPrinted(tolerance: number): (got: number, expected: number) => number {
  if (tolerance === 0) return (got) => got;
  return (got, expected) => {
    const scale = 10 ** Math.max(decimalsOf(expected), decimalsOf(tolerance));
    return Math.round(got * scale) / scale;
  };
}

function decimalsOf(value: number): number {
  const [digits = '', exponent = '0'] = String(value).split('e');
  return Math.max(0, (digits.split('.')[1]?.length ?? 0) - Number(exponent));
}

type Shown = (got: number, expected: number) => number;

/** Greatest difference between two values of the same shape; infinite when texts, truths or shapes differ. */
function distanceBetween(got: CalcValue, expected: CalcValue, shown: Shown): number {
  if (typeof got === 'number' && typeof expected === 'number') return Math.abs(shown(got, expected) - expected);
  if (Array.isArray(got) && Array.isArray(expected)) {
    if (got.length !== expected.length) return Number.POSITIVE_INFINITY;
    return got.reduce(
      (worst: number, one, at) => Math.max(worst, distanceBetween(one, expected[at] ?? null, shown)),
      0,
    );
  }
  if (isObject(got) && isObject(expected)) {
    return Object.keys(expected).reduce(
      (worst, key) => Math.max(worst, distanceBetween(got[key] ?? null, expected[key] ?? null, shown)),
      0,
    );
  }
  return got === expected ? 0 : Number.POSITIVE_INFINITY;
}

function isObject(value: CalcValue): value is { readonly [key: string]: CalcValue } {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function readTolerance(text: string): (key: string) => number {
  const byKey = readObject(text);
  if (byKey !== null) return (key) => (typeof byKey[key] === 'number' ? byKey[key] : 0);
  const number = Number(text);
  return () => (text !== '' && Number.isFinite(number) ? number : 0);
}

function readObject(text: string): Readonly<Record<string, unknown>> | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : null;
  } catch {
    return null;
  }
}
