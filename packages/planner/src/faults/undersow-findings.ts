/**
 * What is sown into another crop: whether the crop is there, and whether the time is right.
 *
 * Source  undersow_ columns of reference/covers.csv: weeks after planting or emergence of the crop; by crop, weeks after planting (drilled: after sowing).
 *         For a drilled host of the first sort the window runs from the low weeks after sowing to the high weeks after emergence: the table does not say
 *         which it means. A week either side is no fault. A host that the table does not name for the cover is not judged.
 */

import type { Plot } from '@leywright/book';
import { dayAt } from '@leywright/measures';
import type { GroundStand } from '../ground/ground-stand.ts';
import { leastShare, overlapShare } from '../ground/history.ts';
import { coverOfStand } from '../ground/plot-cover.ts';
import { type GroundSetting, isAhead } from '../ground/stage.ts';
import type { Finding } from '../plan/finding.ts';
import { finding, mend } from './say.ts';

const toleranceDays = 7;

interface At {
  readonly plot: Plot;
  readonly setting: GroundSetting;
}

export function undersowFindings(stands: readonly GroundStand[], at: At): readonly Finding[] {
  const byId = new Map(stands.map((one) => [one.stand.id as string, one]));
  return stands.flatMap((one) => {
    const hostId = one.stand.undersownIn;
    if (hostId === null || one.toDay <= at.setting.days.fromDay) return [];
    const host = byId.get(hostId);
    if (host === undefined || !standsThere(host, one)) return [withoutHost(one, hostId, at)];
    return isAhead(one, at.setting) ? outOfWindow(one, host, { ...at, stands }) : [];
  });
}

function standsThere(host: GroundStand, one: GroundStand): boolean {
  return (
    host.fromDay <= one.fromDay &&
    host.toDay > one.fromDay &&
    overlapShare(host.stand.span, one.stand.span) > leastShare
  );
}

function withoutHost(one: GroundStand, host: string, { plot, setting }: At): Finding {
  return finding('undersown-without-host', {
    gravity: isAhead(one, setting) ? 'put-right' : 'look',
    place: { plot: plot.id, stand: one.stand.id, from: one.stand.from },
    figures: { plot: plot.id, stand: one.stand.id, host, from: one.stand.from },
    mend: [mend('name-host', { stand: one.stand.id, plot: plot.id }), mend('sow-alone', { stand: one.stand.id })],
    reason: one.stand.reason,
  });
}

interface UndersowWeeks {
  readonly lowWeeks: number;
  readonly highWeeks: number;
  /** What the last week is counted from where the host is drilled. */
  readonly lastFrom: 'sowing' | 'emergence';
}

/** Weeks in which a cover can go into a crop; null where the table does not know the pair. */
export function undersowWeeks(one: GroundStand, host: GroundStand): UndersowWeeks | null {
  const { cover } = one.plant;
  if (!cover?.undersow) return null;
  const ids = host.plant.ids;
  const ofCrop = cover.undersowWeeksByCrop.find((weeks) => ids.includes(weeks.cropId));
  if (ofCrop !== undefined) return { lowWeeks: ofCrop.lowWeeks, highWeeks: ofCrop.highWeeks, lastFrom: 'sowing' };
  const { undersowLowWeeks, undersowHighWeeks } = cover;
  if (undersowLowWeeks === null || undersowHighWeeks === null || !cover.undersowCropIds.some((id) => ids.includes(id)))
    return null;
  return { lowWeeks: undersowLowWeeks, highWeeks: undersowHighWeeks, lastFrom: 'emergence' };
}

function outOfWindow(
  one: GroundStand,
  host: GroundStand,
  at: At & { readonly stands: readonly GroundStand[] },
): readonly Finding[] {
  const window = undersowWeeks(one, host);
  if (window === null) return [];
  const isUpAtOnce = window.lastFrom === 'sowing' || host.stand.plantedOn !== null;
  const firstDay = host.fromDay + 7 * window.lowWeeks;
  const lastDay = (isUpAtOnce ? host.fromDay : emergenceOf(host, at)) + 7 * window.highWeeks;
  if (one.fromDay >= firstDay - toleranceDays && one.fromDay <= lastDay + toleranceDays) return [];
  const from = dayAt(firstDay);
  const to = dayAt(lastDay);
  const weeks = Math.round(((one.fromDay - host.fromDay) / 7) * 10) / 10;
  return [
    finding('undersow-out-of-window', {
      gravity: 'look',
      place: { plot: at.plot.id, stand: one.stand.id, from: one.stand.from },
      figures: {
        plot: at.plot.id,
        stand: one.stand.id,
        host: host.stand.id,
        from: one.stand.from,
        weeks,
        lowWeeks: window.lowWeeks,
        highWeeks: Math.round(((lastDay - host.fromDay) / 7) * 10) / 10,
        windowFrom: from,
        windowTo: to,
      },
      mend: [mend('undersow-between', { stand: one.stand.id, from, to })],
      reason: one.stand.reason,
    }),
  ];
}

function emergenceOf(
  host: GroundStand,
  { stands, setting, plot }: At & { readonly stands: readonly GroundStand[] },
): number {
  return coverOfStand(host, stands, { setting, isTunnel: plot.kind === 'tunnel' }).emergedOnDay;
}
