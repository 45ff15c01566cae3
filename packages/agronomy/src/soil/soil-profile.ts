/**
 * The ground under a part: one fixed depth in layers of 10 cm, whatever grows there.
 *
 * Source  FAO-56 (Allen et al. 1998) Table 19 for water at field capacity and wilting point by texture (middles of its ranges), REW of the same table
 *         (recalled); pore space from bulk density with 2.66 g/cm³ for the grains; clay by texture: middles of the texture triangle.
 * Checks  test/run-soil.test.ts (FAO-56 example 36 from the ends of the table's ranges; every texture holds wilting point < field capacity < pores)
 * Holds   as many layers as the depth has tens of centimetres.
 * Leaves out  layers that differ: one texture through the depth; a stony or layered ground wants its own figures.
 */
import { cellsOf, tableText } from '../reference/table-text.ts';

export const layerDepthCm = 10;
/** Where the account ends unless rock or a water table is recorded. */
export const usualProfileDepthCm = 250;

/** Water shares are m³ in m³ of soil. */
export interface SoilProfile {
  readonly depthCm: number;
  readonly fieldCapacityShare: number;
  readonly wiltingPointShare: number;
  readonly bulkDensityKgPerL: number;
  readonly readilyEvaporatedMm: number;
  readonly clayPct: number;
  readonly limePct: number;
  /** Nitrogen in the top 30 cm, % of dry soil. */
  readonly totalNPct: number;
  /** Share of what stands above field capacity that drains in a day: 1 on freely drained ground. */
  readonly drainingFraction: number;
  /** Curve number where rain runs off; null where none does. */
  readonly curveNumber: number | null;
}

export const textures = [
  'sand',
  'loamy sand',
  'sandy loam',
  'loam',
  'silt loam',
  'silt',
  'silt clay loam',
  'silty clay',
  'clay',
] as const;
export type Texture = (typeof textures)[number];

const clayPctOf: Readonly<Record<Texture, number>> = {
  sand: 3,
  'loamy sand': 6,
  'sandy loam': 12,
  loam: 19,
  'silt loam': 16,
  silt: 8,
  'silt clay loam': 33,
  'silty clay': 46,
  clay: 55,
};

/** A usual profile of a texture: 0.15 % nitrogen, 1.4 g/cm³, freely drained, flat. Common practice where the table says nothing. */
export function profileOfTexture(texture: Texture): SoilProfile {
  const row = cellsOf(tableText('science/fao56-t19-soil')).find((cell) => cell('texture') === texture);
  if (row === undefined) throw new Error(`fao56-t19-soil.csv has no row "${texture}".`);
  const middle = (low: string, high: string) => (Number(row(low)) + Number(row(high))) / 2;
  const [rewLow = 0, rewHigh = 0] = row('REW_mm').split('-').map(Number);
  return {
    depthCm: usualProfileDepthCm,
    fieldCapacityShare: middle('FC_min', 'FC_max'),
    wiltingPointShare: middle('WP_min', 'WP_max'),
    bulkDensityKgPerL: 1.4,
    readilyEvaporatedMm: (rewLow + rewHigh) / 2,
    clayPct: clayPctOf[texture],
    limePct: 0,
    totalNPct: 0.15,
    drainingFraction: 1,
    curveNumber: null,
  };
}

/** Water when all pores are full (share of the soil's volume). */
export function saturationShare(bulkDensityKgPerL: number): number {
  return 1 - bulkDensityKgPerL / 2.66;
}

/** Nitrogen in the humus of the top 30 cm (kg/ha). */
export function totalNitrogenKgHa(profile: SoilProfile): number {
  return profile.totalNPct * profile.bulkDensityKgPerL * 30 * 1000; // % × g/cm³ × cm = t/ha, × 1000 / 100 × 100
}
