/**
 * A week's packing from the plan: what each size gets, what is to be picked for it and where, what a box weighs; and who goes without when there
 * is not enough.
 *
 * Rule    what comes fresh is cut a twentieth over, common practice; what lies in store is taken as it is. A box over 25 kg is not for one pair of
 *         hands (the guideline figure for lifting in good posture, men; less for others: common practice, ask the local rule).
 */
import type { Farm, SaleUnit } from '@leywright/book';
import type { Day, IsoWeek } from '@leywright/measures';
import { cropBookOf } from '../crops/crop-book.ts';
import type { Plan } from '../plan/plan.ts';
import type { BoxItem, BoxWeek } from '../plan/supply.ts';
import { unitKgOf } from '../promise/demand.ts';

export const cutOverShare = 0.05;
export const heaviestBoxKg = 25;

export interface PackLine {
  readonly slot: string;
  readonly crop: string;
  readonly name: string;
  readonly unit: SaleUnit;
  readonly portionQuantity: number;
  /** Kilos of a portion; null = nobody knows what a head or bunch weighs. */
  readonly portionKg: number | null;
  /** Of the boxes of this size, how many can carry it. */
  readonly boxesShare: number;
}

export interface PackSize {
  readonly size: string;
  readonly name: string;
  readonly boxes: number;
  readonly lines: readonly PackLine[];
  /** The fullest box, of what is weighed. */
  readonly boxKg: number;
  readonly isTooHeavy: boolean;
}

export interface PickLine {
  readonly crop: string;
  readonly name: string;
  readonly from: BoxItem['from'];
  readonly plots: readonly string[];
  readonly unit: SaleUnit;
  /** For the boxes, in the crop's own unit; and to cut, with what is cut over. */
  readonly neededQuantity: number;
  readonly toCutQuantity: number;
  readonly toCutKg: number | null;
}

export interface PackWeek {
  readonly week: IsoWeek;
  readonly packOn: Day | null;
  readonly closed: 'closed' | 'outside' | null;
  readonly boxes: number;
  readonly sizes: readonly PackSize[];
  readonly picks: readonly PickLine[];
  readonly missing: BoxWeek['missing'];
}

/** Null when the plan has no boxes in that week. */
export function packWeek(plan: Plan, farm: Farm, week: IsoWeek): PackWeek | null {
  const planned = plan.supply?.boxes.find((one) => one.week === week);
  if (planned === undefined || farm.promise === null) return null;
  const crops = cropBookOf(farm);
  const kgOf = (item: BoxItem) => {
    const crop = crops.cropOf(item.crop);
    return item.unit === 'kg' ? 1 : crop === null ? null : unitKgOf(crop, item.unit);
  };
  const open = planned.closed === null;
  const sizes = (open ? farm.promise.sizes : []).map((size): PackSize => {
    const lines = planned.items.flatMap((item): PackLine[] => {
      const portionQuantity = item.portions[size.id] ?? 0;
      if (portionQuantity <= 0) return [];
      const unitKg = kgOf(item);
      const { slot, crop, name, unit, boxesShare } = item;
      return [
        {
          slot,
          crop,
          name,
          unit,
          portionQuantity,
          portionKg: unitKg === null ? null : portionQuantity * unitKg,
          boxesShare,
        },
      ];
    });
    const boxKg = lines.reduce((sum, line) => sum + (line.portionKg ?? 0), 0);
    return { size: size.id, name: size.name, boxes: size.households, lines, boxKg, isTooHeavy: boxKg > heaviestBoxKg };
  });
  const picks = (open ? planned.items : []).map((item) => pickOf(item, sizes, kgOf(item)));
  return {
    week,
    packOn: planned.packOn,
    closed: planned.closed,
    boxes: open ? planned.boxes : 0,
    sizes,
    picks,
    missing: planned.missing,
  };
}

function pickOf(item: BoxItem, sizes: readonly PackSize[], unitKg: number | null): PickLine {
  const neededQuantity = sizes.reduce(
    (sum, size) => sum + size.boxes * item.boxesShare * (item.portions[size.size] ?? 0),
    0,
  );
  const over = neededQuantity * (item.from === 'store' ? 1 : 1 + cutOverShare);
  // Heads and bunches are cut whole.
  const toCutQuantity = item.unit === 'kg' ? over : Math.ceil(over - 1e-9);
  const { crop, name, from, plots, unit } = item;
  return {
    crop,
    name,
    from,
    plots,
    unit,
    neededQuantity,
    toCutQuantity,
    toCutKg: unitKg === null ? null : toCutQuantity * unitKg,
  };
}

export interface WithoutBefore {
  /** Household by its code; no name is needed here. */
  readonly household: string;
  /** Weeks in which it had the substitute, of any item. */
  readonly weeks: readonly IsoWeek[];
}

/** Who gets the substitute when `withoutCount` boxes cannot have an item: whoever had one least often, and of those longest ago. */
export function goWithout(households: readonly WithoutBefore[], withoutCount: number): readonly string[] {
  const last = (one: WithoutBefore) => one.weeks.toSorted().at(-1) ?? '';
  return households
    .toSorted((one, other) => {
      if (one.weeks.length !== other.weeks.length) return one.weeks.length - other.weeks.length;
      if (last(one) !== last(other)) return last(one) < last(other) ? -1 : 1;
      return one.household < other.household ? -1 : 1;
    })
    .slice(0, Math.max(0, withoutCount))
    .map((one) => one.household);
}
