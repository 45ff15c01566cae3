/** Figures and where they stand: which yield a farm goes by, and what is kept at each step. */
import { areaNeeded, population } from '@leywright/agronomy';
import type { Known, PlannedCrop } from '../plan/inputs.ts';

/** Whether a figure is the farm's own. */
export function ownFirst(known: Known | null): boolean {
  return known !== null && known.origin === 'own';
}

/** The yield a farm goes by, and what it measures: as lifted, as it goes to store or shed, or as it leaves in a box. */
export interface YieldSaid {
  readonly measure: 'gross' | 'marketable' | 'packed';
  readonly known: Known;
  readonly kgM2: number;
  readonly basis: 'own' | 'reference';
}

const kgM2InTHa = 0.1;

/** The farm's own yield in whichever way it said it, else the reference's; null when neither is known. */
export function yieldSaid(crop: PlannedCrop): YieldSaid | null {
  const ways = [
    ['packed', crop.yieldPackedTHa],
    ['gross', crop.yieldGrossTHa],
    ['marketable', crop.yieldMarketableTHa],
  ] as const;
  const chosen = ways.find(([, known]) => ownFirst(known)) ?? ways.toReversed().find(([, known]) => known !== null);
  if (chosen === undefined || chosen[1] === null) return null;
  const [measure, known] = chosen;
  return { measure, known, kgM2: known.value * kgM2InTHa, basis: known.origin === 'own' ? 'own' : 'reference' };
}

export function keptShare(loss: Known | null): number {
  return loss === null ? 1 : 1 - loss.value;
}

/**
 * Marketable kilos from a square metre: gross yields less what is graded out; packed yields as they are, with nothing to lose after them.
 * Crops sold by count go by stations times units cut per station, and the mass follows: heavier heads bring more kilos, not more heads.
 */
export function marketableKgM2(crop: PlannedCrop): number | null {
  const said = yieldSaid(crop);
  if (said === null) return null;
  if (said.measure === 'gross') return said.kgM2 * keptShare(crop.gradingLossShare);
  return said.basis === 'own' ? said.kgM2 : (countedKgM2(crop) ?? said.kgM2);
}

/** Stations on a hectare: by the farm's own spacing when it gives all of it, else the table's. */
export function stationsPerHa(crop: PlannedCrop): number | null {
  const { bedCentresM, rowsPerBed, plantsPerRowM, reference } = crop;
  const perStation = reference?.plantsPerStation ?? 1;
  if (bedCentresM === null || rowsPerBed === null || plantsPerRowM === null) return reference?.stationsPerHaTyp ?? null;
  return (population.rowMetres(10_000, rowsPerBed.value, bedCentresM.value) * plantsPerRowM.value) / perStation;
}

/** Heads or bunches a station gives, for a crop sold by count as the table sells it; null for crops sold by weight. */
export function unitsPerStation(crop: PlannedCrop): number | null {
  const { reference, unit } = crop;
  return reference === null || unit === 'kg' || reference.saleUnit !== unit ? null : reference.unitsPerStationTyp;
}

function countedKgM2(crop: PlannedCrop): number | null {
  const units = unitsPerStation(crop);
  const stations = stationsPerHa(crop);
  if (units === null || stations === null || crop.unitKg === null) return null;
  return areaNeeded.unitsFromArea(1, stations, units) * crop.unitKg.value;
}

/** What of a marketable kilo leaves in a box. */
export function packingKeep(crop: PlannedCrop): number {
  return yieldSaid(crop)?.measure === 'packed' ? 1 : keptShare(crop.packingLossShare);
}
