// One linear model kept between runs: changed in place and solved on from the last basis. Plain JavaScript, as the thread is.

import { endingOf, modelOf } from './highs-model.mjs';

/**
 * @typedef {{ kept: 'open', model: import('@leywright/planner').LinearModel } | { kept: 'close' } | RunJob} KeptJob
 * @typedef {object} RunJob
 * @property {'run'} kept
 * @property {import('@leywright/planner').ModelChange | null} change
 * @property {number} timeLimitS
 * @property {boolean} isCold
 * @property {Int32Array} stopFlag
 */

/** @type {import('highs').Model | null} */
let model = null;

/** @param {import('highs').Highs} highs @param {KeptJob} job */
export function answerKept(highs, job) {
  if (job.kept === 'run') return run(highs, job);
  model?.dispose();
  model = job.kept === 'open' ? highs.createModel(modelOf(highs, job.model)) : null;
  return { kind: 'kept', state: job.kept };
}

/** @param {import('highs').Highs} highs @param {RunJob} job */
function run(highs, job) {
  if (model === null) throw new Error('There is no model kept.');
  if (job.change !== null) change(model, job.change);
  const how = job.isCold ? { solver: 'ipm', presolve: 'on' } : { solver: 'simplex', presolve: 'off' };
  model.zeroAllClocks();
  model.options.set({ output_flag: false, time_limit: job.timeLimitS, ...how });
  const { callbackType, modelStatus } = highs.constants;
  /** @param {{ interrupt: () => void }} event */
  const look = (event) => {
    if (Atomics.load(job.stopFlag, 0) === 1) event.interrupt();
    return undefined;
  };
  const { modelStatus: status } = model.run({
    [callbackType.simplexInterrupt]: look,
    [callbackType.ipmInterrupt]: look,
  });
  const isOptimal = status === modelStatus.optimal;
  const solution = isOptimal ? model.getSolution() : null;
  return {
    kind: 'kept',
    state: 'run',
    ending: endingOf(modelStatus, status),
    values: solution?.colValue ?? null,
    rowPriceWeight: solution?.rowDual ?? null,
    totalScore: isOptimal ? model.getObjectiveValue() : Number.POSITIVE_INFINITY,
  };
}

/** @param {import('highs').Model} kept @param {import('@leywright/planner').ModelChange} by */
function change(kept, by) {
  const { columns = [], rows = [], costs = [], entries = [] } = by;
  for (const { placeIndex, low, high } of columns) kept.changeColBounds(placeIndex, low, high);
  for (const { placeIndex, low, high } of rows) kept.changeRowBounds(placeIndex, low, high);
  for (const { placeIndex, costWeight } of costs) kept.changeColCost(placeIndex, costWeight);
  for (const { rowIndex, columnIndex, factor } of entries) kept.changeCoefficient(rowIndex, columnIndex, factor);
}
