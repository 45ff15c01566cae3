/** The way of the goods of a whole farm, with what its crops weigh and yield. */
import type { Entry, Farm } from '@leywright/book';
import type { Day } from '@leywright/measures';
import { cropBookOf } from '../crops/crop-book.ts';
import { netAreaOf } from '../ground/net-area.ts';
import { type YieldCheck, yieldCheck } from './balance.ts';
import type { GoodsChain } from './chain.ts';
import { followGoods } from './follow.ts';

/** Crops by the farm's own figures where it has them, else the table's. */
export function followFarm(farm: Farm, entries: readonly Entry[]): GoodsChain {
  const crops = cropBookOf(farm);
  return followGoods(entries, {
    farm,
    unitKgOf: (crop, unit) => {
      const known = crops.cropOf(crop);
      return known === null || known.unit !== unit ? null : (known.unitKg?.value ?? null);
    },
  });
}

export interface CropPeriod {
  readonly crop: string;
  readonly from: Day;
  readonly to: Day;
}

/** Kilos lifted in a period against the ground they can have come from: stands with harvests of that crop in it. */
export function farmYieldCheck(farm: Farm, chain: GoodsChain, { crop, from, to }: CropPeriod): YieldCheck {
  const stands = new Set(
    [...chain.lots.values()]
      .filter((lot) => lot.crop === crop && lot.on >= from && lot.on <= to)
      .map((lot) => lot.stand),
  );
  let areaM2 = 0;
  for (const stand of farm.stands) {
    const plot = farm.plots.find((one) => one.id === stand.plot);
    if (!stands.has(stand.id) || plot === undefined) continue;
    const field = farm.fields.find((one) => one.id === plot.field) ?? null;
    const { netM2 } = netAreaOf({ plot, field, place: farm.about.place, conventions: farm.about.conventions });
    areaM2 += netM2 * (stand.span.toShare - stand.span.fromShare);
  }
  const known = cropBookOf(farm).cropOf(crop);
  const [lowTHa, highTHa] = [known?.yieldLowTHa?.value ?? null, known?.yieldHighTHa?.value ?? null];
  return yieldCheck(chain, { crop, from, to, areaM2, lowTHa, highTHa });
}

/** What people call a crop. */
export function cropNameOf(farm: Pick<Farm, 'crops' | 'about'>): (id: string) => string {
  const crops = cropBookOf(farm);
  return (id) => crops.cropOf(id)?.name ?? id;
}

/** Crops that lay there, came in or went out up to a day, those of the period; in the order of their ids. */
export function cropsBetween(chain: GoodsChain, from: Day, to: Day): readonly string[] {
  const within = chain.flows.filter((flow) => flow.on >= from && flow.on <= to);
  return [...new Set(within.map((flow) => flow.crop))].sort();
}
