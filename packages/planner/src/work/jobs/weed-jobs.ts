/**
 * Passes against weeds, from the weeding table: machine hours for each pass, hand hours for the season shared among its passes.
 *
 * Rule    The middle of the table's number of passes, spread evenly between its offsets from sowing, emergence or planting. Raised crops go by planting
 *         where the table has a planting row for them. Rows that stand for another way of doing the same work are left out.
 */
import { emergence, reference, type WeedPass } from '@leywright/agronomy';
import { dayNumber } from '@leywright/measures';
import type { Job, JobKind } from '../../plan/work.ts';
import type { Hours } from '../rates.ts';
import { jobOf, ownOf, type StandAt } from './job.ts';

/** The Danish drilled leek with a stale seedbed is another way of growing; the brush weeder comes in where jobs.csv asks for it. */
const otherWays = new Set(['hand-leek-drilled-stale']);

/** What the machine of a row does, by how its id begins; else it hoes. */
const machineKinds: readonly (readonly [beginning: RegExp, kind: JobKind])[] = [
  [/^stale-/, 'false-seedbed'],
  [/^flame-/, 'flame'],
  [/^brush-/, 'brush'],
  [/^ridge-/, 'ridge'],
];

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
  const kind = machineKinds.find(([beginning]) => beginning.test(row.id))?.[1] ?? 'hoe';
  return [
    ...(row.machineHighHHa > 0 ? passesWith(at, row, { start, kind, part: 'machine' }) : []),
    ...(row.handHighHHa > 0 ? passesWith(at, row, { start, kind: 'hand-weed', part: 'hand' }) : []),
  ];
}

interface Passing {
  readonly start: number;
  readonly kind: JobKind;
  readonly part: 'machine' | 'hand';
}

/** Machine hours are for each pass, hand hours for the season: fewer passes by hand take as long in all, fewer by machine do not. */
function passesWith(at: StandAt, row: WeedPass, { start, kind, part }: Passing): (Job | null)[] {
  const usual = Math.max(1, Math.round((row.passesLow + row.passesHigh) / 2));
  const times = ownOf({ kind, stand: at })?.times ?? null;
  const passes = times ?? usual;
  const ha = at.stand.areaM2 / 10_000;
  const hours =
    part === 'hand'
      ? between((row.handLowHHa * ha) / passes, (row.handHighHHa * ha) / passes)
      : between(
          (row.machineLowHHa * ha * (times === null ? row.passesLow : passes)) / passes,
          (row.machineHighHHa * ha * (times === null ? row.passesHigh : passes)) / passes,
        );
  const end = dayNumber(at.stand.to);
  return Array.from({ length: passes }, (_, pass) => pass).flatMap((pass) => {
    const offset = row.offsetLowDays + ((row.offsetHighDays - row.offsetLowDays) * (pass + 0.5)) / passes;
    const fromDay = start + Math.round(offset);
    if (fromDay >= end) return [];
    const nth = `${row.id}-${pass + 1}`;
    return [
      jobOf({
        stand: at,
        nth,
        fromDay,
        kind,
        rowM: at.measures.rowM ?? null,
        rated: { hours, basis: `weeds/${row.id}` },
      }),
    ];
  });
}

function between(low: number, high: number): Hours {
  return { low, typ: (low + high) / 2, high };
}
