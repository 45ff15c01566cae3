/**
 * What ties the plots together: the area of each course against its band, its change from year to year, and parts of one plot that differ.
 *
 * Rule    Area, under and over in hundreds of square metres, so that the figures of the model lie close together. Bands and balance are
 *         soft: each costs its weight for each share of the area asked for.
 * Holds   the count-envelope rows cut off no plan: with n plots on a course, its area lies between that of the n smallest and the n largest.
 */
import { type RotationProblem, rotatedPlots } from '../rotation-problem/problem.ts';
import type { ModelDraft, Term } from './draft-model.ts';

/** Whether a plot carries a course in a year: terms that sum to 1, none where it can't. */
export type Carries = (plotIndex: number, year: number, courseIndex: number) => readonly Term[];

export interface Coupled {
  readonly problem: RotationProblem;
  /** Places of the plots that are free; all others that take part are fixed. */
  readonly freePlots: readonly number[];
  readonly carries: Carries;
  /** Course of a fixed plot in a year. */
  readonly fixedCourse: (plotIndex: number, year: number) => number;
}

const are = 100;

/** Hundreds of square metres asked for; 1 where nothing is, so that a share of it has a meaning. */
export function askedAres(problem: RotationProblem, course: string, year: number): number {
  const askedM2 = problem.askedM2[course]?.[year] ?? 0;
  return askedM2 > 0 ? askedM2 / are : 1;
}

/** Change of a course from the year before that costs nothing, in hundreds of square metres. */
export function freeAres(problem: RotationProblem, course: string, year: number): number {
  const { freeBalanceShare, freeBalanceM2 } = problem.weights;
  return Math.max(freeBalanceShare * askedAres(problem, course, year), freeBalanceM2 / are);
}

/** Least and most of a course in a year, in hundreds of square metres. */
export function bandAres(problem: RotationProblem, course: string, year: number): readonly [low: number, high: number] {
  const askedM2 = problem.askedM2[course]?.[year] ?? 0;
  const band = problem.bands[course] ?? { low: 0, high: 1 };
  return [(band.low * askedM2) / are, (band.high * askedM2) / are];
}

export function addCoupling(draft: ModelDraft, coupled: Coupled): void {
  const { problem } = coupled;
  for (const [courseIndex, course] of problem.courses.entries()) {
    let before: number | null = null;
    for (let year = 0; year < problem.years; year++) {
      const area = addArea(draft, coupled, { courseIndex, course, year });
      if (before !== null) addBalance(draft, problem, { course, year, area, before });
      before = area;
    }
  }
  addSplits(draft, coupled);
}

interface CourseInYear {
  readonly courseIndex: number;
  readonly course: string;
  readonly year: number;
}

function addArea(draft: ModelDraft, coupled: Coupled, at: CourseInYear): number {
  const { problem } = coupled;
  const { courseIndex, course, year } = at;
  const terms: Term[] = [];
  const carriers: { readonly ares: number; readonly terms: readonly Term[] }[] = [];
  for (const plotIndex of coupled.freePlots) {
    const own = coupled.carries(plotIndex, year, courseIndex);
    if (own.length === 0) continue;
    const ares = aresOf(problem, plotIndex);
    carriers.push({ ares, terms: own });
    terms.push(...own.map(([column, factor]): Term => [column, factor * ares]));
  }
  const fixedAres = sumOf(
    rotatedPlots(problem)
      .filter((one) => !coupled.freePlots.includes(one) && coupled.fixedCourse(one, year) === courseIndex)
      .map((one) => aresOf(problem, one)),
  );
  const area = draft.column({});
  draft.row(-fixedAres, -fixedAres, [...terms, [area, -1]]);
  const costWeight = problem.weights.areaWeight / askedAres(problem, course, year);
  const under = draft.column({ costWeight });
  const over = draft.column({ costWeight });
  const [low, high] = bandAres(problem, course, year);
  draft.row(low, Number.POSITIVE_INFINITY, [
    [area, 1],
    [under, 1],
  ]);
  draft.row(Number.NEGATIVE_INFINITY, high, [
    [area, 1],
    [over, -1],
  ]);
  const misses = missesByCount(
    carriers.map((one) => one.ares),
    { fixedAres, low, high },
  );
  const counted = carriers.flatMap((one) => one.terms);
  for (const { base, slope } of envelope(misses))
    draft.row(base, Number.POSITIVE_INFINITY, [
      [under, 1],
      [over, 1],
      ...counted.map(([column, factor]): Term => [column, -slope * factor]),
    ]);
  return area;
}

