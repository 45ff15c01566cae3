/** What a promise plan costs, added up again from its own figures: the sum the solver's objective is held against. */
import type { PromisePlan } from '../promise-model/promise-plan.ts';
import type { PromiseProblem } from '../promise-problem/problem.ts';
import { weekHours } from './check-promise.ts';

export function promiseCost(problem: PromiseProblem, plan: PromisePlan): number {
  const { hands, shortPrices } = problem;
  const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);
  const ground = sum(problem.successions.map((one, at) => one.costPerM2 * (plan.areaM2[at] ?? 0)));
  const wages = sum(weekHours(problem, plan)) * hands.wagePerH;
  const overtime = sum(plan.overtimeH) * (hands.overtimeWagePerH - hands.wagePerH);
  const slots = sum(plan.slotShortKg.map(sum)) * shortPrices.slotPerKg;
  const mass = sum(plan.massShortKg) * shortPrices.boxPerKg;
  const items = sum(plan.missingItems.map((items, week) => items * (problem.households[week] ?? 0)));
  const worth = sum(plan.worthShortWeight) * shortPrices.worthWeight;
  const dislike = sum(
    problem.crops.map((crop, at) =>
      sum((plan.carriedShare[at] ?? []).map((share, week) => share * (1 - (crop.likedShare[week] ?? 1)))),
    ),
  );
  return (
    ground * problem.groundCostWeight +
    wages +
    overtime +
    slots +
    mass +
    items * shortPrices.missingPerItem +
    worth +
    dislike
  );
}
