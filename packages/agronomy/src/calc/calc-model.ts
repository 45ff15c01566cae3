/**
 * A science model by name: what goes in, what comes out, from where.
 *
 * A numeric input may be one number or a list; lists of equal length go element by element, single numbers are repeated, and an output is a
 * list when an input was. Only inputs that are a series in time, rows, words or an object are handed over whole. A model that runs a file
 * names it; whoever runs the model reads it, since nothing here knows a disk.
 */

export const inputKinds = [
  'number',
  'text',
  'number-or-text',
  'series',
  'rows',
  'words',
  'object',
  'file',
  'label',
] as const;

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

/** What evaluating one element may say instead of outputs: the figures given have no answer, and why. */
export interface NoAnswer {
  readonly noAnswer: CalcProblem;
}

/** These figures have no answer: which input, and what was found there. */
export function noAnswer(key: string, found: string): NoAnswer {
  return { noAnswer: { key, why: 'no-answer', found } };
}

/** The text of a file named in a table of checks; null when there is none. */
export type ReadText = (path: string) => string | null;

export interface CalcModel {
  readonly title: string;
  readonly inputs: readonly CalcInput[];
  readonly outputs: readonly CalcOutput[];
  readonly source: string;
  readonly run: (inputs: Readonly<Record<string, unknown>>, readText?: ReadText) => CalcAnswer;
}

/** One element's inputs, by key. */
export interface CalcValues {
  readonly given: (key: string) => boolean;
  readonly number: (key: string) => number;
  readonly maybe: (key: string) => number | null;
  readonly text: (key: string) => string;
  /** One number given for a series stands for all of its steps. */
  readonly series: (key: string) => readonly number[];
  readonly rows: (key: string) => readonly (readonly unknown[])[];
  readonly words: (key: string) => readonly string[];
  /** A number of an object; null where it has none of that name. */
  readonly part: (key: string, part: string) => number | null;
  readonly file: (key: string) => string;
  /** The value as it was given; null when it was not. */
  readonly whole: (key: string) => unknown;
}

/** Keys any table may carry for its reader. */
const labels = new Set(['fn', 'site', 'note', 'desc', 'soil', 'dt', 'assume', 'rule']);

/** Makes a model of a function of one element. */
export function calcModel(
  model: Omit<CalcModel, 'run'> & { readonly evaluate: (values: CalcValues) => Record<string, CalcValue> | NoAnswer },
): CalcModel {
  const { evaluate, ...described } = model;
  return {
    ...described,
    run: (inputs, readText = () => null) => {
      const problems = [...inputProblems(model.inputs, inputs), ...fileProblems(model.inputs, inputs, readText)];
      if (problems.length > 0) return { kind: 'problems', problems };
      const lists = model.inputs.filter((input) => isPerElement(input) && Array.isArray(inputs[input.key]));
      const length = (inputs[lists[0]?.key ?? ''] as readonly unknown[] | undefined)?.length;
      const asked = { inputs, readText, steps: stepsOf(model.inputs, inputs) };
      if (length === undefined) return answerOf([evaluate(valuesAt(asked, null))], false);
      return answerOf(
        Array.from({ length }, (_, at) => evaluate(valuesAt(asked, at))),
        true,
      );
    },
  };
}

function answerOf(elements: readonly (Record<string, CalcValue> | NoAnswer)[], isList: boolean): CalcAnswer {
  const problems = elements.flatMap((one) => (isNoAnswer(one) ? [one.noAnswer] : []));
  if (problems.length > 0) return { kind: 'problems', problems };
  const rows = elements as readonly Record<string, CalcValue>[];
  const first = rows[0] ?? {};
  if (!isList) return { kind: 'answer', outputs: first };
  const lists = Object.keys(first).map((key) => [key, rows.map((row) => row[key] ?? null)]);
  return { kind: 'answer', outputs: Object.fromEntries(lists) as Record<string, CalcValue> };
}

function isNoAnswer(one: Record<string, CalcValue> | NoAnswer): one is NoAnswer {
  return Object.hasOwn(one, 'noAnswer');
}

