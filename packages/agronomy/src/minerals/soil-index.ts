/**
 * The index of a soil sample: how well supplied the ground is, by the method it was measured with.
 *
 * Source  phosphorus: UK Nutrient Action Programme Regulations (NI) 2019/81 schedule 5 (0 to 4 read; 5 to 9 recalled); potassium and magnesium: AHDB RB209 (recalled);
 *         targets: vegetables P 3 and K 2+ (recalled), arable P 2 and K 2- (read); build-up: Tried & Tested, Building up soil indices, quoting RB209 (read).
 * Checks  test/checks/science.csv pk-03, pk-04, pk-05, li-03; test/minerals.test.ts (rising; no index for a method that has none)
 * Holds   more in the sample is never a lower index.
 * Leaves out  other methods: an index belongs to its method, and a figure by another method has none here. Per litre, not per kilogram: that needs the density.
 */

/** Ways laboratories draw nutrients from soil. */
export const soilMethods = [
  'olsen',
  'ammonium-nitrate',
  'mehlich-3',
  'ammonium-lactate',
  'calcium-acetate-lactate',
  'modified-morgan',
  'resin',
  'water',
] as const;
export type SoilMethod = (typeof soilMethods)[number];

export const soilNutrients = ['phosphorus', 'potassium', 'magnesium'] as const;
export type SoilNutrient = (typeof soilNutrients)[number];

/** Greatest figure (mg/l) of each index in turn, and the index above the last. */
type Ladder = { readonly upToMgL: readonly (readonly [index: string, mostMgL: number])[]; readonly above: string };

const ladders: Readonly<Record<SoilNutrient, { readonly method: SoilMethod } & Ladder>> = {
  phosphorus: {
    method: 'olsen',
    upToMgL: [
      ['0', 9],
      ['1', 15],
      ['2-', 20],
      ['2+', 25],
      ['3', 45],
      ['4', 70],
      ['5', 100],
      ['6', 140],
      ['7', 200],
      ['8', 280],
    ],
    above: '9',
  },
  potassium: {
    method: 'ammonium-nitrate',
    upToMgL: [
      ['0', 60],
      ['1', 120],
      ['2-', 180],
      ['2+', 240],
      ['3', 400],
      ['4', 600],
      ['5', 900],
      ['6', 1500],
      ['7', 2400],
      ['8', 3600],
    ],
    above: '9',
  },
  magnesium: {
    method: 'ammonium-nitrate',
    upToMgL: [
      ['0', 25],
      ['1', 50],
      ['2', 100],
      ['3', 175],
      ['4', 250],
      ['5', 350],
      ['6', 600],
      ['7', 1000],
      ['8', 1500],
    ],
    above: '9',
  },
};

/** An index, or why there is none. */
export type SoilIndex =
  | { readonly kind: 'index'; readonly index: string }
  | { readonly kind: 'no-index'; readonly why: 'no-index-for-this-method' };

/** The index of a figure (mg/l, taken to the whole milligram as laboratories print it) by its method. */
export function soilIndex(nutrient: SoilNutrient, method: SoilMethod, amountMgL: number): SoilIndex {
  const ladder = ladders[nutrient];
  if (ladder.method !== method) return { kind: 'no-index', why: 'no-index-for-this-method' };
  const wholeMgL = Math.round(amountMgL);
  const rung = ladder.upToMgL.find(([, mostMgL]) => wholeMgL <= mostMgL);
  return { kind: 'index', index: rung?.[0] ?? ladder.above };
}

/** The figure (mg/l) at which an index begins; null for an index the nutrient has not. */
export function indexBeginsMgL(nutrient: SoilNutrient, index: string): number | null {
  const { upToMgL, above } = ladders[nutrient];
  const at = upToMgL.findIndex(([name]) => name === index);
  if (at < 0 && index !== above) return null;
  const below = upToMgL[(at < 0 ? upToMgL.length : at) - 1];
  return below === undefined ? 0 : below[1] + 1;
}

/** The index to hold in a rotation of vegetables, and one of arable crops. */
export const targetIndex = {
  vegetables: { phosphorus: '3', potassium: '2+' },
  arable: { phosphorus: '2-', potassium: '2-' },
} as const;

/** What to add a year over off-take while the index is under 2 (kg/ha of P2O5 or of K2O). */
export function buildUpKgHa(index: number): number {
  return index < 1 ? 60 : index < 2 ? 30 : 0;
}
