/** What a plot's words and its samples say of its soil, in the classes the models know. */
import type { LimeSoil, SoilMethod, SoilNutrient } from '@leywright/agronomy';
import type { Plot, SoilSample } from '@leywright/book';

/** Texture classes in words, the finer word first; clay (%) is the middle of the class: common practice. */
const textures: readonly { readonly word: RegExp; readonly lime: LimeSoil; readonly clayPct: number }[] = [
  { word: /peat/i, lime: 'peat', clayPct: 10 },
  { word: /sandy clay loam/i, lime: 'sandy-clay-loam', clayPct: 25 },
  { word: /silty clay loam/i, lime: 'sandy-clay-loam', clayPct: 27 },
  { word: /clay loam/i, lime: 'clay-loam', clayPct: 27 },
  { word: /sandy (silt )?loam/i, lime: 'sandy-loam', clayPct: 13 },
  { word: /silt loam/i, lime: 'sandy-loam', clayPct: 13 },
  { word: /loamy sand/i, lime: 'sand', clayPct: 8 },
  { word: /clay/i, lime: 'clay-loam', clayPct: 45 },
  { word: /sand/i, lime: 'sand', clayPct: 5 },
  { word: /loam/i, lime: 'sandy-clay-loam', clayPct: 20 },
];

export interface GroundClass {
  readonly lime: LimeSoil;
  readonly clayPct: number;
  readonly isLight: boolean;
  readonly isPeaty: boolean;
}

/** The class of a plot's soil by its words, and by its organic matter where that decides; null where nothing is known. */
export function groundClass(plot: Pick<Plot, 'soil'>, organicMatterPct: number | null): GroundClass | null {
  const found = plot.soil === null ? undefined : textures.find(({ word }) => word.test(plot.soil ?? ''));
  if (found === undefined) return null;
  const organic =
    organicMatterPct === null ? null : organicMatterPct > 20 ? 'peat' : organicMatterPct >= 10 ? 'organic' : null;
  const lime = organic ?? found.lime;
  return {
    lime,
    clayPct: found.clayPct,
    isLight: found.lime === 'sand' || found.lime === 'sandy-loam',
    isPeaty: lime === 'peat',
  };
}

/** Words a laboratory uses for its methods, by nutrient: "Olsen P, ammonium nitrate K and Mg". */
const methodWords: readonly (readonly [RegExp, SoilMethod, readonly SoilNutrient[]])[] = [
  [/olsen/i, 'olsen', ['phosphorus']],
  [/ammonium[ -]nitrate/i, 'ammonium-nitrate', ['potassium', 'magnesium']],
  [/mehlich/i, 'mehlich-3', ['phosphorus', 'potassium', 'magnesium']],
  [/calcium[ -]acetate|\bcal\b/i, 'calcium-acetate-lactate', ['phosphorus', 'potassium']],
  [/ammonium[ -]lactate|\bp-al\b/i, 'ammonium-lactate', ['phosphorus', 'potassium', 'magnesium']],
  [/morgan/i, 'modified-morgan', ['phosphorus', 'potassium', 'magnesium']],
  [/resin/i, 'resin', ['phosphorus']],
  [/water/i, 'water', ['phosphorus']],
];

/** The method a nutrient of a sample was measured by; null where its words name none we know. */
export function methodOf(sample: Pick<SoilSample, 'method'>, nutrient: SoilNutrient): SoilMethod | null {
  return methodWords.find(([word, , for_]) => word.test(sample.method) && for_.includes(nutrient))?.[1] ?? null;
}
