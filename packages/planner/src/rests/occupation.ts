/**
 * When and how stands count as hosts, and the years they occupy.
 *
 * Rule    A crop stands for itself; a cover as a cover; what is undersown as undersown until its host is off, and from then a ley for itself and any other as a
 *         cover. A stand occupies each year in which it stands on any day of the farm's rest season. Where that season wraps over
 *         new year (south of the equator) the year is the one the season begins in, for plantings too.
 */
import { returnInterval } from '@leywright/agronomy';
import { dayAt, dayInYear, dayNumber, endOfWindow, type MonthDay, yearOf } from '@leywright/measures';
import type { GroundStand } from '../ground/ground-stand.ts';
import type { WayOfStanding } from './rules.ts';

export interface RestSeason {
  readonly from: MonthDay;
  readonly to: MonthDay;
}

/** A time in which a stand counts in one way. */
export interface Occupation {
  readonly one: GroundStand;
  readonly countsAs: WayOfStanding;
  readonly fromDay: number;
  readonly toDay: number;
  /** Year it was sown or planted in, or in which it began to stand for itself. */
  readonly plantingYear: number;
  /** Null for a stand of winter months alone. */
  readonly lastYear: number | null;
}

export function occupationsOf(one: GroundStand, host: GroundStand | null, season: RestSeason): readonly Occupation[] {
  const make = (countsAs: WayOfStanding, fromDay: number, toDay: number): Occupation => ({
    one,
    countsAs,
    fromDay,
    toDay,
    plantingYear: seasonYear(fromDay, season),
    lastYear: lastOccupiedYear(fromDay, toDay, season),
  });
  const { kind } = one.stand;
  if (kind === 'crop') return [make('own', one.fromDay, one.toDay)];
  const alone: WayOfStanding = kind === 'ley' ? 'own' : 'cover';
  if (host === null) return [make(alone, one.fromDay, one.toDay)];
  const parted = Math.min(one.toDay, Math.max(one.fromDay, host.toDay));
  const under = parted > one.fromDay ? [make('undersown', one.fromDay, parted)] : [];
  return parted < one.toDay ? [...under, make(alone, parted, one.toDay)] : under;
}

function wraps(season: RestSeason): boolean {
  return season.to < season.from;
}

/** The year a planting counts for. */
export function seasonYear(day: number, season: RestSeason): number {
  const year = yearOf(dayAt(day));
  return wraps(season) && day < dayNumber(dayInYear(season.from, year)) ? year - 1 : year;
}

/** The last year a stand of these days occupies. */
export function lastOccupiedYear(fromDay: number, toDay: number, season: RestSeason): number | null {
  const lastDay = dayAt(toDay - 1);
  if (!wraps(season)) return returnInterval.lastOccupiedYear(dayAt(fromDay), lastDay, season);
  for (let year = yearOf(lastDay); year >= yearOf(dayAt(fromDay)) - 1; year--) {
    const opens = dayNumber(dayInYear(season.from, year));
    const closes = dayNumber(endOfWindow(season.to, year + 1));
    if (fromDay <= closes && toDay > opens) return year;
  }
  return null;
}
