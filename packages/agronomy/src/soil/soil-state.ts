/**
 * The state of a part from one day to the next, in one stretch of numbers allocated once: layers, scalars, residues, living stands, the step's sums.
 *
 * Source  layout only; the models are named where they are used.
 * Checks  test/run-soil.test.ts (a run taken up again from a kept state is bit for bit the run from the start)
 * Holds   all that a day leaves to the next lies in `values`: copying it keeps the run.
 * Leaves out  everything that does not change.
 */
import { activeHumusShare, humusRatePerDay } from '../nitrogen/release-factors.ts';
import { totalEvaporableMm } from '../water/surface-evaporation.ts';
import { type SoilTransfer, type StandOutcome, soilColumns } from './soil-columns.ts';
import type { SoilPart, SoilWeather } from './soil-part.ts';
import { saturationShare, totalNitrogenKgHa } from './soil-profile.ts';
import type { StandOfRun } from './stand-of-run.ts';

/** Places of the scalars. */
export const scalar = {
  soilC: 0,
  surfaceDepletionMm: 1,
  humusN: 2,
  humusC: 3,
  ammoniaN: 4,
  batches: 5,
  stands: 6,
  depletionMm: 7,
  readilyMm: 8,
  totalMm: 9,
  rootedLayers: 10,
  coverShare: 11,
  daysInStep: 12,
  /** What poor residues would lock up at full speed, in the ground and on it; carbon lying on the ground. Kept by residue-day.ts. */
  lockInGround: 13,
  lockOnGround: 14,
  mulchC: 15,
  size: 16,
} as const;

/** Places of what one step of a day hands to the next. Numbers handed over here cost nothing; as arguments they would be boxed. */
export const today = {
  etoMm: 0,
  airC: 1,
  tMinC: 2,
  dayShare: 3,
  kcb: 4,
  openShare: 5,
  /** Speeds of decay in the ground and on it, and nitrogen freed by humus. */
  inGround: 6,
  onGround: 7,
  fromHumus: 8,
  freedN: 9,
  wantedN: 10,
  takenN: 11,
  criticalN: 12,
  size: 13,
} as const;

/** Places within a batch of residue: its carbon, and what its C:N fixes, worked out once. */
export const batch = {
  residueC: 0,
  microbeC: 1,
  decay: 2,
  /** Nitrogen freed for each kg of carbon eaten (negative: locked up), and for each kg of microbes dying. */
  eatenGain: 3,
  dyingGain: 4,
  /** Nitrogen in each kg of residue carbon and of microbe carbon. */
  residueN: 5,
  microbeN: 6,
  humified: 7,
  surface: 8,
  size: 9,
} as const;
export const mostBatches = 16;

/** Places within a living stand. */
export const slot = {
  stand: 0,
  canopyCd: 1,
  canopyFromCd: 2,
  growthCd: 3,
  days: 4,
  massT: 5,
  shootN: 6,
  rootMassT: 7,
  rootN: 8,
  nourished: 9,
  airFactor: 10,
  unstressedT: 11,
  waterWanted: 12,
  waterGot: 13,
  nWanted: 14,
  nGot: 15,
  fixedN: 16,
  cover: 17,
  kcb: 18,
  ks: 19,
  grownT: 20,
  size: 21,
} as const;
/** A crop, what is undersown, what is sown before either is off, and as many again by mistake. */
export const mostStands = 6;

export interface RunState {
  readonly part: SoilPart;
  readonly weather: SoilWeather;
  readonly stands: readonly StandOfRun[];
  readonly layerCount: number;
  /** All that changes. */
  readonly values: Float64Array;
  /** Views of `values`. */
  readonly waterLayersMm: Float64Array;
  readonly nitrateLayersKgHa: Float64Array;
  readonly scalars: Float64Array;
  readonly batches: Float64Array;
  readonly slots: Float64Array;
  readonly sums: Float64Array;
  /** What tipping needs, and what it fills. */
  readonly tipping: TippingLayers;
  readonly wiltingLayersMm: Float64Array;
  /** Scratch of one day. */
  readonly pulls: Float64Array;
  readonly handedValues: Float64Array;
  readonly constants: RunConstants;
  readonly outcomes: StandOutcome[];
  readonly transfers: SoilTransfer[];
}

export interface TippingLayers {
  readonly waterMm: Float64Array;
  readonly nitrateKgHa: Float64Array;
  readonly fieldCapacityMm: Float64Array;
  readonly saturationMm: Float64Array;
  readonly belowMm: Float64Array;
  readonly belowNKgHa: Float64Array;
}

