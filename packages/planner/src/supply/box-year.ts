/**
 * The boxes of the year in focus, week by week: what is in them, what is missing, and what low and high yields would make of it.
 *
 * The low and high of a week are what is in the box if every crop of the farm had its low, or its high, yield at once: the ends of what can be, not
 * a likelihood.
 */
import { cropLook, plantOf } from '../crops/plant.ts';
import type { BoxItem, BoxWeek } from '../plan/supply.ts';
import { householdsOf } from '../promise/demand.ts';
import { packingKeep } from '../promise/known.ts';
import type { Filled, SlotWeek } from './fill.ts';
import type { SupplyRun } from './supply-run.ts';

/** A thing that fewer than one box in two hundred goes without is not missing: kilos are not reckoned so finely. */
export const missingLimitShare = 0.005;
/** Boxes are short when one in twenty, or more, is without something promised. */
export const shortLimitShare = 0.05;

export function boxYear(run: SupplyRun): readonly BoxWeek[] {
  return run.typ.calendar.slice(run.fromWeek, run.toWeek).map((_, at) => boxWeek(run, run.fromWeek + at));
}

/** One week of the axis. */
export function boxWeek(run: SupplyRun, week: number): BoxWeek {
  const calendar = run.typ.calendar[week];
  if (calendar === undefined) throw new Error(`There is no week ${week} on an axis of ${run.axis.weeks} weeks.`);
  const slots = run.typ.weeks[week] ?? [];
  const isOpen = calendar.closed === null;
  const itemsPerBox = itemsIn(run.typ, week);
  const promised = isOpen ? promisedItems(run, slots) : 0;
  const lack = promised - itemsPerBox;
  return {
    week: calendar.week,
    weekIndex: week + run.planOffsetWeeks,
    packOn: calendar.packOn,
    closed: calendar.closed,
    boxes: isOpen ? householdsOf(run.promise) : 0,
    promised,
    items: slots.flatMap((slot) => itemsOf(run, slot)),
    missing: slots
      .filter((slot) => slot.missingShare * slot.ask.boxesShare > missingLimitShare)
      .map((slot) => ({
        slot: slot.ask.slot.id,
        crops: slot.ask.slot.crops,
        boxesShare: slot.missingShare * slot.ask.boxesShare,
      })),
    itemsPerBox,
    shortItems: lack >= shortLimitShare ? lack : 0,
    low: itemsIn(run.low, week),
    high: Math.max(itemsIn(run.high, week), itemsPerBox),
    why: `box/${calendar.week}`,
  };
}

/** Items in an average box. */
export function itemsIn(filled: Filled, week: number): number {
  return (filled.weeks[week] ?? []).reduce((sum, slot) => sum + (1 - slot.missingShare) * slot.ask.boxesShare, 0);
}

/** The number the farm promises; where it names none, as many as have their turn. A farm that promises by the year promises no items. */
function promisedItems({ promise }: SupplyRun, slots: readonly SlotWeek[]): number {
  if (promise.slots.length === 0) return 0;
  return promise.itemsPerBox ?? slots.reduce((sum, slot) => sum + slot.ask.boxesShare, 0);
}

function itemsOf(run: SupplyRun, { ask, takes }: SlotWeek): BoxItem[] {
  return takes
    .filter((take) => take.share * ask.boxesShare > 1e-6)
    .map((take) => ({
      slot: ask.slot.id,
      crop: take.crop.id,
      name: take.crop.name,
      look: cropLook(plantOf(take.crop.id, run.input.crops)),
      from: take.from,
      plots: take.plots,
      boxesShare: take.share * ask.boxesShare,
      kg: take.kg * packingKeep(take.crop),
      portions: ask.slot.portions,
      unit: ask.slot.unit,
    }));
}
