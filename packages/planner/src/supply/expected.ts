/** Kilos expected of a stand before anything is recorded of it. */
import type { PlacedStand } from '../plan/ground.ts';
import type { PlannedCrop } from '../plan/inputs.ts';
import { marketableKgM2, yieldSaid } from '../promise/known.ts';

export interface KgRange {
  readonly low: number;
  readonly typ: number;
  readonly high: number;
}

/**
 * Marketable kilos, with the table's low and high as shares of its typical figure laid about whatever yield the farm goes by: an own figure is
 * an average too. A stand that failed or was lost gives nothing; one that took in part gives that part.
 */
export function expectedKg(
  ownYields: ReadonlyMap<string, number>,
  stand: PlacedStand,
  crop: PlannedCrop,
): { readonly kg: KgRange; readonly basis: 'own' | 'reference' | 'unknown' } {
  const kgM2 = standYieldKgM2(ownYields, stand, crop);
  if (kgM2 === null) return { kg: { low: 0, typ: 0, high: 0 }, basis: 'unknown' };
  const gone = stand.endedBy === 'failed' || stand.endedBy === 'lost';
  const kg = kgM2.value * stand.areaM2 * (stand.establishedShare ?? 1) * (gone ? 0 : 1);
  const { lowShare, highShare } = yieldSpread(crop);
  return { kg: { low: kg * lowShare, typ: kg, high: kg * highShare }, basis: kgM2.basis };
}

/** The stand's own figure first, then the crop's. */
function standYieldKgM2(
  ownYields: ReadonlyMap<string, number>,
  stand: PlacedStand,
  crop: PlannedCrop,
): { value: number; basis: 'own' | 'reference' } | null {
  const own = ownYields.get(stand.id) ?? null;
  if (own !== null) return { value: own / 10, basis: 'own' };
  const said = yieldSaid(crop);
  const kgM2 = marketableKgM2(crop);
  return said === null || kgM2 === null ? null : { value: kgM2, basis: said.basis };
}

/** Low and high yields of the table as shares of the typical one; no spread for a crop the table does not know. */
export function yieldSpread(crop: PlannedCrop): { readonly lowShare: number; readonly highShare: number } {
  if (crop.reference === null) return { lowShare: 1, highShare: 1 };
  const { yieldLowTHa, yieldTypTHa, yieldHighTHa } = crop.reference;
  return { lowShare: yieldLowTHa / yieldTypTHa, highShare: yieldHighTHa / yieldTypTHa };
}
