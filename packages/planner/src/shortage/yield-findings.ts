/** Own yields, and recorded ones, that are so far out of the table's band that they are asked about. They are used all the same. */
import type { Finding } from '../plan/finding.ts';
import type { PlannedCrop } from '../plan/inputs.ts';
import { keptShare, yieldSaid } from '../promise/known.ts';
import type { Lot } from '../supply/lot.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import { mend, supplyFinding } from './say.ts';

/** Beyond the table's low and high by half as much again. */
const bandStretch = 1.5;

export function yieldFindings(run: SupplyRun): readonly Finding[] {
  const promised = run.promise.slots.flatMap((slot) => slot.crops as readonly string[]);
  const inUse = new Set([
    ...promised,
    ...run.promise.needs.map((need) => need.crop as string),
    ...run.lots.map((lot) => lot.crop.id),
  ]);
  const own = [...inUse]
    .flatMap((id) => run.input.crops.cropOf(id) ?? [])
    .flatMap((crop) => {
      const tHa = ownMarketableTHa(crop);
      return tHa === null ? [] : implausible(crop, tHa, { crop: crop.id });
    });
  return [...own, ...standYields(run), ...recordedYields(run)];
}

/** The farm's own figure as it compares with the table's marketable one. */
function ownMarketableTHa(crop: PlannedCrop): number | null {
  const said = yieldSaid(crop);
  if (said === null || said.basis !== 'own') return null;
  return said.known.value * (said.measure === 'gross' ? keptShare(crop.gradingLossShare) : 1);
}

function standYields(run: SupplyRun): readonly Finding[] {
  return run.input.farm.stands.flatMap((stand) => {
    const crop = stand.yieldTHa === null ? null : run.input.crops.cropOf(stand.what);
    return crop === null || stand.yieldTHa === null || !run.lots.some((lot) => lot.stand === stand.id)
      ? []
      : implausible(crop, stand.yieldTHa, placeOf(stand.id, stand.plot, crop));
  });
}

/** Only what is too good: a poor harvest has many reasons. */
function recordedYields(run: SupplyRun): readonly Finding[] {
  return run.lots.flatMap((lot: Lot) => {
    const high = lot.crop.yieldHighTHa?.value ?? null;
    if (lot.recordedKg === null || lot.areaM2 === 0 || high === null) return [];
    const tHa = (lot.recordedKg / lot.areaM2) * 10;
    return tHa > high * bandStretch ? implausible(lot.crop, tHa, placeOf(lot.stand, lot.plot, lot.crop)) : [];
  });
}

function placeOf(
  stand: string,
  plot: string,
  crop: PlannedCrop,
): { readonly stand: string; readonly plot: string; readonly crop: string } {
  return { stand, plot, crop: crop.id };
}

function implausible(crop: PlannedCrop, yieldTHa: number, place: Finding['place']): readonly Finding[] {
  const low = crop.yieldLowTHa?.value ?? null;
  const high = crop.yieldHighTHa?.value ?? null;
  if (low === null || high === null || (yieldTHa >= low / bandStretch && yieldTHa <= high * bandStretch)) return [];
  return [
    supplyFinding('yield-implausible', {
      gravity: 'look',
      place,
      figures: { crop: crop.id, yieldTHa, lowTHa: low, highTHa: high },
      mend: [mend('look-at-unit', { crop: crop.id }), mend('keep-own-yield', { crop: crop.id })],
    }),
  ];
}
