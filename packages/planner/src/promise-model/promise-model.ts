/** The promise as a linear model: least cost of ground, hands and shortfalls; or the most households the ground, stores and hands can feed. */
import type { PromiseProblem } from '../promise-problem/problem.ts';
import type { LinearModel } from '../rotation-model/draft-model.ts';
import { boxRows } from './box-rows.ts';
import { type PromisePlaces, startBuilding } from './building.ts';
import { fieldRows } from './field-rows.ts';
import { limitRows } from './limit-rows.ts';
import { storeRows } from './store-rows.ts';

export interface PromiseModel {
  readonly problem: PromiseProblem;
  readonly linear: LinearModel;
  readonly places: PromisePlaces;
}

export function promiseModel(problem: PromiseProblem, isScaled = false): PromiseModel {
  const building = startBuilding(problem, isScaled);
  const field = fieldRows(building);
  storeRows(building, field);
  boxRows(building);
  limitRows(building, field);
  return { problem, linear: building.draft.finish(), places: building.places };
}

/** The same model with beds that are whole. */
export function inWholeBeds({ linear, problem, places }: PromiseModel): LinearModel {
  const wholeIndex = Int32Array.from(linear.wholeIndex);
  const columnLow = Float64Array.from(linear.columnLow);
  const columnHigh = Float64Array.from(linear.columnHigh);
  problem.successions.forEach((one, at) => {
    const column = places.beds[at] ?? 0;
    if (one.pinnedM2 !== null) return;
    wholeIndex[column] = one.leastBeds > 1 ? semiWhole : whole;
    columnHigh[column] = mostBeds;
    if (one.leastBeds > 1) columnLow[column] = one.leastBeds;
  });
  return { ...linear, wholeIndex, columnLow, columnHigh };
}

const whole = 1;
/** Nought, or a whole number from the least up: the solver's own mark. */
const semiWhole = 3;
const mostBeds = 200;
