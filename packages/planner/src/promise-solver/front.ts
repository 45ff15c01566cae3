/** Planning the promise, gathered under one word for who is outside: read a problem, solve it, hold the plan against its limits. */
export { promiseModel } from '../promise-model/promise-model.ts';
export { readPromiseProblem } from '../promise-problem/read-problem.ts';
export { promiseBreaches } from '../promise-proof/check-promise.ts';
export { promiseCost } from '../promise-proof/promise-cost.ts';
export { solvePromise } from './solve-promise.ts';
