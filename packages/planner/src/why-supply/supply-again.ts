/** A supply worked out again with one thing changed: what a lever would do, by doing it. */
import type { Farm, OwnCrop } from '@leywright/book';
import { asId } from '@leywright/measures';
import { cropBookOf } from '../crops/crop-book.ts';
import { type SupplyRun, supplyRun } from '../supply/supply-run.ts';

/** The same ground under a farm with other tables: promise, crops, stores, people. */
export function again(run: SupplyRun, change: (farm: Farm) => Farm): SupplyRun {
  const farm = change(run.input.farm);
  return supplyRun({ ...run.input, farm, crops: cropBookOf(farm) });
}

/** Households of every size times a share. */
export function householdsTimes(share: number): (farm: Farm) => Farm {
  return (farm) => {
    if (farm.promise === null) return farm;
    const sizes = farm.promise.sizes.map((size) => ({ ...size, households: size.households * share }));
    return { ...farm, promise: { ...farm.promise, sizes } };
  };
}

/** A figure of the farm's own over whatever it has for the crop. */
export function withOwn(crop: string, figures: Partial<OwnCrop>): (farm: Farm) => Farm {
  return (farm) => {
    const known = farm.crops.find((one) => one.id === crop);
    const own = { ...(known ?? blankCrop(crop)), ...figures };
    return { ...farm, crops: [...farm.crops.filter((one) => one.id !== crop), own] };
  };
}

function blankCrop(crop: string): OwnCrop {
  return {
    id: asId(crop),
    basedOn: null,
    name: null,
    family: null,
    variety: null,
    unit: null,
    unitKg: null,
    yieldGrossTHa: null,
    yieldMarketableTHa: null,
    yieldPackedTHa: null,
    gradingLossShare: null,
    packingLossShare: null,
    storeLossTotalShare: null,
    bedCentresM: null,
    rowsPerBed: null,
    plantsPerRowM: null,
    germinationShare: null,
    fieldFactorShare: null,
    thousandSeedG: null,
    seedMarginShare: null,
    packSeeds: null,
    hoursPerHa: null,
  };
}
