/**
 * A science model by name: what goes in, what comes out, from where.
 *
 * A numeric input may be one number or a list; lists of equal length go element by element, single numbers are repeated, and an output is a
 * list when an input was. Only inputs that are a series in time are handed over whole.
 */

export const inputKinds = ['number', 'text', 'series', 'rows', 'label'] as const;

export interface CalcInput {
  readonly key: string;
  readonly unit: string;
  readonly meaning: string;
  readonly optional?: boolean;
  /** number when not given; a label is never used in a sum. */
  readonly kind?: (typeof inputKinds)[number];
}

export interface CalcOutput {
  readonly key: string;
  readonly unit: string;
  readonly meaning: string;
}

/** A value of an output: numbers, words, yes or no, lists of these. */
export type CalcValue = number | string | boolean | null | readonly CalcValue[] | { readonly [key: string]: CalcValue };

/** Why a model gave no answer; all at once. */
export interface CalcProblem {
  readonly key: string;
  readonly why:
    | 'missing'
    | 'not-known'
    | 'not-a-number'
    | 'not-text'
    | 'not-a-list'
    | 'lists-differ-in-length'
    | 'no-answer';
  readonly found: string;
}

export type CalcAnswer =
  | { readonly kind: 'answer'; readonly outputs: Readonly<Record<string, CalcValue>> }
  | { readonly kind: 'problems'; readonly problems: readonly CalcProblem[] };

export interface CalcModel {
  readonly title: string;
  readonly inputs: readonly CalcInput[];
  readonly outputs: readonly CalcOutput[];
  readonly source: string;
  readonly run: (inputs: Readonly<Record<string, unknown>>) => CalcAnswer;
}

/** One element's inputs, by key. */
export interface CalcValues {
  readonly given: (key: string) => boolean;
  readonly number: (key: string) => number;
  readonly maybe: (key: string) => number | null;
  readonly text: (key: string) => string;
  readonly series: (key: string) => readonly number[];
  readonly rows: (key: string) => readonly (readonly unknown[])[];
}

/** Keys any table may carry for its reader. */
const labels = new Set(['fn', 'site', 'note', 'desc', 'soil', 'dt', 'assume', 'rule']);

/** Makes a model of a function of one element. */
export function calcModel(
  model: Omit<CalcModel, 'run'> & { readonly evaluate: (values: CalcValues) => Record<string, CalcValue> },
): CalcModel {
  const { evaluate, ...described } = model;
  return {
    ...described,
    run: (inputs) => {
      const problems = inputProblems(model.inputs, inputs);
      if (problems.length > 0) return { kind: 'problems', problems };
      const lists = model.inputs.filter((input) => isPerElement(input) && Array.isArray(inputs[input.key]));
      const length = (inputs[lists[0]?.key ?? ''] as readonly unknown[] | undefined)?.length;
      if (length === undefined) return { kind: 'answer', outputs: evaluate(valuesAt(inputs, null)) };
      const rows = Array.from({ length }, (_, at) => evaluate(valuesAt(inputs, at)));
      const keys = Object.keys(rows[0] ?? {});
      return {
        kind: 'answer',
        outputs: Object.fromEntries(keys.map((key) => [key, rows.map((row) => row[key] ?? null)])),
      };
    },
  };
}

function isPerElement(input: CalcInput): boolean {
  return input.kind === undefined || input.kind === 'number' || input.kind === 'text';
}

function inputProblems(
  expected: readonly CalcInput[],
  inputs: Readonly<Record<string, unknown>>,
): readonly CalcProblem[] {
  const known = new Set(expected.map((input) => input.key));
  const strangers = Object.keys(inputs).filter((key) => !known.has(key) && !labels.has(key));
  return [
    ...strangers.map((key) => ({ key, why: 'not-known', found: shown(inputs[key]) }) as const),
    ...expected.flatMap((input) => problemOf(input, inputs[input.key])),
    ...lengthProblems(expected, inputs),
  ];
}

function problemOf(input: CalcInput, value: unknown): readonly CalcProblem[] {
  if (value === undefined || value === null) {
    return input.optional === true || input.kind === 'label' ? [] : [{ key: input.key, why: 'missing', found: '' }];
  }
  const why = whyNot(input, value);
  return why === null ? [] : [{ key: input.key, why, found: shown(value) }];
}

function lengthProblems(
  expected: readonly CalcInput[],
  inputs: Readonly<Record<string, unknown>>,
): readonly CalcProblem[] {
  const lists = expected.filter(isPerElement).flatMap(({ key }) => {
    const value = inputs[key];
    return Array.isArray(value) ? [{ key, value }] : [];
  });
  const differing = lists.filter(({ value }) => value.length !== lists[0]?.value.length);
  return differing.map(({ key, value }) => ({ key, why: 'lists-differ-in-length', found: shown(value) }));
}

function whyNot(input: CalcInput, value: unknown): CalcProblem['why'] | null {
  switch (input.kind ?? 'number') {
    case 'label':
      return null;
    case 'rows':
      return Array.isArray(value) && value.every(Array.isArray) ? null : 'not-a-list';
    case 'series':
      return Array.isArray(value) && value.every(isNumber) ? null : 'not-a-list';
    case 'text':
      return [value].flat().every((one) => typeof one === 'string') ? null : 'not-text';
    case 'number':
      return [value].flat().every(isNumber) ? null : 'not-a-number';
  }
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

function valuesAt(inputs: Readonly<Record<string, unknown>>, at: number | null): CalcValues {
  const one = (key: string) => {
    const value = inputs[key];
    return at !== null && Array.isArray(value) ? (value[at] as unknown) : value;
  };
  return {
    given: (key) => inputs[key] !== undefined && inputs[key] !== null,
    number: (key) => one(key) as number,
    maybe: (key) => (one(key) as number | null | undefined) ?? null,
    text: (key) => one(key) as string,
    series: (key) => inputs[key] as readonly number[],
    rows: (key) => inputs[key] as readonly (readonly unknown[])[],
  };
}

function shown(value: unknown): string {
  return (JSON.stringify(value) ?? '').slice(0, 80);
}
