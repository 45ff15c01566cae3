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

/** Crop, day it is in store, kilos then, share lost in a week, slot it goes into. */
const stored = [
  ['potato-maincrop', '09-22', 'potatoes', 0.004],
  ['carrot-maincrop', '10-04', 'carrots', 0.006],
  ['onion-set', '08-26', 'onions', 0.005],
] as const;

export function weighings(farm: Farm, today: Day, chance: Chance): readonly Done[] {
  return stored.flatMap(([crop, inStore, slotId, lossShareWeek]) => {
    const weekKg = drawnKg(
      farm,
      farm.promise?.slots.find((slot) => slot.id === slotId),
    );
    const store = farm.stores.find((one) => one.crops.some((kept) => kept === crop))?.id ?? null;
    return monthly
      .map((text) => asDay(text))
      .filter((day) => day <= today)
      .flatMap((day) => {
        const since = asDay(`${day.slice(5) >= inStore ? yearOf(day) : yearOf(day) - 1}-${inStore}`);
        const weeks = daysBetween(since, day) / 7;
        const kg = kilosInStore(farm, crop, since) * (1 - lossShareWeek) ** weeks - weekKg * weeks;
        return kg <= 0 || weeks > 34
          ? []
          : [
              {
                on: day,
                body: { kind: 'weighing' as const, crop, store, kg: Math.round(kg * chance.between(0.985, 1.01)) },
                lateDays: 0,
              },
            ];
      });
  });
}

/** Kilos a week that leave the store for that place in the box. */
function drawnKg(farm: Farm, slot: Slot | undefined): number {
  const packed = (farm.promise?.sizes ?? []).reduce(
    (sum, size) => sum + size.households * (slot?.portions[size.id] ?? 0),
    0,
  );
  return packed / (1 - farm.about.conventions.packingLossShare);
}

/** Marketable kilos lifted from that autumn's stands, by the farm's own yields. */
function kilosInStore(farm: Farm, crop: string, since: Day): number {
  const yieldTHa = farm.crops.find((own) => own.id === crop)?.yieldMarketableTHa ?? 0;
  return farm.stands
    .filter((one) => one.what === crop && yearOf(one.to) === yearOf(since) && one.plot.length === 1)
    .reduce((sum, one) => {
      const plot = farm.plots.find((it) => it.id === one.plot);
      const netM2 =
        plot === undefined ? 0 : (plot.grossM2 - 2 * plot.hedgeM - plot.bankM2) * (1 - (plot.headlandShare ?? 0));
      return sum + netM2 * (one.span.toShare - one.span.fromShare) * 0.1 * yieldTHa;
    }, 0);
}
