// One thread that solves one model at a time with HiGHS, or keeps one and answers again after each change of it. It is plain JavaScript, because Node starts threads from files as they are.
//
// Message in: a job. Messages out: `better` as often as something better or a tighter bound is known, then `done` or `broken`.
// After `broken` the machine code's memory is not to be trusted: the thread has to be ended and another one started.

import { parentPort } from 'node:worker_threads';
import loadHighs from 'highs';
import { answerKept } from './highs-kept.mjs';
import { endingOf, failureOf, modelOf } from './highs-model.mjs';

/**
 * @typedef {object} SolveJob
 * @property {import('@leywright/planner').LinearModel} model
 * @property {number} timeLimitS
 * @property {number} gapShare
 * @property {readonly (readonly [number, number])[]} start
 * @property {Int32Array} stopFlag 1 once the search shall end; shared between threads
 */

/** @type {Promise<import('highs').Highs> | null} */
let loading = null;

/** @param {SolveJob} job */
async function solve(job) {
  loading ??= loadHighs();
  const highs = await loading;
  return highs.withModel(modelOf(highs, job.model), (model) => {
    model.options.set({ output_flag: false, time_limit: job.timeLimitS, mip_rel_gap: job.gapShare });
    if (job.start.length > 0) {
      const indices = Int32Array.from(job.start, ([column]) => column);
      model.setSolution({ indices, values: Float64Array.from(job.start, ([, value]) => value) });
    }
    const run = model.run(callbacksOf(highs, job));
    return answerOf(highs, model, run.modelStatus);
  });
}

/** @param {import('highs').Highs} highs @param {SolveJob} job @returns {import('highs').HighsCallbackMap} */
function callbacksOf(highs, job) {
  const { callbackType } = highs.constants;
  return {
    [callbackType.mipImprovingSolution]: (event) => {
      post({
        kind: 'better',
        values: event.data.mip_solution ?? null,
        boundScore: event.data.mip_dual_bound ?? -Infinity,
      });
      return undefined;
    },
    [callbackType.mipLogging]: (event) => {
      post({ kind: 'better', values: null, boundScore: event.data.mip_dual_bound ?? -Infinity });
      return undefined;
    },
    [callbackType.mipInterrupt]: (event) => {
      if (Atomics.load(job.stopFlag, 0) === 1) event.interrupt();
      return undefined;
    },
  };
}

/** @param {import('highs').Highs} highs @param {import('highs').Model} model @param {number} status */
function answerOf(highs, model, status) {
  const { modelStatus, solutionStatus } = highs.constants;
  const hasSolution = Number(model.info.get('primal_solution_status')) === solutionStatus.feasible;
  const isWhole = model.getDimensions().numCols > 0;
  return {
    kind: 'done',
    ending: endingOf(modelStatus, status),
    values: hasSolution && isWhole ? model.getSolution().colValue : null,
    boundScore: Number(model.info.get('mip_dual_bound')),
  };
}

/** @param {Record<string, unknown>} message */
function post(message) {
  parentPort?.postMessage(message);
}

parentPort?.on('message', async (/** @type {SolveJob | import('./highs-kept.mjs').KeptJob} */ job) => {
  try {
    loading ??= loadHighs();
    post('kept' in job ? answerKept(await loading, job) : await solve(job));
  } catch (error) {
    post({ kind: 'broken', failure: failureOf(error) });
  }
});
