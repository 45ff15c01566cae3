/** Entries from outside: each is either an entry of a version we know, or problems. */
import type * as z from 'zod';
import { type Problem, type ProblemCode, problemCodes, quoteJson } from '../folder/problem.ts';
import { nearest } from '../names/nearest.ts';
import type { Entry, ReceivedEntry } from './entry.ts';
import { entryShape, receivedShape } from './entry-shapes.ts';

/** The newest version of an entry that this program reads. */
export const newestVersion = 1;

/** An entry as a device sends it. Problems carry the path inside the entry as their column; `line` is the caller's. */
export function readEntry(json: unknown, line: number | null = null): Entry | readonly Problem[] {
  return read(json, entryShape, line);
}

/** An entry as the book keeps it, with what it got on receipt. */
export function readReceivedEntry(json: unknown, line: number | null = null): ReceivedEntry | readonly Problem[] {
  return read(json, receivedShape, line);
}

export const bookFile = 'entries.jsonl';

function read<T>(json: unknown, shape: z.ZodType<T>, line: number | null): T | readonly Problem[] {
  const version = typeof json === 'object' && json !== null && 'v' in json ? json.v : undefined;
  if (typeof version === 'number' && version > newestVersion) {
    return [problem('newer-version', line, 'v', { found: String(version), figures: { newest: newestVersion } })];
  }
  const result = shape.safeParse(json);
  if (result.success) return result.data;
  return result.error.issues.flatMap((issue) => told(issue, json, line));
}

function told(issue: z.core.$ZodIssue, json: unknown, line: number | null): readonly Problem[] {
  const path = issue.path.map(String).join('.');
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => problem('unknown-key', line, path === '' ? key : `${path}.${key}`, { found: key }));
  const value = issue.path.reduce<unknown>(
    (at, key) =>
      typeof at === 'object' && at !== null && Object.hasOwn(at, key)
        ? (at as Record<PropertyKey, unknown>)[key]
        : undefined,
    json,
  );
  if (value === undefined) return [problem('missing-value', line, path)];
  const found = quoteJson(value);
  if (issue.code === 'invalid_value')
    return [
      problem('not-in-list', line, path, {
        found,
        nearest: nearest(typeof value === 'string' ? value : found, issue.values.map(String)),
      }),
    ];
  if (issue.code === 'too_small' || issue.code === 'too_big') return [problem('out-of-range', line, path, { found })];
  const nearby =
    issue.code === 'custom' && Array.isArray(issue.params?.['nearest']) ? issue.params['nearest'].map(String) : [];
  return [
    problem(issue.code === 'custom' ? codeOf(issue.message) : 'not-an-entry', line, path, { found, nearest: nearby }),
  ];
}

function codeOf(message: string): ProblemCode {
  return problemCodes.find((code) => code === message) ?? 'not-an-entry';
}

function problem(
  code: ProblemCode,
  line: number | null,
  column: string,
  more: Partial<Pick<Problem, 'found' | 'nearest' | 'figures'>> = {},
): Problem {
  const found = more.found === undefined || more.found === null ? null : more.found.slice(0, 80);
  return {
    code,
    gravity: 'stops',
    file: bookFile,
    line,
    column,
    found,
    nearest: more.nearest ?? [],
    figures: more.figures ?? {},
  };
}
