/** Phosphate, potash, magnesium, lime and small nutrients under one word: `minerals.lime.limeNeedTHa(…)`. */
export * as lime from './lime.ts';
export * as offtake from './offtake.ts';
export * as oxides from './oxides.ts';
export * as smallNutrients from './small-nutrients.ts';
export * as soilIndex from './soil-index.ts';
export * as soilTrend from './soil-trend.ts';
