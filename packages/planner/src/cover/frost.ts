/**
 * The night that kills a tender cover.
 *
 * Source  frost_kill_c of reference/covers.csv, for annual covers: the others outlive a thinning. A recorded night kills by itself; for nights not yet
 *         recorded the coldest of an ordinary month is taken 7 °C under the mean of its nights (common practice, no source): the day is an
 *         expectation, weeks early or late in any one year.
 * Holds   where no night comes near its limit a cover is never killed: no place is taken to have a frost.
 */
import type { Plant } from '../crops/plant.ts';
import type { ClimateDays } from '../plan/inputs.ts';

export const coldestNightUnderMeanC = 7;

/** First day on or after `fromDay` and before `toDay` on which a frost kills the cover; null when none does or it is no tender cover. */
export function killedOn(
  plant: Plant,
  climate: ClimateDays,
  days: { readonly fromDay: number; readonly toDay: number },
): number | null {
  const cover = plant.cover;
  if (cover === null || !isTender(cover.life)) return null;
  const last = Math.min(days.toDay - climate.firstDay, climate.minC.length);
  for (let at = Math.max(0, days.fromDay - climate.firstDay); at < last; at++) {
    const nightC = (climate.minC[at] ?? 0) - (climate.recorded[at] === 1 ? 0 : coldestNightUnderMeanC);
    if (nightC <= cover.frostKillC) return climate.firstDay + at;
  }
  return null;
}

/** Annuals die with the frost; a mixture dies when its own figure in the table says so. */
export function isTender(life: string): boolean {
  return life === 'annual';
}