export interface RunConstants {
  readonly evaporableMm: number;
  readonly readilyEvaporatedMm: number;
  readonly layerAvailableMm: number;
  readonly layerFieldCapacityMm: number;
  readonly humusPerDay: number;
  readonly depositedKgHaDay: number;
  readonly warmerByC: number;
  readonly drainingFraction: number;
  /** mg N/kg of nitrate for each kg/ha in a layer. */
  readonly mgKgPerKgHa: number;
  readonly layerPoresMm: number;
}

/** Allocates the state and sets its first day. */
export function newRunState(part: SoilPart, weather: SoilWeather, stands: readonly StandOfRun[]): RunState {
  const layerCount = Math.max(3, Math.round(part.profile.depthCm / 10));
  const lengths = [
    layerCount,
    layerCount,
    scalar.size,
    mostBatches * batch.size,
    mostStands * slot.size,
    soilColumns.length,
  ];
  const values = new Float64Array(lengths.reduce((sum, length) => sum + length, 0));
  let from = 0;
  const views = lengths.map((length) => {
    from += length;
    return values.subarray(from - length, from);
  });
  const [water = values, nitrate = values, scalars = values, batches = values, slots = values, sums = values] = views;
  const constants = constantsOf(part);
  const layers = (value: number) => new Float64Array(layerCount).fill(value);
  const state: RunState = {
    part,
    weather,
    stands,
    layerCount,
    values,
    waterLayersMm: water,
    nitrateLayersKgHa: nitrate,
    scalars,
    batches,
    slots,
    sums,
    tipping: {
      waterMm: water,
      nitrateKgHa: nitrate,
      fieldCapacityMm: layers(constants.layerFieldCapacityMm),
      saturationMm: layers(constants.layerPoresMm),
      belowMm: layers(0),
      belowNKgHa: layers(0),
    },
    wiltingLayersMm: layers(part.profile.wiltingPointShare * 100),
    pulls: layers(0),
    handedValues: new Float64Array(today.size),
    constants,
    outcomes: [],
    transfers: [],
  };
  setFirstDay(state);
  return state;
}

function constantsOf(part: SoilPart): RunConstants {
  const { profile } = part;
  return {
    evaporableMm: totalEvaporableMm(profile.fieldCapacityShare, profile.wiltingPointShare, 0.1),
    readilyEvaporatedMm: profile.readilyEvaporatedMm,
    layerAvailableMm: (profile.fieldCapacityShare - profile.wiltingPointShare) * 100,
    layerFieldCapacityMm: profile.fieldCapacityShare * 100,
    humusPerDay: humusRatePerDay(profile.clayPct, profile.limePct),
    depositedKgHaDay: part.tunnel ? 0 : part.depositionKgHaYear / 365.25,
    warmerByC: part.tunnel ? 3 : 0,
    drainingFraction: profile.drainingFraction,
    mgKgPerKgHa: 1 / profile.bulkDensityKgPerL, // 10 × kg/ha per cm / g/cm³, a layer being 10 cm
    layerPoresMm: saturationShare(profile.bulkDensityKgPerL) * 100,
  };
}

function setFirstDay(state: RunState): void {
  const { part, weather, scalars, waterLayersMm, nitrateLayersKgHa, layerCount } = state;
  const { layerFieldCapacityMm, layerAvailableMm } = state.constants;
  const missing = 1 - Math.min(1, Math.max(0, part.startAvailableShare));
  waterLayersMm.fill(layerFieldCapacityMm - missing * layerAvailableMm);
  // Half as much in each further 50 cm: common practice.
  let weightSum = 0;
  for (let at = 0; at < layerCount; at++) weightSum += 0.5 ** (at / 5);
  for (let at = 0; at < layerCount; at++)
    nitrateLayersKgHa[at] = (part.startMineralNKgHa * 0.5 ** (at / 5)) / weightSum;
  scalars[scalar.soilC] = firstSoilC(weather) + state.constants.warmerByC;
  scalars[scalar.surfaceDepletionMm] = missing * layerAvailableMm;
  scalars[scalar.humusN] = activeHumusShare * totalNitrogenKgHa(part.profile);
}

/** The mean of the first thirty days stands for the thirty before. */
function firstSoilC(weather: SoilWeather): number {
  const days = Math.min(30, weather.dayCount);
  let sum = 0;
  for (let at = 0; at < days; at++) sum += ((weather.tMaxC[at] ?? 0) + (weather.tMinC[at] ?? 0)) / 2;
  return days === 0 ? weather.yearMeanC : sum / days;
}

/** A number of a list; nought beyond its ends. */
export function get(values: Float64Array, index: number): number {
  return values[index] ?? 0;
}

/** Adds to a number of a list. */
export function add(values: Float64Array, index: number, value: number): void {
  values[index] = (values[index] ?? 0) + value;
}
