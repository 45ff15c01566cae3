/** Delivery rounds, gathered under one word for who is outside: read a problem, plan it, hold the plan against what was asked. */

export { roundsStatuses, solveRounds } from '../rounds-proof/solve-rounds.ts';
export { checkRounds } from './check-rounds.ts';
export { commonDetourFactor, earthRadiusKm, greatCircleKm, legsByGreatCircle, legsFrom } from './distances.ts';
export { hasWindows } from './problem.ts';
export { commonLateKmPerMin, readRoundsProblem } from './read-problem.ts';
export { figuresOf, tripCalls } from './route.ts';
export { commonTries, searchRounds } from './search.ts';
