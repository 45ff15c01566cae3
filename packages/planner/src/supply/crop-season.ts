/**
 * The seasons of a crop: each harvest, and the weeks until the next one, belong to the year in which the table's harvest begins.
 *
 * Leeks cut from January belong to that January's year, maincrop carrots cut from September to that September's, whatever the year they
 * were sown in. A harvest is counted to the season it lies nearest to; the border lies midway between two seasons.
 */
import { dayAt, dayNumber, dayOf, yearOf } from '@leywright/measures';
import type { PlannedCrop } from '../plan/inputs.ts';
import { seasonDays } from './harvest-window.ts';

/** Year of the season to which a harvest beginning on that day belongs. */
export function harvestYearOf(crop: PlannedCrop, day: number): number {
  const year = yearOf(dayAt(day));
  if (crop.reference === null) return year;
  const { harvestFrom, harvestTo } = crop.reference;
  const next = seasonDays(harvestFrom, harvestTo, year + 1);
  const ours = seasonDays(harvestFrom, harvestTo, year);
  const last = seasonDays(harvestFrom, harvestTo, year - 1);
  if (day >= (ours.to + next.from) / 2) return year + 1;
  return day < (last.to + ours.from) / 2 ? year - 1 : year;
}

/** First day of the table's harvest in that year; the year's first day for a crop only this farm knows. */
export function seasonStart(crop: PlannedCrop, harvestYear: number): number {
  if (crop.reference === null) return dayNumber(dayOf(harvestYear, 1, 1));
  return seasonDays(crop.reference.harvestFrom, crop.reference.harvestTo, harvestYear).from;
}