function fileProblems(
  expected: readonly CalcInput[],
  inputs: Readonly<Record<string, unknown>>,
  readText: ReadText,
): readonly CalcProblem[] {
  return expected.flatMap(({ key, kind }) => {
    const path = inputs[key];
    if (kind !== 'file' || typeof path !== 'string' || readText(path) !== null) return [];
    return [{ key, why: 'no-answer', found: `There is no file ${path} here.` } as const];
  });
}

function isPerElement(input: CalcInput): boolean {
  return input.kind === undefined || ['number', 'text', 'number-or-text'].includes(input.kind);
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
  const listsOf = (chosen: readonly CalcInput[]) =>
    chosen.flatMap(({ key }) => {
      const value = inputs[key];
      return Array.isArray(value) ? [{ key, value }] : [];
    });
  const together = [expected.filter(isPerElement), expected.filter((input) => input.kind === 'series')];
  const differing = together
    .map(listsOf)
    .flatMap((lists) => lists.filter(({ value }) => value.length !== lists[0]?.value.length));
  return differing.map(({ key, value }) => ({ key, why: 'lists-differ-in-length', found: shown(value) }));
}

function whyNot(input: CalcInput, value: unknown): CalcProblem['why'] | null {
  const { is, why } = shapes[input.kind ?? 'number'];
  return is(value) ? null : why;
}

/** What each kind of input must look like, and what is said when it does not. */
const shapes: Readonly<
  Record<(typeof inputKinds)[number], { readonly is: (value: unknown) => boolean; readonly why: CalcProblem['why'] }>
> = {
  label: { is: () => true, why: 'not-text' },
  rows: { is: (value) => Array.isArray(value) && value.every(Array.isArray), why: 'not-a-list' },
  words: { is: (value) => Array.isArray(value) && value.every(isText), why: 'not-a-list' },
  series: { is: (value) => [value].flat().every(isNumber), why: 'not-a-list' },
  'number-or-text': { is: (value) => [value].flat().every((one) => isNumber(one) || isText(one)), why: 'not-a-number' },
  object: { is: isObjectOfNumbers, why: 'not-a-number' },
  file: { is: isText, why: 'not-text' },
  text: { is: (value) => [value].flat().every(isText), why: 'not-text' },
  number: { is: (value) => [value].flat().every(isNumber), why: 'not-a-number' },
};

function isText(value: unknown): value is string {
  return typeof value === 'string';
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

function isObjectOfNumbers(value: unknown): value is Readonly<Record<string, number>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value) && Object.values(value).every(isNumber);
}

interface Asked {
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly readText: ReadText;
  /** Steps of the series that go together. */
  readonly steps: number;
}

function stepsOf(expected: readonly CalcInput[], inputs: Readonly<Record<string, unknown>>): number {
  const lists = expected.filter((input) => input.kind === 'series').map((input) => inputs[input.key]);
  return lists.find(Array.isArray)?.length ?? 1;
}

function valuesAt({ inputs, readText, steps }: Asked, at: number | null): CalcValues {
  const one = (key: string) => {
    const value = inputs[key];
    return at !== null && Array.isArray(value) ? (value[at] as unknown) : value;
  };
  return {
    given: (key) => inputs[key] !== undefined && inputs[key] !== null,
    number: (key) => one(key) as number,
    maybe: (key) => (one(key) as number | null | undefined) ?? null,
    text: (key) => one(key) as string,
    series: (key) => {
      const value = inputs[key] as number | readonly number[];
      return typeof value === 'number' ? Array.from({ length: steps }, () => value) : value;
    },
    rows: (key) => inputs[key] as readonly (readonly unknown[])[],
    words: (key) => inputs[key] as readonly string[],
    part: (key, part) => {
      const value = inputs[key];
      return isObjectOfNumbers(value) ? (value[part] ?? null) : null;
    },
    file: (key) => readText(inputs[key] as string) ?? '',
    whole: (key) => inputs[key] ?? null,
  };
}

function shown(value: unknown): string {
  return (JSON.stringify(value) ?? '').slice(0, 80);
}
