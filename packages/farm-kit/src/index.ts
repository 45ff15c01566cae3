/** Farms for tests, benches and trying the program: builders, generators, faults, the sample farm, and the judge of scenarios. */
export { aboutWith, type AboutPieces, cropId, day, farmWith, type FarmPieces, field, monthDay, part, plot, plotId, type PlotPieces, span, week } from './build/farm.ts';
export { boxPromise, boxSize, ownCrop, person, price, slot, storePlace, yearNeed } from './build/promise.ts';
export { course, courseStand, cover, ownRest, rotation, stand, type StandPieces } from './build/stand.ts';
export { sampleFarm, sampleToday } from './demo/sample-farm.ts';
export { type ExpectedFigure, inWords, judge, type Verdict } from './golden/expectation.ts';
export { type Found, figureAt } from './golden/figure-at.ts';
