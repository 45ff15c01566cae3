/** Nets laid and taken off, for the crops and pests that are netted as a rule, between the pest table's days. */
import { reference } from '@leywright/agronomy';
import { dayInYear, dayNumber, endOfWindow, yearOf } from '@leywright/measures';
import type { Job } from '../../plan/work.ts';
import { labourHours } from '../rates.ts';
import { jobOf, type StandAt } from './job.ts';

/** Other pests of the table can be netted out too, but seldom are (common practice). */
const nettedAgainst = ['carrot-fly', 'cabbage-root-fly', 'flea-beetle'] as const;
const byHandBelowM2 = 1000;

export function netJobs(at: StandAt): readonly (Job | null)[] {
  const days = netDays(at);
  if (days === null) return [];
  const isSmall = at.stand.areaM2 < byHandBelowM2;
  const pieces = { stand: at, caution: 'loose netting' };
  return [
    jobOf({
      ...pieces,
      kind: 'net',
      fromDay: days.on,
      rated: labourHours(isSmall ? 'fleece-lay' : 'net-lay-machine', at.measures),
    }),
    // The table has no row for taking nets off alone; lifting and laying again is the nearest, and the dearer.
    jobOf({ ...pieces, kind: 'unnet', fromDay: days.off, rated: labourHours('net-lift', at.measures) }),
  ];
}

function netDays(at: StandAt): { readonly on: number; readonly off: number } | null {
  const crop = at.run.input.crops.cropOf(at.stand.what)?.reference?.id ?? null;
  if (crop === null || at.stand.kind !== 'crop' || at.plot.kind === 'tunnel') return null;
  const from = dayNumber(at.stand.plantedOn ?? at.stand.from);
  const to = dayNumber(at.stand.to) - 1;
  const windows = nettedAgainst.flatMap((id) => {
    const pest = reference.pests.get(id);
    if (pest === undefined || pest.netFrom === null || pest.netTo === null || !pest.cropIds.includes(crop)) return [];
    const year = yearOf(at.stand.plantedOn ?? at.stand.from);
    const on = Math.max(from, dayNumber(dayInYear(pest.netFrom, year)));
    const off = Math.min(to, dayNumber(endOfWindow(pest.netTo, year)));
    return on < off ? [{ on, off }] : [];
  });
  return windows.length === 0
    ? null
    : { on: Math.min(...windows.map((one) => one.on)), off: Math.max(...windows.map((one) => one.off)) };
}
