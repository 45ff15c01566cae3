/** Farms for tests, benches and trying the program: builders, generators, faults, the sample farm, and the judge of scenarios. */
export {
  type AboutPieces,
  aboutWith,
  cropId,
  day,
  type FarmPieces,
  farmWith,
  field,
  monthDay,
  type PlotPieces,
  part,
  plot,
  plotId,
  span,
  week,
} from './build/farm.ts';
export { boxPromise, boxSize, ownCrop, person, price, slot, storePlace, yearNeed } from './build/promise.ts';
export { observation, type RecordPieces, record, recordId } from './build/record.ts';
export { course, courseStand, cover, ownRest, rotation, type StandPieces, stand } from './build/stand.ts';
export { sampleBook } from './demo/records.ts';
export { sampleFarm, sampleToday } from './demo/sample-farm.ts';
export { cleanFarm, cleanToday, cleanWish } from './fault/clean-farm.ts';
export { faultCodes, plantFault } from './fault/plant-fault.ts';
export type { Planted } from './fault/planted.ts';
export { type ExpectedFigure, inWords, judge, type Verdict } from './golden/expectation.ts';
export { type Found, figureAt } from './golden/figure-at.ts';
export { anyDay, anyEdit, anyFarm, anySpan, anyStand, type Edit, edited } from './make/arbitraries.ts';
export { type Chance, chanceFrom } from './make/chance.ts';
export { type FarmSize, randomFarm } from './make/random-farm.ts';
