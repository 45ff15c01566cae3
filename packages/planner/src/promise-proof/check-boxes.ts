/** The boxes of a plan against what was promised: part of the plain checker. */
import type { PromisePlan } from '../promise-model/promise-plan.ts';
import type { PromiseProblem } from '../promise-problem/problem.ts';
import type { PromiseBreach } from './breach.ts';

const toleranceKg = 0.5;
const toleranceShare = 1e-4;
const toleranceMoney = 0.5;

export function boxBreaches(problem: PromiseProblem, plan: PromisePlan): readonly PromiseBreach[] {
  const found: PromiseBreach[] = [];
  for (let week = 0; week < problem.weeks; week += 1) {
    const households = problem.households[week] ?? 0;
    if (households > 0)
      found.push(
        ...portionBreaches(problem, plan, { week, households }),
        ...slotBreaches(problem, plan, { week, households }),
        ...wholeBoxBreaches(problem, plan, { week, households }),
      );
  }
  return [...found, ...runBreaches(problem, plan)];
}

interface Week {
  readonly week: number;
  readonly households: number;
}

function portionBreaches(problem: PromiseProblem, plan: PromisePlan, at: Week): readonly PromiseBreach[] {
  return problem.crops.flatMap((crop, place): PromiseBreach[] => {
    const kg = plan.boxedKg[place]?.[at.week] ?? 0;
    const share = plan.carriedShare[place]?.[at.week] ?? 0;
    const boxes = share * at.households;
    const byAmount = Math.max(crop.portionLeastKg * boxes - kg, kg - crop.portionMostKg * boxes, 0);
    const found: PromiseBreach[] = [];
    if (byAmount > toleranceKg) found.push({ rule: 'portion', place: crop.id, week: at.week, byAmount, byUnit: 'kg' });
    if (share > 1 + toleranceShare)
      found.push({ rule: 'portion', place: crop.id, week: at.week, byAmount: share - 1, byUnit: 'share' });
    return found;
  });
}

function slotBreaches(
  problem: PromiseProblem,
  plan: PromisePlan,
  { week, households }: Week,
): readonly PromiseBreach[] {
  return problem.slots.flatMap((slot, place): PromiseBreach[] => {
    const needKg = (slot.needKgHousehold[week] ?? 0) * households;
    if (needKg <= 0) return [];
    const kg = problem.crops.reduce(
      (sum, crop, at) => sum + (crop.slot === slot.id ? (plan.boxedKg[at]?.[week] ?? 0) : 0),
      0,
    );
    const lackKg = needKg - kg - (plan.slotShortKg[place]?.[week] ?? 0);
    const byAmount = Math.max(lackKg, kg - needKg * problem.slotMostFactor);
    return byAmount > toleranceKg ? [{ rule: 'slot', place: slot.id, week, byAmount, byUnit: 'kg' }] : [];
  });
}

function wholeBoxBreaches(problem: PromiseProblem, plan: PromisePlan, at: Week): readonly PromiseBreach[] {
  const { box } = problem;
  const { week, households } = at;
  const kg = problem.crops.reduce((sum, _, crop) => sum + (plan.boxedKg[crop]?.[week] ?? 0), 0);
  const worth = problem.crops.reduce((sum, one, crop) => sum + (plan.boxedKg[crop]?.[week] ?? 0) * one.worthPerKg, 0);
  const items = problem.crops.reduce((sum, _, crop) => sum + (plan.carriedShare[crop]?.[week] ?? 0), 0);
  const lackKg = box.leastKg * households - kg - (plan.massShortKg[week] ?? 0);
  const byKg = Math.max(lackKg, kg - box.mostKg * households);
  const byItems = Math.max(box.leastItems - items - (plan.missingItems[week] ?? 0), items - box.mostItems);
  const byWorth = box.leastWorthPerBox * households - worth - (plan.worthShortWeight[week] ?? 0);
  const found: PromiseBreach[] = [];
  if (byKg > toleranceKg) found.push({ rule: 'box', place: 'weight', week, byAmount: byKg, byUnit: 'kg' });
  if (byItems > toleranceShare) found.push({ rule: 'box', place: 'items', week, byAmount: byItems, byUnit: 'items' });
  if (byWorth > toleranceMoney) found.push({ rule: 'box', place: 'worth', week, byAmount: byWorth, byUnit: 'money' });
  return found;
}

/** Over any run of weeks one longer than allowed, the shares that carry the crop add up to no more than the weeks allowed. */
function runBreaches(problem: PromiseProblem, plan: PromisePlan): readonly PromiseBreach[] {
  return problem.crops.flatMap(({ id, mostRunWeeks }, at) => {
    const shares = plan.carriedShare[at] ?? [];
    const lastStart = problem.isCyclic ? problem.weeks - 1 : problem.weeks - 1 - mostRunWeeks;
    if (mostRunWeeks >= problem.weeks) return [];
    return Array.from({ length: lastStart + 1 }, (_, week) => week).flatMap((week): PromiseBreach[] => {
      const running = sharesFrom(shares, week, { over: mostRunWeeks + 1, weeks: problem.weeks });
      return running > mostRunWeeks + toleranceShare
        ? [{ rule: 'too-many-weeks-running', place: id, week, byAmount: running - mostRunWeeks, byUnit: 'share' }]
        : [];
    });
  });
}

function sharesFrom(
  shares: readonly number[],
  from: number,
  at: { readonly over: number; readonly weeks: number },
): number {
  let sum = 0;
  for (let step = 0; step < at.over; step += 1) sum += shares[(from + step) % at.weeks] ?? 0;
  return sum;
}
