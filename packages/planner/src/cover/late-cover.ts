/**
 * Covers sown too late to hold the ground by winter.
 *
 * Source  latest_winter_cover_sow of reference/covers.csv, moved to the farm's place as an autumn date; a week is no fault.
 */

import { reference } from '@leywright/agronomy';
import type { Plot } from '@leywright/book';
import { dayAt, dayNumber, dayOf, yearOf } from '@leywright/measures';
import { hasTableSeasons, lastDayNear } from '../crops/season.ts';
import { finding, mend } from '../faults/say.ts';
import type { GroundStand } from '../ground/ground-stand.ts';
import { type GroundSetting, isAhead } from '../ground/stage.ts';
import type { Finding } from '../plan/finding.ts';

const toleranceDays = 7;
const hardiest = 'grazing-rye';

export function lateCoverFindings(
  stands: readonly GroundStand[],
  { plot, setting }: { readonly plot: Plot; readonly setting: GroundSetting },
): readonly Finding[] {
  if (plot.kind === 'tunnel') return [];
  return stands.flatMap((one) => {
    const last = isAhead(one, setting) ? lateDay(one, setting) : null;
    if (last === null) return [];
    const lastOn = dayAt(last);
    return [
      finding('cover-sown-too-late', {
        gravity: 'look',
        place: { plot: plot.id, stand: one.stand.id, from: one.stand.from },
        figures: { plot: plot.id, stand: one.stand.id, from: one.stand.from, lastOn, days: one.fromDay - last },
        mend: [mend('sow-by', { stand: one.stand.id, on: lastOn }), ...hardierCover(one, setting)],
        reason: one.stand.reason,
      }),
    ];
  });
}

/** The day by which a cover should have been sown, when it is later than that by more than a week; null when it is not, or need not stand over winter. */
export function lateDay(one: GroundStand, { farm }: Pick<GroundSetting, 'farm'>): number | null {
  const { cover } = one.plant;
  const { place } = farm.about;
  if (
    cover === null ||
    cover.latestWinterCoverSow === null ||
    one.stand.undersownIn !== null ||
    !hasTableSeasons(place) ||
    !standsOverWinter(one, place.latDeg)
  )
    return null;
  const last = dayNumber(lastDayNear(cover.latestWinterCoverSow, one.stand.from, place));
  return one.fromDay > last + toleranceDays && one.fromDay < midwinterAfter(last, place.latDeg) ? last : null;
}

function standsOverWinter(one: GroundStand, latDeg: number): boolean {
  return midwinterAfter(one.fromDay, latDeg) < one.toDay;
}

/** 21 December, south of the equator 21 June: the first on or after a day. */
function midwinterAfter(day: number, latDeg: number): number {
  const year = yearOf(dayAt(day));
  const month = latDeg < 0 ? 6 : 12;
  const first = dayNumber(dayOf(year, month, 21));
  return first >= day ? first : dayNumber(dayOf(year + 1, month, 21));
}

function hardierCover(one: GroundStand, { farm }: Pick<GroundSetting, 'farm'>) {
  const rye = reference.covers.get(hardiest);
  if (rye === undefined || rye.latestWinterCoverSow === null || one.plant.id === hardiest) return [];
  const lastOn = lastDayNear(rye.latestWinterCoverSow, one.stand.from, farm.about.place);
  return one.stand.from <= lastOn
    ? [mend('take-hardier-cover', { stand: one.stand.id, cover: hardiest, on: lastOn })]
    : [];
}
