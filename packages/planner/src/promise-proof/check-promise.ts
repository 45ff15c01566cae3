/**
 * A plain checker of promise plans: it shares nothing with the model but the problem and the plan, and does its own sums.
 *
 * Checks  what is cut was ready and still good; kilos in = kilos out + loss for every crop and week; portions, kinds, weight, items, worth and
 *         weeks running of the boxes; ground, stores and hands within what there is.
 */
import type { PromisePlan } from '../promise-model/promise-plan.ts';
import type { PromiseProblem } from '../promise-problem/problem.ts';
import type { PromiseBreach } from './breach.ts';
import { boxBreaches } from './check-boxes.ts';

/** Kilos, square metres and hours may be off by this much of the solver's own. */
const toleranceKg = 0.5;
const toleranceM2 = 0.05;
const toleranceH = 0.05;

export function promiseBreaches(problem: PromiseProblem, plan: PromisePlan): readonly PromiseBreach[] {
  return [
    ...fieldBreaches(problem, plan),
    ...flowBreaches(problem, plan),
    ...boxBreaches(problem, plan),
    ...groundBreaches(problem, plan),
    ...storeBreaches(problem, plan),
    ...handsBreaches(problem, plan),
  ];
}

/** Cuts each week's harvest from what stands, as a grower would, and notes where there was too little. */
function fieldBreaches(problem: PromiseProblem, plan: PromisePlan): readonly PromiseBreach[] {
  return problem.successions.flatMap((one, at) => {
    const areaM2 = plan.areaM2[at] ?? 0;
    const found: PromiseBreach[] = [];
    if (one.pinnedM2 !== null && Math.abs(one.pinnedM2 - areaM2) > toleranceM2)
      found.push({ rule: 'pinned', place: one.id, week: 0, byAmount: areaM2 - one.pinnedM2, byUnit: 'm2' });
    let standsKg = 0;
    for (let step = 0; step < one.readyKgM2.length; step += 1) {
      standsKg = standsKg * one.keepShare + (one.readyKgM2[step] ?? 0) * areaM2;
      standsKg -= plan.cutKg[at]?.[step] ?? 0;
      if (standsKg < -toleranceKg)
        found.push({
          rule: 'cut-more-than-stands',
          place: one.id,
          week: one.harvestFromWeek + step,
          byAmount: -standsKg,
          byUnit: 'kg',
        });
      standsKg = Math.max(0, standsKg);
    }
    return found;
  });
}

function flowBreaches(problem: PromiseProblem, plan: PromisePlan): readonly PromiseBreach[] {
  const cutKg = cutByCrop(problem, plan);
  return problem.crops.flatMap((_, crop) =>
    Array.from({ length: problem.weeks }, (__, week) => week).flatMap((week) =>
      flowOfWeek(problem, plan, { crop, week, cutKg: cutKg[crop]?.[week] ?? 0 }),
    ),
  );
}

interface CropWeek {
  readonly crop: number;
  readonly week: number;
}

/** Kilos in and out of one crop in one week: from the field, into and out of store, into the boxes. */
function flowOfWeek(
  problem: PromiseProblem,
  plan: PromisePlan,
  { crop, week, cutKg }: CropWeek & { readonly cutKg: number },
): readonly PromiseBreach[] {
  const kgOf = (list: readonly (readonly number[])[]) => list[crop]?.[week] ?? 0;
  const place = problem.crops[crop]?.id ?? '';
  const inKg = cutKg * (1 - problem.gradedOutShare);
  const freshKg = kgOf(plan.boxedFreshKg);
  const storedKg = kgOf(plan.storedKg);
  const takenKg = kgOf(plan.takenKg);
  const beforeKg = beforeInStoreKg(problem, plan, { crop, week });
  const lostKg = beforeKg * (problem.crops[crop]?.store?.lossShare ?? 0);
  const overKg: readonly (readonly [PromiseBreach['rule'], number])[] = [
    ['more-out-than-in', freshKg + storedKg - inKg],
    ['more-out-than-in', kgOf(plan.boxedKg) - freshKg - takenKg * (1 - problem.trimmedShare)],
    ['store-does-not-add-up', kgOf(plan.stockKg) - (beforeKg - lostKg + storedKg - takenKg)],
  ];
  return overKg
    .filter(([, kg]) => kg > toleranceKg)
    .map(([rule, byAmount]) => ({ rule, place, week, byAmount, byUnit: 'kg' }));
}

