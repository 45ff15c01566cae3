/**
 * Boron, manganese and molybdenum: which crops on which ground may run short. A warning, never a dose.
 *
 * Source  AHDB RB209 (recalled: hot-water boron under 0.8 mg/l is likely short); crops, soils and pH: common practice of vegetable growing.
 * Checks  test/minerals.test.ts (beet on limed sand is warned of; a good analysis silences it; no dose is ever given)
 * Holds   with a fresh analysis above the limit boron is never warned of.
 * Leaves out  amounts: the gap between enough and too much is small, and a dressing needs an analysis and the certifier's written consent.
 */

export const smallNutrientRisks = ['boron', 'manganese', 'molybdenum', 'magnesium'] as const;
export type SmallNutrientRisk = (typeof smallNutrientRisks)[number];

/** What is known of the ground and the crop on it. Null is not measured. */
export interface SmallNutrientGround {
  readonly cropId: string;
  readonly ph: number | null;
  /** Sands, loamy sands, shallow soil over chalk or gravel. */
  readonly lightOrShallow: boolean;
  readonly peaty: boolean;
  readonly boronMgL: number | null;
  /** As the index has it: '0', '1', '2' … */
  readonly magnesiumIndex: string | null;
}

const sensitive: Readonly<Record<SmallNutrientRisk, RegExp>> = {
  boron: /^(beetroot|chard|swede|turnip|celeriac|celery|cauliflower|kale|lucerne)/,
  manganese: /^(pea|beetroot|chard|onion|spinach|perpetual-spinach)/,
  molybdenum: /^cauliflower/,
  magnesium:
    /^(potato|beetroot|chard|celeriac|cabbage|brussels|broccoli|calabrese|cauliflower|kale|kohlrabi|swede|turnip)/,
};

/** Which shortages to look out for; all at once, in the order of the list. */
export function smallNutrientRisksOf(ground: SmallNutrientGround): readonly SmallNutrientRisk[] {
  const { ph } = ground;
  const short: Readonly<Record<SmallNutrientRisk, boolean>> = {
    boron:
      ground.boronMgL === null ? ground.lightOrShallow && ph !== null && ph > 6.5 : ground.boronMgL < boronShortMgL,
    manganese: (ground.peaty || ground.lightOrShallow) && ph !== null && ph > 6.5,
    molybdenum: ph !== null && ph < 6,
    magnesium: ground.magnesiumIndex === '0' || ground.magnesiumIndex === '1',
  };
  return smallNutrientRisks.filter((risk) => short[risk] && sensitive[risk].test(ground.cropId));
}

/** Boron drawn by hot water under which a shortage is likely. */
export const boronShortMgL = 0.8;
