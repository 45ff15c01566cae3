/**
 * When a lot is ready in a year that is warmer or colder than usual.
 *
 * Rule    the sum of warmth above the crop's base that a usual year gives from sowing or planting to the planned first week has to be reached;
 *         never more than four weeks sooner or five later. Crops that follow day length or cold move half as far, and so does a tunnel.
 */
import type { Season, SeasonLot } from './season-lot.ts';

const mostSoonerWeeks = 4;
const mostLaterWeeks = 5;

export function readyWeekOf(season: Season, lot: SeasonLot, warmerC: Float64Array): number {
  if (lot.readyWeek <= season.openWeek || lot.toComeKg <= 0 || lot.wantedCd <= 0) return lot.readyWeek;
  const latest = Math.min(season.weeks, lot.readyWeek + mostLaterWeeks);
  let sum = 0;
  // What has grown so far grew in weather that is known.
  let week = Math.max(lot.growsFromWeek, season.openWeek);
  while (week < latest && sum < lot.wantedCd - 1e-9) {
    sum += 7 * Math.max(0, (season.meanC[week] ?? 0) + (warmerC[week] ?? 0) - lot.baseC);
    week += 1;
  }
  const moved = Math.max(-mostSoonerWeeks, Math.min(mostLaterWeeks, week - lot.readyWeek));
  return Math.max(season.openWeek, lot.readyWeek + Math.round(moved * lot.warmthShare));
}

/** Warmth a usual year gives from a week up to, not including, another. */
export function usualWarmthCd(
  meanC: Float64Array,
  weeks: { readonly fromWeek: number; readonly toWeek: number },
  baseC: number,
): number {
  let sum = 0;
  for (let week = Math.max(0, weeks.fromWeek); week < weeks.toWeek; week += 1)
    sum += 7 * Math.max(0, (meanC[week] ?? 0) - baseC);
  return sum;
}
