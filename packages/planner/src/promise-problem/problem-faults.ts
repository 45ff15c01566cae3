/** What does not fit together in a promise problem whose members are each well formed. */
import type { ProblemFault } from '../rotation-problem/read-fields.ts';
import type { PromiseCrop, PromiseProblem, PromiseSuccession } from './problem.ts';

export function promiseFaults(problem: PromiseProblem): readonly ProblemFault[] {
  return [
    ...sameIds(problem.crops, 'crops'),
    ...sameIds(problem.successions, 'succ'),
    ...problem.crops.flatMap((crop, at) => cropFaults(problem, crop, `crops.${at}`)),
    ...problem.successions.flatMap((succession, at) => successionFaults(problem, succession, `succ.${at}`)),
    ...boxFaults(problem),
  ];
}

function sameIds(list: readonly { readonly id: string }[], place: string): readonly ProblemFault[] {
  const seen = new Set<string>();
  return list.flatMap(({ id }, at) => {
    if (!seen.has(id)) {
      seen.add(id);
      return [];
    }
    return [{ place: `${place}.${at}.id`, found: id, need: 'a name no other has' }];
  });
}

function cropFaults(problem: PromiseProblem, crop: PromiseCrop, place: string): readonly ProblemFault[] {
  const faults: ProblemFault[] = [];
  if (!Object.hasOwn(problem.groundM2, crop.ground))
    faults.push({ place: `${place}.group`, found: crop.ground, need: oneOf(Object.keys(problem.groundM2)) });
  if (!problem.slots.some((slot) => slot.id === crop.slot))
    faults.push({ place: `${place}.slot`, found: crop.slot, need: oneOf(problem.slots.map((slot) => slot.id)) });
  if (crop.store !== null && !Object.hasOwn(problem.storesKg, crop.store.kind))
    faults.push({ place: `${place}.store.type`, found: crop.store.kind, need: oneOf(Object.keys(problem.storesKg)) });
  if (crop.portionLeastKg > crop.portionMostKg)
    faults.push({
      place: `${place}.portionMin`,
      found: `${crop.portionLeastKg}`,
      need: `${crop.portionMostKg} or less`,
    });
  return faults;
}

function successionFaults(problem: PromiseProblem, one: PromiseSuccession, place: string): readonly ProblemFault[] {
  const faults: ProblemFault[] = [];
  if (problem.crops[one.cropIndex] === undefined)
    faults.push({ place: `${place}.crop`, found: `${one.cropIndex}`, need: `0 to ${problem.crops.length - 1}` });
  if (one.groundFromWeek > one.harvestFromWeek)
    faults.push({ place: `${place}.ground`, found: `${one.groundFromWeek}`, need: `${one.harvestFromWeek} or less` });
  if (one.readyKgM2.length === 0)
    faults.push({ place: `${place}.yield`, found: 'no week', need: 'at least one week of harvest' });
  return faults;
}

function boxFaults({ box }: PromiseProblem): readonly ProblemFault[] {
  const faults: ProblemFault[] = [];
  if (box.leastKg > box.mostKg)
    faults.push({ place: 'box.minKg', found: `${box.leastKg}`, need: `${box.mostKg} or less` });
  if (box.leastItems > box.mostItems)
    faults.push({ place: 'box.minItems', found: `${box.leastItems}`, need: `${box.mostItems} or less` });
  return faults;
}

function oneOf(names: readonly string[]): string {
  return `one of ${names.join(', ')}`;
}
