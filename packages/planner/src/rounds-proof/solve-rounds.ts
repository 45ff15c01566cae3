/**
 * Plans delivery rounds: the best of several searches, then the proof where there can be one.
 *
 * Holds   the length is reckoned from the plan itself; `optimal` is said only when a bound meets it; with opening hours there is no proof, and it says so.
 */
import type { Solver, StopSign } from '../rotation-solver/solver.ts';
import type { RoundsFigures, RoundsPlan, RoundsProblem } from '../rounds/problem.ts';
import { figuresOf } from '../rounds/route.ts';
import { commonTries, searchRounds } from '../rounds/search.ts';
import { type ExactAnswer, proveRounds, type WhyNoProof, whyNotExact } from './exact.ts';

export interface RoundsAsk {
  readonly seeds: readonly number[];
  readonly tries?: number;
  /** For the proof; 0 leaves it out. */
  readonly proofLimitS: number;
  readonly stop?: StopSign;
}

/** `optimal` is proven; `found` has no proof; `late` and `left-over` are the best found for what cannot all be kept. */
export const roundsStatuses = ['optimal', 'found', 'late', 'left-over'] as const;
export type RoundsStatus = (typeof roundsStatuses)[number];

export interface RoundsAnswer {
  readonly status: RoundsStatus;
  readonly plan: RoundsPlan;
  readonly figures: RoundsFigures;
  /** Length of the best of each seed, lateness not counted in. */
  readonly bySeedKm: readonly number[];
  /** No rounds are shorter; null where nothing is proven. */
  readonly boundKm: number | null;
  readonly gapShare: number | null;
  readonly whyNoProof: WhyNoProof | null;
  readonly elapsedS: number;
}

export async function solveRounds(problem: RoundsProblem, ask: RoundsAsk, solver: Solver): Promise<RoundsAnswer> {
  const startedS = solver.nowS();
  const { plan: found, bySeedKm } = bestOfSeeds(problem, ask);
  const foundFigures = figuresOf(problem, found);
  const exact = await proofOf(problem, { plan: found, figures: foundFigures, ask }, solver);
  const plan = exact.plan ?? found;
  const figures = exact.plan === null ? foundFigures : figuresOf(problem, exact.plan);
  const boundKm = exact.boundKm === null ? null : Math.min(exact.boundKm, figures.totalKm);
  const gapShare = boundKm === null || figures.totalKm === 0 ? null : (figures.totalKm - boundKm) / figures.totalKm;
  const isProven = gapShare !== null && gapShare < 1e-9;
  const elapsedS = solver.nowS() - startedS;
  const whyNot = isProven ? null : exact.whyNot;
  return {
    status: statusOf(plan, figures, isProven),
    plan,
    figures,
    bySeedKm,
    boundKm,
    gapShare,
    whyNoProof: whyNot,
    elapsedS,
  };
}

function statusOf(plan: RoundsPlan, figures: RoundsFigures, isProven: boolean): RoundsStatus {
  if (plan.unserved.length > 0) return 'left-over';
  if (figures.lateMin >= 1e-6) return 'late';
  return isProven ? 'optimal' : 'found';
}

interface Sofar {
  readonly plan: RoundsPlan;
  readonly figures: RoundsFigures;
  readonly ask: RoundsAsk;
}

/** The proof, with a plan only where it is better than the one found. */
async function proofOf(problem: RoundsProblem, { plan, figures, ask }: Sofar, solver: Solver): Promise<ExactAnswer> {
  const isServed = plan.unserved.length === 0 && figures.lateMin < 1e-6;
  if (ask.proofLimitS <= 0 || !isServed) return { boundKm: null, plan: null, whyNot: whyNotExact(problem) };
  const stop = ask.stop === undefined ? {} : { stop: ask.stop };
  const exact = await proveRounds(problem, { timeLimitS: ask.proofLimitS, knownKm: figures.totalKm, ...stop }, solver);
  const isBetter = exact.plan !== null && figuresOf(problem, exact.plan).totalKm < figures.totalKm - 1e-9;
  return isBetter ? exact : { ...exact, plan: null };
}

function bestOfSeeds(problem: RoundsProblem, { seeds, tries = commonTries(problem.drops.length), stop }: RoundsAsk) {
  let best: { readonly plan: RoundsPlan; readonly costs: readonly number[] } | null = null;
  const bySeedKm: number[] = [];
  for (const seed of seeds.length === 0 ? [1] : seeds) {
    if (best !== null && stop?.isStopped() === true) break;
    const plan = searchRounds(problem, { seed, tries });
    const figures = figuresOf(problem, plan);
    bySeedKm.push(figures.totalKm);
    const costs = [plan.unserved.length, figures.totalKm + figures.lateMin * problem.lateKmPerMin];
    if (best === null || isLess(costs, best.costs)) best = { plan, costs };
  }
  if (best === null) throw new Error('No search was made.');
  return { plan: best.plan, bySeedKm };
}

function isLess(one: readonly number[], other: readonly number[]): boolean {
  const at = one.findIndex((value, index) => Math.abs(value - (other[index] ?? 0)) > 1e-9);
  return at >= 0 && (one[at] ?? 0) < (other[at] ?? 0);
}