interface Bounds {
  readonly fixedAres: number;
  readonly low: number;
  readonly high: number;
}

/** Fewest hundreds of square metres under or over the band, by the number of plots on the course. */
export function missesByCount(carrierAres: readonly number[], { fixedAres, low, high }: Bounds): readonly number[] {
  const down = [...carrierAres].sort((a, b) => b - a);
  let largest = fixedAres;
  let smallest = fixedAres;
  const misses = [Math.max(0, low - largest) + Math.max(0, smallest - high)];
  for (let count = 1; count <= down.length; count++) {
    largest += down[count - 1] ?? 0;
    smallest += down[down.length - count] ?? 0;
    misses.push(Math.max(0, low - largest) + Math.max(0, smallest - high));
  }
  return misses;
}

interface Line {
  readonly base: number;
  readonly slope: number;
}

/** Sides of the lower convex hull of points (0, f0), (1, f1) … as base + slope × n; flat ones say nothing and are left out. */
export function envelope(values: readonly number[]): readonly Line[] {
  const at = (index: number) => values[index] ?? 0;
  const hull: number[] = [];
  for (let index = 0; index < values.length; index++) {
    while (hull.length > 1) {
      const a = hull.at(-2) ?? 0;
      const b = hull.at(-1) ?? 0;
      if ((at(b) - at(a)) * (index - a) < (at(index) - at(a)) * (b - a)) break;
      hull.pop();
    }
    hull.push(index);
  }
  return hull.slice(1).flatMap((to, place) => {
    const from = hull[place] ?? 0;
    const slope = (at(to) - at(from)) / (to - from);
    return Math.abs(slope) < 1e-9 ? [] : [{ base: at(from) - slope * from, slope }];
  });
}

interface YearToYear {
  readonly course: string;
  readonly year: number;
  readonly area: number;
  readonly before: number;
}

function addBalance(draft: ModelDraft, problem: RotationProblem, { course, year, area, before }: YearToYear): void {
  const costWeight = problem.weights.balanceWeight / askedAres(problem, course, year);
  const change = draft.column({ costWeight });
  const free = freeAres(problem, course, year);
  for (const sign of [1, -1])
    draft.row(-free, Number.POSITIVE_INFINITY, [
      [change, 1],
      [area, -sign],
      [before, sign],
    ]);
}

/** Parts of each split plot: the first, and the others held against it. */
export function splitParts(problem: RotationProblem): readonly (readonly [first: number, other: number])[] {
  const first = new Map<string, number>();
  return rotatedPlots(problem).flatMap((index): readonly (readonly [number, number])[] => {
    const parent = problem.plots[index]?.parent ?? null;
    if (parent === null) return [];
    const known = first.get(parent);
    if (known !== undefined) return [[known, index]];
    first.set(parent, index);
    return [];
  });
}

function addSplits(draft: ModelDraft, coupled: Coupled): void {
  const { problem } = coupled;
  const isFree = (plotIndex: number) => coupled.freePlots.includes(plotIndex);
  for (const [first, other] of splitParts(problem)) {
    if (!isFree(first) && !isFree(other)) continue; // both fixed: a constant, counted by the caller's score
    for (let year = 0; year < problem.years; year++) {
      const differs = draft.column({ high: 1, costWeight: problem.weights.splitWeight });
      for (const courseIndex of problem.courses.keys()) {
        const there = termsOf(coupled, { plotIndex: first, year, courseIndex });
        const here = termsOf(coupled, { plotIndex: other, year, courseIndex });
        draft.row(here.fixed - there.fixed, Number.POSITIVE_INFINITY, [
          [differs, 1],
          ...there.terms,
          ...here.terms.map(([column, factor]): Term => [column, -factor]),
        ]);
      }
    }
  }
}

interface PlotCell {
  readonly plotIndex: number;
  readonly year: number;
  readonly courseIndex: number;
}

function termsOf(coupled: Coupled, { plotIndex, year, courseIndex }: PlotCell) {
  if (coupled.freePlots.includes(plotIndex)) return { terms: coupled.carries(plotIndex, year, courseIndex), fixed: 0 };
  return { terms: [], fixed: coupled.fixedCourse(plotIndex, year) === courseIndex ? 1 : 0 };
}

function aresOf(problem: RotationProblem, plotIndex: number): number {
  return (problem.plots[plotIndex]?.areaM2 ?? 0) / are;
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, one) => sum + one, 0);
}
