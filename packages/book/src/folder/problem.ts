/** What is wrong with a file someone gave, as data: all of it at once, each with its place, what was found and what would do. */
import { limits } from './limits.ts';

export const problemCodes = [
  // files and folder
  'missing-file',
  'unknown-file',
  'file-twice',
  'too-large',
  'too-many-files',
  'not-text',
  'letters-guessed',
  'not-a-zip',
  'zip-locked',
  'path-outside',
  'link-in-zip',
  'more-problems',
  // tables
  'quotes-broken',
  'missing-heading',
  'unknown-heading',
  'heading-twice',
  'two-units',
  'cells-without-heading',
  // cells
  'missing-value',
  'not-a-number',
  'ambiguous-number',
  'not-whole',
  'out-of-range',
  'not-a-day',
  'not-in-calendar',
  'ambiguous-day',
  'two-digit-year',
  'not-a-week',
  'no-such-week',
  'not-a-month-day',
  'not-an-id',
  'not-in-list',
  'not-text-value',
  'unknown-name',
  'ambiguous-name',
  'beds-unknown',
  'beds-outside',
  'span-empty',
  // rows
  'id-twice',
  'row-twice',
  'ends-before-start',
  'one-of',
  'mixed-window',
  'shares-over-whole',
  'parts-do-not-add-up',
  // JSON, map, book
  'not-json',
  'unknown-key',
  'wrong-shape',
  'assumed',
  'wrong-geometry',
  'ring-open',
  'ring-crosses-itself',
  'holes-not-kept',
  'outside-the-world',
  'lon-lat-swapped',
  'plots-overlap',
  'area-differs',
  'not-an-entry',
  'newer-version',
  'book-broken',
  'book-not-sealed',
] as const;
export type ProblemCode = (typeof problemCodes)[number];

export interface Problem {
  readonly code: ProblemCode;
  /** `stops`: nothing is imported until it is mended. `look`: imported as said, worth a look. */
  readonly gravity: 'stops' | 'look';
  readonly file: string;
  /** As a spreadsheet counts rows: the heading is line 1. `figures.textLine` is the line in a text editor where that differs. */
  readonly line: number | null;
  /** Heading of the column, or the path inside a JSON file. */
  readonly column: string | null;
  readonly found: string | null;
  /** What would do, nearest first. */
  readonly nearest: readonly string[];
  readonly figures: Readonly<Record<string, string | number>>;
}

export type ProblemPlace = Pick<Problem, 'file' | 'line' | 'column'>;

/** What a reader says about a fault beside its code and place. */
export type Fault = Partial<Pick<Problem, 'gravity' | 'found' | 'nearest' | 'figures'>>;

/** Collects problems; a reader goes on after each, so that people see all of them at once. */
export interface ProblemList {
  readonly add: (code: ProblemCode, place: ProblemPlace, fault?: Fault) => void;
  /** Number of problems so far that stop the import. */
  readonly stopping: () => number;
  /** All, with one `more-problems` for each file that had too many to list. */
  readonly all: () => readonly Problem[];
}

/** Longest piece of somebody's file that is quoted back, characters. */
const longestQuote = 80;

export function problemList(): ProblemList {
  const kept: Problem[] = [];
  const perFile = new Map<string, number>();
  const stopsUnseen = new Set<string>();
  let stopping = 0;
  return {
    add(code, place, fault = {}) {
      const gravity = fault.gravity ?? 'stops';
      if (gravity === 'stops') stopping += 1;
      const count = (perFile.get(place.file) ?? 0) + 1;
      perFile.set(place.file, count);
      if (count > limits.problemsAFile) {
        if (gravity === 'stops') stopsUnseen.add(place.file);
        return;
      }
      const { file, line, column } = place;
      kept.push({
        code,
        gravity,
        file,
        line,
        column,
        found: quote(fault.found ?? null),
        nearest: fault.nearest ?? [],
        figures: fault.figures ?? {},
      });
    },
    stopping: () => stopping,
    all: () => [
      ...kept,
      ...[...perFile]
        .filter(([, count]) => count > limits.problemsAFile)
        .map(([file, count]) => more(file, count, stopsUnseen.has(file))),
    ],
  };
}

function quote(found: string | null): string | null {
  return found !== null && found.length > longestQuote ? `${found.slice(0, longestQuote)}…` : found;
}

function more(file: string, count: number, stops: boolean): Problem {
  return {
    code: 'more-problems',
    gravity: stops ? 'stops' : 'look',
    file,
    line: null,
    column: null,
    found: null,
    nearest: [],
    figures: { more: count - limits.problemsAFile },
  };
}

/** A value found in JSON, short; a list or an object only by its kind, however deep it is. */
export function quoteJson(value: unknown): string {
  if (Array.isArray(value)) return '[…]';
  return typeof value === 'object' && value !== null ? '{…}' : JSON.stringify(value);
}
