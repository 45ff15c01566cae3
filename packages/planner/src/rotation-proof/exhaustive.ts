/**
 * The best plan by trying every one: for farms of up to four plots and four years, to hold the models against.
 *
 * Holds   shares no code with the models; lawful is what the plain checker says, and the score is reckoned here from square metres.
 */
import type { RotationPlan, RotationPlot, RotationProblem } from '../rotation-problem/problem.ts';
import { sequenceBreaches } from './check-plan.ts';

export interface BestOfAll {
  readonly plan: RotationPlan;
  readonly totalScore: number;
  /** Whole plans looked at. */
  readonly plans: number;
}

/** Null when some plot has no lawful sequence. */
export function bestOfAll(problem: RotationProblem): BestOfAll | null {
  const choices = problem.plots.map((plot) => (plot.isRotated ? cheapestSequences(problem, plot) : [[]]));
  if (choices.some((one) => one.length === 0)) return null;
  let best: { plan: RotationPlan; totalScore: number } | null = null;
  let plans = 0;
  const chosen: (readonly string[])[] = [];
  const tryFrom = (at: number) => {
    if (at === choices.length) {
      plans += 1;
      const totalScore = plainScore(problem, chosen);
      if (best === null || totalScore < best.totalScore) best = { plan: [...chosen], totalScore };
      return;
    }
    for (const sequence of choices[at] ?? []) {
      chosen[at] = sequence;
      tryFrom(at + 1);
    }
  };
  tryFrom(0);
  return best === null ? null : { ...(best as { plan: RotationPlan; totalScore: number }), plans };
}

/** How many whole plans there are to look at. */
export function planCountOf(problem: RotationProblem): number {
  return problem.plots.reduce(
    (product, plot) => product * (plot.isRotated ? cheapestSequences(problem, plot).length : 1),
    1,
  );
}

/** All lawful sequences of a plot; of those with the same courses the one with the cheapest covers. */
function cheapestSequences(problem: RotationProblem, plot: RotationPlot): readonly (readonly string[])[] {
  let sequences: (readonly string[])[] = [[]];
  for (let year = 0; year < problem.years; year++)
    sequences = sequences.flatMap((begun) => problem.options.map((option) => [...begun, option.id]));
  const cheapest = new Map<string, { sequence: readonly string[]; coverScore: number }>();
  for (const sequence of sequences) {
    if (sequenceBreaches(problem, plot, sequence).length > 0) continue;
    const options = sequence.flatMap((id) => problem.options.filter((option) => option.id === id));
    const coverScore = options.reduce((sum, option) => sum + option.costScore, 0);
    const key = options.map((option) => option.course).join(' ');
    const known = cheapest.get(key);
    if (known === undefined || coverScore < known.coverScore) cheapest.set(key, { sequence, coverScore });
  }
  return [...cheapest.values()].map((one) => one.sequence);
}

/** The whole score of a plan, straight from its definition. */
export function plainScore(problem: RotationProblem, plan: RotationPlan): number {
  const byId = new Map(problem.options.map((option) => [option.id, option]));
  const courseAt = (plot: number, year: number) => byId.get(plan[plot]?.[year] ?? '')?.course ?? null;
  let score = 0;
  for (const course of problem.courses) {
    const areasM2 = Array.from({ length: problem.years }, (_, year) =>
      problem.plots.reduce((sum, plot, at) => sum + (courseAt(at, year) === course ? plot.areaM2 : 0), 0),
    );
    score += areaAndBalance(problem, course, areasM2);
  }
  for (const [at, plot] of problem.plots.entries())
    if (plot.isRotated) score += plotScore(problem, plot, plan[at] ?? []);
  return score + splits(problem, courseAt);
}

function areaAndBalance(problem: RotationProblem, course: string, areasM2: readonly number[]): number {
  const { weights } = problem;
  let score = 0;
  for (const [year, areaM2] of areasM2.entries()) {
    const askedM2 = problem.askedM2[course]?.[year] ?? 0;
    const wholeM2 = askedM2 === 0 ? 100 : askedM2;
    const { low, high } = problem.bands[course] ?? { low: 0, high: 1 };
    const missM2 = Math.max(low * askedM2 - areaM2, areaM2 - high * askedM2, 0);
    score += (weights.areaWeight * missM2) / wholeM2;
    if (year === 0) continue;
    const freeM2 = Math.max(weights.freeBalanceShare * wholeM2, weights.freeBalanceM2);
    const changeM2 = Math.abs(areaM2 - (areasM2[year - 1] ?? 0)) - freeM2;
    if (changeM2 > 0) score += (weights.balanceWeight * changeM2) / wholeM2;
  }
  return score;
}

function plotScore(problem: RotationProblem, plot: RotationPlot, sequence: readonly string[]): number {
  const { weights } = problem;
  let score = 0;
  const last = plot.history[plot.history.length - 1];
  let before = [...problem.options, ...(problem.pastOptions ?? [])].find((option) => option.id === last) ?? null;
  for (const [year, id] of sequence.entries()) {
    const option = problem.options.find((one) => one.id === id);
    if (option === undefined) continue;
    score += weights.optionWeight * option.costScore + (plot.dearScore[option.course] ?? 0);
    if (before !== null && problem.standardNext[before.course] !== option.course) score += weights.orderWeight;
    const agreed = plot.agreed === null ? null : (plot.agreed[year] ?? null);
    if (agreed !== null && agreed !== option.course)
      score += weights.stabilityWeight * weights.stabilityDecayFactor ** year;
    before = option;
  }
  return score;
}

function splits(problem: RotationProblem, courseAt: (plot: number, year: number) => string | null): number {
  let score = 0;
  const parents = new Set(
    problem.plots.flatMap((plot) => (plot.isRotated && plot.parent !== null ? [plot.parent] : [])),
  );
  for (const parent of parents) {
    const parts = problem.plots.flatMap((plot, at) => (plot.isRotated && plot.parent === parent ? [at] : []));
    const [first = 0, ...others] = parts;
    for (const other of others)
      for (let year = 0; year < problem.years; year++)
        if (courseAt(first, year) !== courseAt(other, year)) score += problem.weights.splitWeight;
  }
  return score;
}
