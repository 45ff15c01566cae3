/**
 * Crops that follow a cover or ley too soon.
 *
 * Source  weeks_before_next_low of reference/covers.csv, from turning in to sowing or planting; the sequence rows of reference/intervals.csv by their notes:
 *         wireworm after a grass ley of over three years; leatherjackets after grass that stood in early autumn and was not followed by a summer.
 * Rule    Weeks too few are worth a look. The sequence rows are advice: the next crop it touches on each plot is noted, not each.
 */
import { reference } from '@leywright/agronomy';
import type { Plot } from '@leywright/book';
import { addDays, dayAt, dayNumber, dayOf, yearOf } from '@leywright/measures';
import { finding, mend } from '../faults/say.ts';
import type { GroundStand } from '../ground/ground-stand.ts';
import { leastShare, overlapShare } from '../ground/history.ts';
import { type GroundSetting, isAhead } from '../ground/stage.ts';
import type { Finding } from '../plan/finding.ts';

interface At {
  readonly plot: Plot;
  readonly setting: GroundSetting;
}

/** Ground sown longer than this after a cover follows something else by then. */
const longestWaitDays = 70;

export function waitFindings(stands: readonly GroundStand[], at: At): readonly Finding[] {
  const crops = stands.filter((one) => one.stand.kind === 'crop' && isAhead(one, at.setting));
  const waits = crops.flatMap((crop) =>
    stands.filter((cover) => isTooSoon(cover, crop)).map((cover) => waitFinding(cover, crop, at)),
  );
  return [...waits, ...sequenceNotes(stands, crops, at)];
}

function needDaysAfter(cover: GroundStand): number | null {
  const weeks = cover.plant.cover?.weeksBeforeNextLow ?? null;
  const diedBefore =
    cover.stand.endedBy === 'failed' || cover.stand.endedBy === 'lost' || cover.stand.endedBy === 'frost-killed';
  return weeks === null || diedBefore ? null : Math.round(7 * weeks);
}

function isTooSoon(cover: GroundStand, crop: GroundStand): boolean {
  const waitDays = crop.fromDay - cover.toDay;
  if (waitDays < 0 || waitDays > longestWaitDays || overlapShare(cover.stand.span, crop.stand.span) <= leastShare)
    return false;
  const needDays = needDaysAfter(cover);
  return needDays !== null && waitDays < needDays;
}

function waitFinding(cover: GroundStand, crop: GroundStand, { plot }: At): Finding {
  const needDays = needDaysAfter(cover) ?? 0;
  return finding('wait-after-cover-too-short', {
    gravity: 'look',
    place: { plot: plot.id, stand: crop.stand.id, from: crop.stand.from },
    figures: {
      plot: plot.id,
      stand: crop.stand.id,
      previous: cover.stand.id,
      previousName: cover.plant.name,
      days: crop.fromDay - cover.toDay,
      needDays,
      from: crop.stand.from,
    },
    mend: [
      mend('turn-in-earlier', { stand: cover.stand.id, on: addDays(crop.stand.from, -needDays) }),
      mend('start-later', { stand: crop.stand.id, on: addDays(cover.stand.to, needDays) }),
    ],
    reason: crop.stand.reason,
  });
}

type Judge = (ley: GroundStand, crop: GroundStand, setting: GroundSetting) => boolean;

const longLeyDays = 3 * 365;

const judges: Readonly<Record<string, Judge>> = {
  wireworm: (ley, crop) =>
    ley.toDay - ley.fromDay > longLeyDays &&
    yearOf(crop.stand.from) - yearOf(dayAt(ley.toDay - 1)) < (reference.intervals.get('wireworm')?.returnYearsMin ?? 0),
  leatherjackets: (ley, crop, { farm }) => {
    const eggs = eggsLaidBefore(crop.fromDay, farm.about.place.latDeg);
    return ley.fromDay < eggs && ley.toDay > eggs && crop.fromDay < summerAfter(eggs, farm.about.place.latDeg);
  },
};

/** Crane flies lay in grass in September: 15 September before a day; south of the equator 15 March. */
function eggsLaidBefore(day: number, latDeg: number): number {
  const month = latDeg < 0 ? 3 : 9;
  const thisYear = dayNumber(dayOf(yearOf(dayAt(day)), month, 15));
  return thisYear < day ? thisYear : dayNumber(dayOf(yearOf(dayAt(day)) - 1, month, 15));
}

/** Grubs have fed till midsummer after. */
function summerAfter(eggs: number, latDeg: number): number {
  return latDeg < 0 ? dayNumber(dayOf(yearOf(dayAt(eggs)), 12, 21)) : dayNumber(dayOf(yearOf(dayAt(eggs)) + 1, 6, 21));
}

function sequenceNotes(stands: readonly GroundStand[], crops: readonly GroundStand[], at: At): readonly Finding[] {
  if (!at.setting.farm.about.conventions.organismRests) return [];
  return Object.entries(judges).flatMap(([id, judge]) => {
    const rule = reference.intervals.get(id);
    if (rule === undefined) return [];
    const hosts = new Set(rule.hostCropIds);
    const grass = new Set(rule.hostCoverIds);
    const leys = stands.filter((one) => one.plant.ids.some((plant) => grass.has(plant)) && one.stand.kind === 'ley');
    for (const crop of crops) {
      if (!crop.plant.ids.some((plant) => hosts.has(plant))) continue;
      const ley = leys.find(
        (one) =>
          one.toDay <= crop.fromDay &&
          overlapShare(one.stand.span, crop.stand.span) > leastShare &&
          judge(one, crop, at.setting),
      );
      if (ley !== undefined) return [sequenceNote(ley, crop, { plot: at.plot, organism: rule.organism, rule: id })];
    }
    return [];
  });
}

function sequenceNote(
  ley: GroundStand,
  crop: GroundStand,
  { plot, organism, rule }: { readonly plot: Plot; readonly organism: string; readonly rule: string },
): Finding {
  return finding('wait-after-cover-too-short', {
    gravity: 'note',
    place: { plot: plot.id, stand: crop.stand.id, from: crop.stand.from },
    figures: {
      plot: plot.id,
      stand: crop.stand.id,
      previous: ley.stand.id,
      previousName: ley.plant.name,
      days: crop.fromDay - ley.toDay,
      rule,
      organism,
      from: crop.stand.from,
    },
    mend: [mend('plant-after-summer', { stand: crop.stand.id })],
    reason: crop.stand.reason,
  });
}
