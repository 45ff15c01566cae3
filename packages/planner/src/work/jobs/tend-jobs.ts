/** What standing crops ask for besides weeding: mulch, stakes, training, topping, water, haulm off. */
import { dayNumber } from '@leywright/measures';
import type { Job } from '../../plan/work.ts';
import { labourHours } from '../rates.ts';
import { jobOf, ownOf, type StandAt } from './job.ts';

/** Crops that climb on stakes and strings in the field. */
const climbing = new Set(['runner-bean']);
const topped = new Set(['brussels-sprout']);
const trained = new Set(['tomato-tunnel', 'cucumber-tunnel']);
/** Potatoes kept in store: their haulm comes off two to three weeks before lifting, so that the skins set. */
const setSkins = new Set(['potato-second-early', 'potato-maincrop']);

const days = {
  stakeAfter: 14,
  trainAfter: 14,
  toppedBeforePicking: 28,
  haulmBeforeLifting: 17,
  mulchBefore: 3,
} as const;

export function tendJobs(at: StandAt): readonly (Job | null)[] {
  const crop = at.run.input.crops.cropOf(at.stand.what)?.reference?.id ?? '';
  if (at.stand.kind !== 'crop') return [];
  const from = dayNumber(at.stand.plantedOn ?? at.stand.from);
  return [
    mulch(at, from),
    ...irrigate(at, from),
    ...(climbing.has(crop) ? [stake(at, from)] : []),
    ...(trained.has(crop) ? train(at, from) : []),
    ...(topped.has(crop) ? [top(at, from)] : []),
    ...(setSkins.has(crop) ? [haulmOff(at, from)] : []),
  ];
}

function mulch(at: StandAt, from: number): Job | null {
  const rated = labourHours('mulch-lay', at.measures);
  return jobOf({ kind: 'lay-mulch', stand: at, fromDay: from - days.mulchBefore, rated });
}

/** Where jobs.csv says how often: spread over the middle of the crop's time, a day each. How much it wants is the soil's to say. */
function irrigate(at: StandAt, from: number): readonly (Job | null)[] {
  const times = ownOf({ kind: 'irrigate', stand: at })?.times ?? 0;
  const spanDays = dayNumber(at.stand.to) - from;
  return Array.from({ length: times }, (_, nth) =>
    jobOf({
      kind: 'irrigate',
      stand: at,
      nth: nth + 1,
      fromDay: from + Math.round((spanDays * (nth + 1)) / (times + 1)),
      rated: labourHours('irrigate-setup', at.measures),
    }),
  );
}

function stake(at: StandAt, from: number): Job | null {
  return jobOf({
    kind: 'stake',
    stand: at,
    fromDay: from + days.stakeAfter,
    rated: labourHours('stake-row', at.measures),
    rowM: at.measures.rowM ?? null,
  });
}

/** Every week until the last picking. */
function train(at: StandAt, from: number): readonly (Job | null)[] {
  const end = dayNumber(at.stand.harvestTo ?? at.stand.to);
  const weeks = Math.max(0, Math.floor((end - from - days.trainAfter) / 7));
  return Array.from({ length: weeks }, (_, week) =>
    jobOf({
      kind: 'train',
      stand: at,
      nth: week + 1,
      fromDay: from + days.trainAfter + 7 * week,
      rated: labourHours('train-tomato', at.measures),
      amount: at.measures.plants ?? null,
      amountUnit: 'plants',
    }),
  );
}

function top(at: StandAt, from: number): Job | null {
  const picking = at.stand.harvestFrom === null ? null : dayNumber(at.stand.harvestFrom);
  if (picking === null) return null;
  return jobOf({
    kind: 'top',
    stand: at,
    fromDay: Math.max(from + 30, picking - days.toppedBeforePicking),
    rated: labourHours('top-sprouts', at.measures),
    amount: at.measures.plants ?? null,
    amountUnit: 'plants',
  });
}

function haulmOff(at: StandAt, from: number): Job | null {
  const lifting = at.stand.harvestFrom === null ? dayNumber(at.stand.to) : dayNumber(at.stand.harvestFrom);
  const fromDay = lifting - days.haulmBeforeLifting;
  return fromDay <= from
    ? null
    : jobOf({ kind: 'haulm-off', stand: at, fromDay, rated: labourHours('haulm-flail', at.measures) });
}
