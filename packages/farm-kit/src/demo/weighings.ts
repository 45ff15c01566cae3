/** What lay in the sample farm's stores when it was weighed, on the first Monday of each winter month. */
import type { Farm, Slot } from '@leywright/book';
import { asDay, type Day, daysBetween, yearOf } from '@leywright/measures';
import type { Chance } from '../make/chance.ts';
import type { Done } from './done.ts';

const monthly = [
  '2025-10-06',
  '2025-11-03',
  '2025-12-01',
  '2026-01-05',
  '2026-02-02',
  '2026-03-02',
  '2026-04-06',
  '2026-10-05',
  '2026-11-02',
  '2026-12-07',
  '2027-01-04',
] as const;

/** Crop, day it is in store, day from which boxes draw on it (till then there is enough fresh), share lost in a week, slot it goes into. */
const stored = [
  ['potato-maincrop', '09-20', '10-12', 0.004, 'potatoes'],
  ['carrot-maincrop', '10-04', '10-05', 0.006, 'carrots'],
  ['onion-set', '08-24', '08-28', 0.005, 'onions'],
] as const;

const mostWeeks = 34;

/** What is left by the records of lifting, near enough: a weighing never agrees to the kilo. */
export function weighings(farm: Farm, today: Day, given: { lifted: readonly Done[]; chance: Chance }): readonly Done[] {
  const { lifted, chance } = given;
  return stored.flatMap(([crop, inStore, drawnFrom, lossShareWeek, slotId]) => {
    const slot = farm.promise?.slots.find((one) => one.id === slotId);
    const store = farm.stores.find((one) => one.crops.some((kept) => kept === crop))?.id ?? null;
    return monthly
      .map((text) => asDay(text))
      .filter((day) => day <= today)
      .flatMap((day): readonly Done[] => {
        const year = day.slice(5) >= inStore ? yearOf(day) : yearOf(day) - 1;
        const weeks = weeksBetween(`${year}-${inStore}`, day);
        const kept = kilosLifted(lifted, crop, year) * (1 - lossShareWeek) ** weeks;
        const kg = kept - drawnKg(farm, slot) * weeksBetween(`${year}-${drawnFrom}`, day);
        if (kg <= 0 || weeks > mostWeeks) return [];
        const body = { kind: 'weighing', crop, store, kg: Math.round(kg * chance.between(0.985, 1.01)) } as const;
        return [{ on: day, body, lateDays: 0 }];
      });
  });
}

function weeksBetween(from: string, to: Day): number {
  return Math.max(0, daysBetween(asDay(from), to) / 7);
}

/** Kilos a week that leave the store for that place in the box. */
function drawnKg(farm: Farm, slot: Slot | undefined): number {
  const packed = (farm.promise?.sizes ?? []).reduce(
    (sum, size) => sum + size.households * (slot?.portions[size.id] ?? 0),
    0,
  );
  return packed / (1 - farm.about.conventions.packingLossShare);
}

/** Marketable kilos that the book says were lifted in that year. */
function kilosLifted(lifted: readonly Done[], crop: string, year: number): number {
  return lifted.reduce((sum, { on, body }) => {
    if (body.kind !== 'harvest' || body.crop !== crop || body.into !== 'store' || yearOf(on) !== year) return sum;
    return sum + (body.grossKg ?? 0) * (1 - (body.gradedOutShare ?? 0));
  }, 0);
}
