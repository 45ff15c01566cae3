/** What a soft rule or a pin costs: the same farm planned without it, and how much less all else then costs. */

import { type SoftRule, scoreOfPlan } from '../rotation-model/score.ts';
import type { RotationPlan, RotationProblem, RotationWeights } from '../rotation-problem/problem.ts';
import { type RotationAsk, solveRotation } from '../rotation-solver/solve-rotation.ts';
import type { Solver } from '../rotation-solver/solver.ts';

export interface RulePrice {
  /** Score of all other rules with this one kept, and without it. The difference is its price. */
  readonly keptScore: number;
  readonly liftedScore: number;
  readonly priceScore: number;
  /** False when one of the two plans is only the best so far: the price is then a guide. */
  readonly isProven: boolean;
}

const weightOf: Readonly<Record<SoftRule, keyof RotationWeights>> = {
  area: 'areaWeight',
  balance: 'balanceWeight',
  order: 'orderWeight',
  cover: 'optionWeight',
  stability: 'stabilityWeight',
  split: 'splitWeight',
};

export interface PriceAsk extends RotationAsk {
  readonly plan: RotationPlan;
  readonly isPlanProven: boolean;
}

/** Price of a soft rule. Null when the farm can't be planned without it, which would be our mistake. */
export async function priceOfRule(
  problem: RotationProblem,
  rule: SoftRule,
  how: { readonly ask: PriceAsk; readonly solver: Solver },
): Promise<RulePrice | null> {
  const without = { ...problem, weights: { ...problem.weights, [weightOf[rule]]: 0 } };
  const answer = await solveRotation(without, how.ask, how.solver);
  if (answer.kind === 'no-plan') return null;
  const kept = scoreOfPlan(problem, how.ask.plan);
  const keptScore = kept.totalScore - kept.byRule[rule];
  const liftedScore = answer.totalScore;
  const isProven = how.ask.isPlanProven && answer.status === 'optimal';
  return { keptScore, liftedScore, priceScore: keptScore - liftedScore, isProven };
}

/** What lifting a pin would save. */
export async function priceOfPin(
  problem: RotationProblem,
  pin: { readonly plotIndex: number; readonly year: number },
  how: { readonly ask: PriceAsk; readonly solver: Solver },
): Promise<RulePrice | null> {
  const plots = problem.plots.map((plot, index) => {
    if (index !== pin.plotIndex) return plot;
    return {
      ...plot,
      pins: Object.fromEntries(Object.entries(plot.pins).filter(([year]) => Number(year) !== pin.year)),
    };
  });
  const answer = await solveRotation({ ...problem, plots }, how.ask, how.solver);
  if (answer.kind === 'no-plan') return null;
  const keptScore = scoreOfPlan(problem, how.ask.plan).totalScore;
  const isProven = how.ask.isPlanProven && answer.status === 'optimal';
  return { keptScore, liftedScore: answer.totalScore, priceScore: keptScore - answer.totalScore, isProven };
}
