/**
 * What the stages of a plan hand to one another: worked out once from the farm, read by ground, supply, store, reach and work.
 *
 * Inside the stages days are whole numbers since 1970-01-01 (`dayNumber` of measures) and weeks are places counted from the
 * horizon's first Monday, so that loops run on numbers; days as text come back only in the plan itself.
 */

import type { Crop, NearestClimate, SoilWeather, ThermalSettings, ThermalSums } from '@leywright/agronomy';
import type { Farm, OwnCrop } from '@leywright/book';
import type { Day } from '@leywright/measures';
import type { PlotGround } from './ground.ts';
import type { ClimateUsed, Horizon } from './plan.ts';

/** Where a figure of a crop comes from: the farm's own, the reference table, or a stated convention of the farm. */
export type FigureOrigin = 'own' | 'reference' | 'convention';

/** One figure and where it stands. `null` as a whole = not known. */
export interface Known {
  readonly value: number;
  readonly origin: FigureOrigin;
  /** File and column, or table, row and column. */
  readonly where: string;
  /** Source ids of the reference table, joined by `;`; null for own figures. */
  readonly source: string | null;
  readonly howKnown: 'verified' | 'memory' | 'common practice' | 'derived' | 'own' | null;
}

/** A crop as this farm grows it: its own figures laid over the reference crop. */
export interface PlannedCrop {
  readonly id: string;
  readonly name: string;
  readonly family: string | null;
  readonly unit: 'kg' | 'head' | 'bunch';
  /** The row of the reference table it rests on; null = a crop only this farm knows. */
  readonly reference: Crop | null;
  readonly own: OwnCrop | null;
  /** Mass of one sale unit, kg. */
  readonly unitKg: Known | null;
  /** Marketable: after grading, before store and packing. Low and high only from the reference. */
  readonly yieldMarketableTHa: Known | null;
  readonly yieldLowTHa: Known | null;
  readonly yieldHighTHa: Known | null;
  /** As lifted, before grading. */
  readonly yieldGrossTHa: Known | null;
  /** As it leaves in a box, after grading, store and packing. */
  readonly yieldPackedTHa: Known | null;
  readonly gradingLossShare: Known | null;
  readonly packingLossShare: Known | null;
  readonly storeLossTotalShare: Known | null;
  readonly bedCentresM: Known | null;
  readonly rowsPerBed: Known | null;
  readonly plantsPerRowM: Known | null;
  readonly germinationShare: Known | null;
  readonly fieldFactorShare: Known | null;
  readonly thousandSeedG: Known | null;
  readonly seedMarginShare: Known | null;
  readonly packSeeds: Known | null;
  readonly hoursPerHa: Known | null;
}

/** Crops by id, own ones included. Null = neither the farm nor the table knows it. */
export interface CropBook {
  readonly cropOf: (id: string) => PlannedCrop | null;
  /** Reference ids of the crop and of what it is based on, nearest first: `['my-red-onion', 'onion']`. */
  readonly idsOf: (id: string) => readonly string[];
}

/**
 * Weather by day over the horizon (and some years about it): recorded where the farm has it, else the climate normal of the day.
 * `firstDay` is the day number of place 0; outside its days the nearest same day of the year is meant.
 */
export interface ClimateDays {
  readonly firstDay: number;
  /** South is negative. */
  readonly latDeg: number;
  readonly meanC: Float64Array;
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
  /** 1 where the day was recorded on the farm. */
  readonly recorded: Uint8Array;
  readonly dayLengthH: Float64Array;
  /** The same days made ready for the ground's daily account, once asked for. */
  readonly ofSoil: () => SoilWeather;
  /** How far the station's climate is to be trusted here. */
  readonly doubt: NearestClimate['doubt'];
  readonly used: ClimateUsed;
  /** Running sums for these settings, kept once made. */
  readonly sums: (settings: ThermalSettings) => ThermalSums;
  /** Day-degrees above a base from `fromDay` up to, not including, `toDay`. Sums are kept by base, so a question is one subtraction. */
  readonly degreeDays: (baseC: number, fromDay: number, toDay: number) => number;
  /** First day number on which the sum from `fromDay` reaches `sumCd`, or null when the days run out. */
  readonly dayOfSum: (baseC: number, fromDay: number, sumCd: number) => number | null;
}

export interface GroundInput {
  readonly farm: Farm;
  readonly today: Day;
  readonly horizon: Horizon;
  readonly climate: ClimateDays;
  readonly crops: CropBook;
}

export interface SupplyInput {
  readonly farm: Farm;
  readonly ground: readonly PlotGround[];
  readonly today: Day;
  /** Year in focus. */
  readonly year: number;
  readonly horizon: Horizon;
  readonly climate: ClimateDays;
  readonly crops: CropBook;
}
