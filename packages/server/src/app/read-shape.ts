/** Reads what was sent against its shape, in our own words: every field that is not as asked, at once. */
import type { z } from 'zod';
import { type HttpProblem, refusal } from './answer.ts';

export type ShapeReading<T> =
  | { readonly kind: 'read'; readonly value: T }
  | { readonly kind: 'problems'; readonly problems: readonly HttpProblem[] };

export function readShape<T>(shape: z.ZodType<T>, sent: unknown): ShapeReading<T> {
  const read = shape.safeParse(sent, { reportInput: true });
  return read.success
    ? { kind: 'read', value: read.data }
    : { kind: 'problems', problems: read.error.issues.map(problemOf) };
}

const kinds = ['number', 'string', 'array', 'object', 'record', 'int', 'boolean'] as const;

function problemOf(issue: z.core.$ZodIssue): HttpProblem {
  const field = issue.path.map(String).join('.') || 'body';
  const figures = { field, ...limitsOf(issue) };
  return refusal(codeOf(issue), figures, { column: field });
}

function codeOf(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_type') {
    if (issue.input === undefined) return 'shape-missing';
    const kind = kinds.find((one) => one === issue.expected);
    return kind === undefined ? 'shape-other' : `shape-${kind}`;
  }
  if (issue.code === 'too_small') return 'shape-too-small';
  if (issue.code === 'too_big') return 'shape-too-big';
  return 'shape-other';
}

function limitsOf(issue: z.core.$ZodIssue): Readonly<Record<string, string>> {
  if (issue.code === 'too_small') return { least: String(issue.minimum) };
  return issue.code === 'too_big' ? { most: String(issue.maximum) } : {};
}

/** Thrown in Fastify's own validation; carries the problems to the error handler. */
export class NotAsAsked extends Error {
  readonly problems: readonly HttpProblem[];

  constructor(problems: readonly HttpProblem[]) {
    super('not as asked');
    this.problems = problems;
  }
}

/** Fastify's validator over our shapes. */
export function shapeValidator({ schema }: { readonly schema: z.ZodType }) {
  return (sent: unknown) => {
    const reading = readShape(schema, sent);
    return reading.kind === 'read' ? { value: reading.value } : { error: new NotAsAsked(reading.problems) };
  };
}
