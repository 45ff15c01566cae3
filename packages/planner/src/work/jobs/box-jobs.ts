/** Packing and delivery of each box week. */
import { dayNumber } from '@leywright/measures';
import type { Job } from '../../plan/work.ts';
import { householdsOf } from '../../promise/demand.ts';
import type { SupplyRun } from '../../supply/supply-run.ts';
import { labourHours, type Rated } from '../rates.ts';
import { jobOf } from './job.ts';

/** Boxes left at one drop, the middle of the labour table's 5 to 25 (common practice). */
const boxesPerDrop = 15;

export function boxJobs(run: SupplyRun): readonly (Job | null)[] {
  const boxes = householdsOf(run.promise);
  if (boxes === 0) return [];
  const { packingHBox, deliveryHWeek } = run.input.farm.about.conventions;
  const packing =
    packingHBox === null ? labourHours('pack-box', { boxes }) : exactly(packingHBox * boxes, 'farm.json/packing_h_box');
  const delivery =
    deliveryHWeek === null
      ? labourHours('deliver-drop', { drops: Math.ceil(boxes / boxesPerDrop) })
      : exactly(deliveryHWeek, 'farm.json/delivery_h_week');
  return run.typ.calendar.slice(run.fromWeek, run.toWeek).flatMap((week) => {
    if (week.packOn === null) return [];
    const pieces = {
      run,
      nth: week.week,
      fromDay: dayNumber(week.packOn),
      name: '',
      amount: boxes,
      amountUnit: 'boxes' as const,
    };
    return [jobOf({ ...pieces, kind: 'pack', rated: packing }), jobOf({ ...pieces, kind: 'deliver', rated: delivery })];
  });
}

function exactly(hours: number, basis: string): Rated {
  return { hours: { low: hours, typ: hours, high: hours }, basis };
}
