/**
 * Passes against weeds, from the weeding table: machine hours for each pass, hand hours for the season shared among its passes.
 *
 * Rule    The middle of the table's number of passes, spread evenly between its offsets from sowing, emergence or planting. Raised crops go by planting
 *         where the table has a planting row for them. Rows that stand for another way of doing the same work are left out.
 */
import { emergence, reference, type WeedPass } from '@leywright/agronomy';
import { dayNumber } from '@leywright/measures';
import type { Job } from '../plan/work.ts';
import { jobOf, type StandAt } from './job.ts';
import type { Hours } from './rates.ts';

/** The brush weeder does the hoe's work; the Danish drilled leek with a stale seedbed is another way of growing. */
const otherWays = new Set(['brush-carrot', 'hand-leek-drilled-stale']);

export function weedJobs(at: StandAt): readonly (Job | null)[] {
  const crop = at.run.input.crops.cropOf(at.stand.what)?.reference ?? null;
  if (at.stand.kind !== 'crop' || crop === null) return [];
  const rows = rowsOf(crop.id);
  const isRaised = crop.establishment === 'module' || crop.establishment === 'bare-root';
  const hasPlanting = rows.some((row) => row.timingRef === 'planting');
  return rows
    .filter((row) => !isRaised || row.timingRef === 'planting' || (!hasPlanting && row.timingRef === 'emergence'))
    .flatMap((row) => passesOf(at, row, startDay(at, row, isRaised)));
}

const rowsByCrop = new Map<string, readonly WeedPass[]>();

function rowsOf(crop: string): readonly WeedPass[] {
  const rows =
    rowsByCrop.get(crop) ??
    [...reference.weeds.values()].filter((row) => row.cropIds.includes(crop) && !otherWays.has(row.id));
  rowsByCrop.set(crop, rows);
  return rows;
}

function startDay(at: StandAt, row: WeedPass, isRaised: boolean): number {
  const { stand, run } = at;
  const from = dayNumber(stand.plantedOn ?? stand.from);
  if (row.timingRef !== 'emergence' || isRaised) return from;
  const sum = emergence.emergenceOfCrop(run.input.crops.cropOf(stand.what)?.reference?.id ?? stand.what, true);
  const up = sum.kind === 'thermal-time' ? run.input.climate.dayOfSum(sum.baseC, from, sum.sumCd) : null;
  return up ?? from + usualEmergenceDays;
}

const usualEmergenceDays = 14;

function passesOf(at: StandAt, row: WeedPass, start: number): (Job | null)[] {
  const passes = Math.max(1, Math.round((row.passesLow + row.passesHigh) / 2));
  const ha = at.stand.areaM2 / 10_000;
  const machine = between(
    (row.machineLowHHa * ha * row.passesLow) / passes,
    (row.machineHighHHa * ha * row.passesHigh) / passes,
  );
  const hand = between((row.handLowHHa * ha) / passes, (row.handHighHHa * ha) / passes);
  const end = dayNumber(at.stand.to);
  return Array.from({ length: passes }, (_, pass) => pass).flatMap((pass) => {
    const offset = row.offsetLowDays + ((row.offsetHighDays - row.offsetLowDays) * (pass + 0.5)) / passes;
    const fromDay = start + Math.round(offset);
    if (fromDay >= end) return [];
    const pieces = { stand: at, nth: `${row.id}-${pass + 1}`, fromDay, rowM: at.measures.rowM ?? null };
    return [
      ...(machine.high > 0
        ? [jobOf({ ...pieces, kind: 'hoe', rated: { hours: machine, basis: `weeds/${row.id}` } })]
        : []),
      ...(hand.high > 0
        ? [jobOf({ ...pieces, kind: 'hand-weed', rated: { hours: hand, basis: `weeds/${row.id}` } })]
        : []),
    ];
  });
}

function between(low: number, high: number): Hours {
  return { low, typ: (low + high) / 2, high };
}
