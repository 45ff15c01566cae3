/** Weather drawn by chance: fit a generator, prepare it with a seed, draw runs of a span of days into arrays of your own. */
export { type DrawnWeather, type DrawWeather, emptyWeather, prepareGenerator } from './draw.ts';
export { donorMonths } from './fit/donor.ts';
export { generatorFromNormals, generatorFromStation, normalsOf } from './fit/from-normals.ts';
export { generatorFor } from './fit/from-record.ts';
export { generatorOrigins, impliedMonth } from './generator.ts';
export { fitRainLaw } from './rain-amount.ts';
export { chainOfWetShare, wetFromMm, wetShareOfChain } from './rain-chain.ts';
export { dayAfterSpread, nextResiduals, residualMatrices, sameDaySpread } from './residuals.ts';
export { chanceBlock } from './seeded-stream.ts';
export { type DrawnFigure, drawnFigures, drawnFiguresHold } from './year-figures.ts';
