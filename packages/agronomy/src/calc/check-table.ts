/** A table of published values held against the models: met, missed or unknown, row by row, none passed over. */
import type { CalcValue } from './calc-model.ts';
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

/** Each row with what came out. Only the outputs a row expects are compared. */
export function runCheckTable(rows: readonly CheckRow[]): readonly CheckedRow[] {
  return rows.map(checkRow);
}

function checkRow(row: CheckRow): CheckedRow {
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
  const answer = runCalc(name, inputs);
  if (answer === null) return unknown(`there is no model "${name}"`);
  if (answer.kind === 'problems') return unknown(answer.problems.map(({ key, why }) => `${key}: ${why}`).join('; '));
  const missing = Object.keys(expected).filter((key) => !Object.hasOwn(answer.outputs, key));
  if (missing.length > 0) return unknown(`${name} gives no ${missing.join(', ')}`);
  const tolerances = readTolerance(row.tolerance);
  const off: Record<string, number | null> = {};
  let met = true;
  for (const [key, value] of Object.entries(expected)) {
    const distance = distanceBetween(answer.outputs[key] ?? null, value as CalcValue);
    off[key] = Number.isFinite(distance) ? distance : null;
    // A printed tolerance is decimal: a hair of binary rounding is not a miss.
    met &&= distance <= tolerances(key) + 1e-12;
  }
  const got = Object.fromEntries(Object.keys(expected).map((key) => [key, answer.outputs[key] ?? null]));
  return { id: row.id, status: met ? 'met' : 'missed', got, expected: expected as CalcValue, off, why: '' };
}

/** Greatest difference between two values of the same shape; infinite when texts, truths or shapes differ. */
function distanceBetween(got: CalcValue, expected: CalcValue): number {
  if (typeof got === 'number' && typeof expected === 'number') return Math.abs(got - expected);
  if (Array.isArray(got) && Array.isArray(expected)) {
    if (got.length !== expected.length) return Number.POSITIVE_INFINITY;
    return got.reduce((worst: number, one, at) => Math.max(worst, distanceBetween(one, expected[at] ?? null)), 0);
  }
  if (isObject(got) && isObject(expected)) {
    return Object.keys(expected).reduce(
      (worst, key) => Math.max(worst, distanceBetween(got[key] ?? null, expected[key] ?? null)),
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
