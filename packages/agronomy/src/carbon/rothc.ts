/**
 * The carbon of the topsoil, month by month, in four pools that turn over and one that does not: RothC-26.3.
 *
 * Source  Coleman, Prout & Milne 2024, RothC, a model for the turnover of carbon in soil, section 2.2, and the rates of rothc-rates.ts.
 * Checks  test/checks/science.csv rc-06 (the authors' hand example, Hoosfield, January 1852), rc-09 (every month and pool of the authors' own run),
 *         rc-11; test/carbon.test.ts (carbon in = change + breathed out, for random soils and weathers)
 * Holds   carbon is conserved every month; pools are never negative; the run is the same wherever it is cut in two.
 * Leaves out  nitrogen, subsoil, erosion and burning. Its carbon and the residue carbon of the nitrogen account are two accounts, never added.
 */
import {
  breathedRatio,
  type CarbonMonthWeather,
  type CarbonSoil,
  coverFactor,
  drynessFactor,
  greatestDeficitMm,
  nextDeficitMm,
  warmthFactor,
} from './rothc-rates.ts';

/** Carbon of the topsoil that turns over (t C/ha): easy and resistant plant material, microbes, humus. */
export interface CarbonPools {
  readonly easyPlantTHa: number;
  readonly resistantPlantTHa: number;
  readonly microbesTHa: number;
  readonly humusTHa: number;
}

/** Carbon that comes in at a month's end (t C/ha). */
export interface CarbonInput {
  readonly plantTHa: number;
  /** Easy over resistant in the plant material: 1.44 arable and sown ley, 0.67 rough grass, 0.25 woodland. */
  readonly easyToResistantRatio: number;
  /** Rotted material, split 0.49 / 0.49 / 0.02: an assumption for plant compost, for which the model has no pool. */
  readonly rottedTHa: number;
}

export interface CarbonMonth extends CarbonMonthWeather, CarbonInput {}

/** What goes from month to month. */
export interface CarbonState extends CarbonPools {
  /** Moisture deficit of the topsoil (mm, 0 or negative). */
  readonly deficitMm: number;
  /** Breathed out since the start of the run (t C/ha). */
  readonly breathedTHa: number;
}

export const easyToResistant = { arable: 1.44, roughGrass: 0.67, woodland: 0.25 } as const;

/** Carbon in dry plant matter, the same in the nitrogen account; 0.45 is as common. */
export const carbonOfDryMatterShare = 0.42;

export const noCarbon: CarbonState = {
  easyPlantTHa: 0,
  resistantPlantTHa: 0,
  microbesTHa: 0,
  humusTHa: 0,
  deficitMm: 0,
  breathedTHa: 0,
};

/** Shares that go a year at rate 1 (per year). */
const yearlyRates = { easy: 10, resistant: 0.3, microbes: 0.66, humus: 0.02 } as const;

/** Carbon of the four pools that turn over; the inert pool comes on top. */
export function activeCarbonTHa(pools: CarbonPools): number {
  return pools.easyPlantTHa + pools.resistantPlantTHa + pools.microbesTHa + pools.humusTHa;
}

/** One month at a combined rate (warmth × dryness × cover): the pools turn over, then what comes in is added. `breathedTHa` is this month's. */
export function turnOver(
  pools: CarbonPools,
  at: { readonly rateFactor: number; readonly clayPct: number },
  input: CarbonInput,
): CarbonPools & { readonly breathedTHa: number } {
  const left = (share: number) => Math.exp((-at.rateFactor * share) / 12);
  const easy = pools.easyPlantTHa * left(yearlyRates.easy);
  const resistant = pools.resistantPlantTHa * left(yearlyRates.resistant);
  const microbes = pools.microbesTHa * left(yearlyRates.microbes);
  const humus = pools.humusTHa * left(yearlyRates.humus);
  const gone =
    pools.easyPlantTHa -
    easy +
    pools.resistantPlantTHa -
    resistant +
    pools.microbesTHa -
    microbes +
    pools.humusTHa -
    humus;
  const breathed = breathedRatio(at.clayPct);
  const easyShare = input.easyToResistantRatio / (1 + input.easyToResistantRatio);
  return {
    easyPlantTHa: easy + easyShare * input.plantTHa + 0.49 * input.rottedTHa,
    resistantPlantTHa: resistant + (1 - easyShare) * input.plantTHa + 0.49 * input.rottedTHa,
    microbesTHa: microbes + (0.46 * gone) / (breathed + 1),
    humusTHa: humus + (0.54 * gone) / (breathed + 1) + 0.02 * input.rottedTHa,
    breathedTHa: (gone * breathed) / (breathed + 1),
  };
}

/** The state at a month's end from that at the end of the month before. */
export function stepCarbonMonth(state: CarbonState, month: CarbonMonth, soil: CarbonSoil): CarbonState {
  const greatestMm = greatestDeficitMm(soil);
  const deficitMm = nextDeficitMm(state.deficitMm, month, greatestMm);
  const rateFactor = warmthFactor(month.tMeanC) * drynessFactor(deficitMm, greatestMm) * coverFactor(month.covered);
  const next = turnOver(state, { rateFactor, clayPct: soil.clayPct }, month);
  return { ...next, deficitMm, breathedTHa: state.breathedTHa + next.breathedTHa };
}

/** The state after each month of a run, in order. */
export function runCarbon(
  start: CarbonState,
  months: readonly CarbonMonth[],
  soil: CarbonSoil,
): readonly CarbonState[] {
  let state = start;
  return months.map((month) => {
    state = stepCarbonMonth(state, month, soil);
    return state;
  });
}

export interface CarbonSpinUp {
  readonly state: CarbonState;
  /** Months it took; a whole number of passes. */
  readonly monthCount: number;
  /** False when it was stopped at the greatest number of passes before it had settled. */
  readonly settled: boolean;
}

/**
 * Repeats a year until the active carbon changes by less than 1e-6 t/ha over a whole pass, from nothing. The deficit goes on from pass to pass
 * and into the run. The sum decides, so humus is not fully at rest: the same rule as the authors', so that runs agree.
 */
export function spinUpCarbon(year: readonly CarbonMonth[], soil: CarbonSoil, greatestPasses = 20_000): CarbonSpinUp {
  let state = noCarbon;
  let before = 0;
  for (let pass = 1; pass <= greatestPasses; pass++) {
    for (const month of year) state = stepCarbonMonth(state, month, soil);
    const now = activeCarbonTHa(state);
    const settled = Math.abs(now - before) < 1e-6;
    if (settled || pass === greatestPasses)
      return { state: { ...state, breathedTHa: 0 }, monthCount: pass * year.length, settled };
    before = now;
  }
  return { state: noCarbon, monthCount: 0, settled: false };
}
