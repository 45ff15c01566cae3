/**
 * What stands behind a proposal, for who wants to look: what each soft rule costs, and whether halving plots would help.
 *
 * Rule    A soft rule's price is what all others cost with it less what they cost when it is laid aside and the farm planned anew. Halving: every plot as two halves
 *         that may differ, at the split's own cost each year they do.
 * Holds   a gain is said only as far as it is proven or found: the halves' plan is itself lawful, its score a true one.
 */
import { priceOfRule, type RulePrice } from '../rotation-explain/rule-price.ts';
import { type SoftRule, softRules } from '../rotation-model/score.ts';
import type { RotationProblem } from '../rotation-problem/problem.ts';
import type { RotationAsk } from '../rotation-solver/solve-rotation.ts';
import { solveRotation } from '../rotation-solver/solve-rotation.ts';
import type { Solver } from '../rotation-solver/solver.ts';
import type { RotationProposal } from './propose.ts';

export interface RotationBehind {
  readonly prices: readonly { readonly rule: SoftRule; readonly price: RulePrice }[];
  readonly halving: Halving | null;
}

export interface Halving {
  readonly wholeScore: number;
  readonly halvesScore: number;
  /** Plots whose halves would differ in some year. */
  readonly plots: readonly string[];
  /** Whether both plans are proven best; else the gain is what was found. */
  readonly isProven: boolean;
}

/** Each solve gets the time asked for; only rules that cost something are priced. */
export async function behindProposal(
  { asked, answer }: RotationProposal,
  how: { readonly ask: RotationAsk; readonly solver: Solver },
): Promise<RotationBehind> {
  const { problem } = asked;
  const isPlanProven = answer.status === 'optimal';
  const prices: { rule: SoftRule; price: RulePrice }[] = [];
  for (const rule of softRules.filter((one) => answer.score.byRule[one] > 0.005)) {
    const ask = { ...how.ask, plan: answer.plan, isPlanProven };
    const price = await priceOfRule(problem, rule, { ask, solver: how.solver });
    if (price !== null) prices.push({ rule, price });
  }
  const halves = await solveRotation(halved(problem), how.ask, how.solver);
  if (halves.kind === 'no-plan') return { prices, halving: null };
  const differ = problem.plots.filter((_, at) => halves.plan[2 * at]?.join() !== halves.plan[2 * at + 1]?.join());
  return {
    prices,
    halving: {
      wholeScore: answer.totalScore,
      halvesScore: halves.totalScore,
      plots: differ.map((plot) => plot.id),
      isProven: isPlanProven && halves.status === 'optimal',
    },
  };
}

/** Every plot as two halves of its own past. */
export function halved(problem: RotationProblem): RotationProblem {
  const plots = problem.plots.flatMap((plot) =>
    [1, 2].map((half) => ({
      ...plot,
      id: `${plot.id}/${half}`,
      parent: plot.id,
      areaM2: plot.areaM2 / 2,
      dearScore: Object.fromEntries(Object.entries(plot.dearScore).map(([course, score]) => [course, score / 2])),
    })),
  );
  // Half a change against what is agreed is half a change.
  const weights = {
    ...problem.weights,
    stabilityWeight: problem.weights.stabilityWeight / 2,
    orderWeight: problem.weights.orderWeight / 2,
    optionWeight: problem.weights.optionWeight / 2,
  };
  return { ...problem, plots, weights };
}
