/** What the boxes ask for: households by size times portion, in kilos, heads or bunches. */
import type { BoxPromise, SaleUnit, Slot } from '@leywright/book';
import type { PlannedCrop } from '../plan/inputs.ts';
import { ownFirst } from './known.ts';

/** What one turn of a slot asks for, all boxes together. */
export interface SlotAsk {
  readonly slot: Slot;
  /** In the slot's unit. */
  readonly units: number;
  /** Boxes of sizes that get a portion, of all boxes. */
  readonly boxesShare: number;
}

export function householdsOf(promise: BoxPromise): number {
  return promise.sizes.reduce((sum, size) => sum + size.households, 0);
}

export function slotAsk(promise: BoxPromise, slot: Slot): SlotAsk {
  const households = householdsOf(promise);
  const served = promise.sizes.filter((size) => (slot.portions[size.id] ?? 0) > 0);
  return {
    slot,
    units: served.reduce((sum, size) => sum + size.households * (slot.portions[size.id] ?? 0), 0),
    boxesShare: households === 0 ? 0 : served.reduce((sum, size) => sum + size.households, 0) / households,
  };
}

/**
 * Kilos of one unit of sale of a crop; null when nobody has weighed one.
 * A crop the table sells by weight and the farm by the head takes the mass of one plant; a bunch of it has to be weighed by the farm.
 */
export function unitKgOf(crop: PlannedCrop, unit: SaleUnit): number | null {
  if (unit === 'kg') return 1;
  if (crop.unitKg !== null && (crop.unit === unit || ownFirst(crop.unitKg))) return crop.unitKg.value;
  return unit === 'head' && crop.reference !== null ? crop.reference.massPerPlantTypG / 1000 : null;
}