function beforeInStoreKg(problem: PromiseProblem, plan: PromisePlan, { crop, week }: CropWeek): number {
  if (week > 0) return plan.stockKg[crop]?.[week - 1] ?? 0;
  return problem.isCyclic ? (plan.stockKg[crop]?.at(-1) ?? 0) : (problem.crops[crop]?.openingStoreKg ?? 0);
}

function cutByCrop(problem: PromiseProblem, plan: PromisePlan): readonly (readonly number[])[] {
  const sums = problem.crops.map(() => new Array<number>(problem.weeks).fill(0));
  problem.successions.forEach((one, at) => {
    plan.cutKg[at]?.forEach((kg, step) => {
      const week = roundYear(one.harvestFromWeek + step, problem.weeks);
      const ofCrop = sums[one.cropIndex];
      if (ofCrop !== undefined) ofCrop[week] = (ofCrop[week] ?? 0) + kg;
    });
  });
  return sums;
}

function groundBreaches(problem: PromiseProblem, plan: PromisePlan): readonly PromiseBreach[] {
  return Object.entries(problem.groundM2).flatMap(([ground, thereM2]) => {
    const heldM2 = new Array<number>(problem.weeks).fill(0);
    problem.successions.forEach((one, at) => {
      if (problem.crops[one.cropIndex]?.ground !== ground) return;
      for (let week = one.groundFromWeek; week < one.harvestFromWeek + one.readyKgM2.length; week += 1) {
        const place = roundYear(week, problem.weeks);
        heldM2[place] = (heldM2[place] ?? 0) + (plan.areaM2[at] ?? 0);
      }
    });
    return heldM2.flatMap((m2, week): PromiseBreach[] =>
      m2 > thereM2 + toleranceM2 ? [{ rule: 'ground', place: ground, week, byAmount: m2 - thereM2, byUnit: 'm2' }] : [],
    );
  });
}

function storeBreaches(problem: PromiseProblem, plan: PromisePlan): readonly PromiseBreach[] {
  return Object.entries(problem.storesKg).flatMap(([kind, roomKg]) => {
    const crops = problem.crops.flatMap((crop, at) => (crop.store?.kind === kind ? [at] : []));
    return Array.from({ length: problem.weeks }, (_, week) => week).flatMap((week): PromiseBreach[] => {
      const inKg = crops.reduce((sum, crop) => sum + (plan.stockKg[crop]?.[week] ?? 0), 0);
      return inKg > roomKg + toleranceKg
        ? [{ rule: 'store-too-full', place: kind, week, byAmount: inKg - roomKg, byUnit: 'kg' }]
        : [];
    });
  });
}

function handsBreaches(problem: PromiseProblem, plan: PromisePlan): readonly PromiseBreach[] {
  const workH = weekHours(problem, plan);
  return workH.flatMap((h, week): PromiseBreach[] => {
    const thereH = (problem.hands.hours[week] ?? 0) + (plan.overtimeH[week] ?? 0);
    return h > thereH + toleranceH ? [{ rule: 'hands', place: 'hands', week, byAmount: h - thereH, byUnit: 'h' }] : [];
  });
}

/** Hours of each week: packing, planting where a succession takes up its ground, and cutting. */
export function weekHours(problem: PromiseProblem, plan: PromisePlan): readonly number[] {
  const hours = problem.households.map((households) => households * problem.hands.packHoursPerBox);
  problem.successions.forEach((one, at) => {
    const plantWeek = roundYear(one.groundFromWeek, problem.weeks);
    hours[plantWeek] = (hours[plantWeek] ?? 0) + one.plantHoursPerM2 * (plan.areaM2[at] ?? 0);
    const perKg = problem.crops[one.cropIndex]?.harvestHoursPerKg ?? 0;
    plan.cutKg[at]?.forEach((kg, step) => {
      const week = roundYear(one.harvestFromWeek + step, problem.weeks);
      hours[week] = (hours[week] ?? 0) + perKg * kg;
    });
  });
  return hours;
}

function roundYear(week: number, weeks: number): number {
  return ((week % weeks) + weeks) % weeks;
}
