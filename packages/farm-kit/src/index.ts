/** Farms for tests, benches and trying the program: builders, generators, faults, the sample farm, and the judge of scenarios. */
export { aboutWith, day, farmWith, field, monthDay, part, plot, span } from './build/farm.ts';
export { boxPromise, boxSize, ownCrop, person, price, slot, slotOnce, storePlace, yearNeed } from './build/promise.ts';
export { observation, record } from './build/record.ts';
export { course, courseStand, cover, ownRest, rotation, stand } from './build/stand.ts';
export { sampleBook } from './demo/records.ts';
export { sampleFarm, sampleToday } from './demo/sample-farm.ts';
export { cleanFarm, cleanWish } from './fault/clean-farm.ts';
export { faultCodes, plantFault } from './fault/plant-fault.ts';
export type { Planted } from './fault/planted.ts';
export { type ExpectedFigure, judge, type Verdict } from './golden/expectation.ts';
export { anyEdit, anyFarm, anyStand, type Edit, edited } from './make/arbitraries.ts';
export { randomFarm } from './make/random-farm.ts';
export { rotatingFarm } from './make/rotating-farm.ts';
export { smallRotations } from './make/small-rotations.ts';
