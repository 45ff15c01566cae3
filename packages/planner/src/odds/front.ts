/** The odds, gathered under one word for who is outside. */

export { oddsOfSeason, usualOdds } from './count-odds.ts';
export { farmOdds, runOfFarm } from './odds-of-farm.ts';
export { seasonOfRun } from './season-of-run.ts';
