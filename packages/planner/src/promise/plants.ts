/** Rows, plants and seed for an area of a crop, by the farm's own spacing and seed figures where it has them. */
import { population, seedOrder, trays } from '@leywright/agronomy';
import type { PlannedCrop } from '../plan/inputs.ts';
import { stationsPerHa } from './known.ts';

export interface Plants {
  readonly rowM: number | null;
  readonly stations: number | null;
  readonly seedsPerM: number | null;
  readonly seeds: number | null;
  readonly seedsWithMargin: number | null;
  readonly seedKg: number | null;
  readonly setKg: number | null;
  readonly packs: number | null;
  readonly trays: number | null;
}

export const noPlants: Plants = {
  rowM: null,
  stations: null,
  seedsPerM: null,
  seeds: null,
  seedsWithMargin: null,
  seedKg: null,
  setKg: null,
  packs: null,
  trays: null,
};

export function plantsFor(crop: PlannedCrop, areaM2: number): Plants {
  const rowM = rowMetres(crop, areaM2);
  const perHa = stationsPerHa(crop);
  const stations = perHa === null ? null : (areaM2 / 10_000) * perHa;
  const base = { ...noPlants, rowM, stations };
  const establishment = crop.reference?.establishment ?? 'drill';
  if (establishment === 'drill') return { ...base, ...drilled(crop, rowM) };
  if (stations === null || crop.reference === null) return base;
  return establishment === 'module' || establishment === 'bare-root'
    ? { ...base, ...raised(crop, stations) }
    : { ...base, ...setOut(crop, stations) };
}

function rowMetres(crop: PlannedCrop, areaM2: number): number | null {
  if (crop.bedCentresM !== null && crop.rowsPerBed !== null)
    return population.rowMetres(areaM2, crop.rowsPerBed.value, crop.bedCentresM.value);
  if (crop.reference === null) return null;
  return areaM2 / ((crop.reference.rowLowCm + crop.reference.rowHighCm) / 2 / 100);
}

/** Plants meant to stand in a metre of row. */
export function plantsPerRowM(crop: PlannedCrop): number | null {
  if (crop.plantsPerRowM !== null) return crop.plantsPerRowM.value;
  if (crop.reference === null) return null;
  return (100 / ((crop.reference.inRowLowCm + crop.reference.inRowHighCm) / 2)) * crop.reference.plantsPerStation;
}

function drilled(crop: PlannedCrop, rowM: number | null): Partial<Plants> {
  const plants = plantsPerRowM(crop);
  const { germinationShare, fieldFactorShare, thousandSeedG } = crop;
  if (rowM === null || plants === null || germinationShare === null || thousandSeedG === null) return {};
  const order = seedOrder.seedForRows({
    rowM,
    plantsPerRowM: plants,
    germinationFraction: germinationShare.value,
    fieldFactor: fieldFactorShare?.value ?? 1,
    ...buying(crop, thousandSeedG.value),
  });
  return {
    seedsPerM: order.seedsPerRowM,
    seeds: order.seeds,
    seedsWithMargin: order.seedsWithMargin,
    seedKg: order.seedKg,
    packs: order.packs,
  };
}

/** Modules and seedbeds: emergence is plants out per seed sown. */
function raised(crop: PlannedCrop, stations: number): Partial<Plants> {
  const table = crop.reference;
  if (table === null || crop.germinationShare === null) return {};
  const share = crop.germinationShare.value * (crop.fieldFactorShare?.value ?? 1);
  const usable = Math.min(1, (table.seedsPerCell * share) / table.plantsPerStation);
  const cells = trays.cellsFor(stations, usable);
  const inTrays = table.moduleCells === null ? null : trays.traysFor(stations, usable, table.moduleCells);
  const seeds = cells * table.seedsPerCell;
  if (crop.thousandSeedG === null) return { trays: inTrays, seeds };
  const order = seedOrder.orderOf(seeds, buying(crop, crop.thousandSeedG.value));
  return { trays: inTrays, seeds, seedsWithMargin: order.seedsWithMargin, seedKg: order.seedKg, packs: order.packs };
}

/** Tubers, sets, cloves and crowns, with the margin bought. */
function setOut(crop: PlannedCrop, stations: number): Partial<Plants> {
  const { reference, germinationShare, seedMarginShare } = crop;
  if (reference === null || reference.plantingUnitG === null) return {};
  const pieces = (stations * reference.plantsPerStation) / (germinationShare?.value ?? 1);
  return { setKg: (pieces * (1 + (seedMarginShare?.value ?? 0)) * reference.plantingUnitG) / 1000 };
}

function buying(crop: PlannedCrop, thousandSeedG: number) {
  return { thousandSeedG, marginFraction: crop.seedMarginShare?.value ?? 0, packSeeds: crop.packSeeds?.value ?? null };
}
