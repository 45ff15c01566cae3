/** What a scenario expects, figure by figure, and whether a plan meets it. */
import { type Found, figureAt } from './figure-at.ts';

export interface ExpectedFigure {
  /** What it is, in a grower's words. */
  readonly what: string;
  /** Where it stands: see `figureAt`. */
  readonly at: string;
  readonly is?: number | string | boolean | null;
  readonly atLeast?: number;
  readonly atMost?: number;
  /** Nothing is there, and that is right. */
  readonly absent?: true;
  /** `0.5 %` of the figure, or a number in its own unit; exact when left out. */
  readonly within?: number | `${number} %`;
}

export type Verdict =
  | { readonly kind: 'met'; readonly got: unknown }
  | { readonly kind: 'missed'; readonly got: unknown; readonly expected: string; readonly off: number | null };

/** Whether the figure is there and right. */
export function judge(root: unknown, expected: ExpectedFigure): Verdict {
  const found = figureAt(root, expected.at);
  const wanted = inWords(expected);
  if (expected.absent)
    return found.kind === 'nothing-there'
      ? { kind: 'met', got: null }
      : { kind: 'missed', got: found.value, expected: wanted, off: null };
  if (found.kind === 'nothing-there') return { kind: 'missed', got: 'nothing there', expected: wanted, off: null };
  return isMet(found, expected)
    ? { kind: 'met', got: found.value }
    : { kind: 'missed', got: found.value, expected: wanted, off: offBy(found.value, expected) };
}

function isMet({ value }: Extract<Found, { kind: 'found' }>, expected: ExpectedFigure): boolean {
  if (expected.atLeast !== undefined && !(Number(value) >= expected.atLeast)) return false;
  if (expected.atMost !== undefined && !(Number(value) <= expected.atMost)) return false;
  if (expected.is === undefined) return expected.atLeast !== undefined || expected.atMost !== undefined;
  if (typeof expected.is !== 'number') return value === expected.is;
  return typeof value === 'number' && Math.abs(value - expected.is) <= allowed(expected);
}

function allowed({ is, within }: ExpectedFigure): number {
  if (within === undefined) return 1e-9 * Math.max(1, Math.abs(Number(is)));
  return typeof within === 'number' ? within : (Math.abs(Number(is)) * Number(within.replace('%', ''))) / 100;
}

function offBy(value: unknown, expected: ExpectedFigure): number | null {
  return typeof value === 'number' && typeof expected.is === 'number' ? value - expected.is : null;
}

/** `2400 within 0.5 %`, `at least 3`, `nothing there`. */
export function inWords(expected: ExpectedFigure): string {
  const parts = [
    expected.absent ? 'nothing there' : null,
    expected.is === undefined
      ? null
      : `${String(expected.is)}${expected.within === undefined ? '' : ` within ${expected.within}`}`,
    expected.atLeast === undefined ? null : `at least ${expected.atLeast}`,
    expected.atMost === undefined ? null : `at most ${expected.atMost}`,
  ];
  return parts.filter((part) => part !== null).join(', ');
}
