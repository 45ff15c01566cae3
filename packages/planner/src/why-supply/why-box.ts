/** Why so many things are in a week's box: place by place, what fills it. */
import type { Lever, Why } from '../plan/why.ts';
import { boxWeek } from '../supply/box-year.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import { ofFarm, ofSums, why, written } from '../why/terms.ts';
import { again, householdsTimes } from './supply-again.ts';

export function whyBox(week: string, run: SupplyRun): Why | null {
  const at = run.typ.calendar.findIndex((one) => one.week === week);
  const box = at < 0 ? null : boxWeek(run, at);
  if (box === null || box.closed !== null) return null;
  const shares = (run.typ.weeks[at] ?? []).map((slot) => ({
    slot: slot.ask.slot.id,
    share: (1 - slot.missingShare) * slot.ask.boxesShare,
  }));
  return why(box.why, 'box', {
    figures: { week, promisedItems: box.promised, shortItems: box.shortItems },
    value: box.itemsPerBox,
    low: box.low,
    high: box.high,
    unit: 'items',
    formula: 'items = sum over the places in the box of the share of boxes filled',
    sum: `${shares.map((one) => written(one.share)).join(' + ')} = ${written(box.itemsPerBox)}`,
    inputs: [
      ...shares.map((one) => ofSums({ name: one.slot, value: one.share, unit: 'of the boxes' })),
      ofFarm({ name: 'promised', value: box.promised, unit: 'items' }, 'farm.json, items_per_box'),
      ofFarm({ name: 'boxes', value: box.boxes, unit: '' }, 'sizes.csv, households'),
    ],
    doubt: [
      'yields-all-low-or-all-high',
      ...(box.items.some((item) => item.from === 'store') ? ['store-not-weighed'] : []),
    ],
    levers: leversOf(run, at),
  });
}

function leversOf(run: SupplyRun, at: number): readonly Lever[] {
  return [0.9, 0.8].map((share) => ({
    change: 'households',
    value: share,
    unit: 'times',
    result: boxWeek(again(run, householdsTimes(share)), at).itemsPerBox,
  }));
}
