/**
 * The strips of a first rotation moved to a farm's place: starts into the local sowing and planting windows, ends so early that a cover can
 * still be sown after them.
 *
 * Source  windows and latest sowing days of the reference tables, moved by latitude and height as in crops/season.ts.
 */
import { reference } from '@leywright/agronomy';
import type { Place } from '@leywright/book';
import {
  addDays,
  asDay,
  asMonthDay,
  dayAt,
  dayInYear,
  dayNumber,
  daysBetween,
  type MonthDay,
  monthDayOf,
} from '@leywright/measures';
import { seasonShiftDays, windowAround } from '../crops/season.ts';
import type { FirstCourse, Strip } from './strips.ts';

type Spot = Pick<Place, 'latDeg' | 'elevationM'>;

/** Any common year: only month and day are kept. */
export const someYear = 2001;
/** From lifting to the next sowing. */
export const daysToSow = 2;

export function courseAt(course: FirstCourse, spot: Spot): FirstCourse {
  return { ...course, strips: course.strips.map((strip) => stripAt(strip, spot)) };
}

function stripAt(strip: Strip, spot: Spot): Strip {
  const written = strip.plant ?? strip.sow;
  const start =
    written === undefined ? undefined : startAt(strip.what, written, { isPlanted: strip.plant !== undefined, spot });
  const later = written === undefined || start === undefined ? 0 : daysBetween(dayOf(written), dayOf(start));
  const { under } = strip;
  return {
    ...strip,
    ...(strip.plant === undefined ? { sow: start } : { plant: start }),
    end:
      strip.under === undefined && strip.endYearOffset === undefined
        ? earlier(strip.end, lastLifting(spot))
        : strip.end,
    ...(under === undefined ? {} : { under: { ...under, sow: monthDayOf(addDays(dayOf(under.sow), later)) } }),
  } as Strip;
}

/** The day itself when it lies in the local window, else the nearest day that does. */
export function startAt(
  what: string,
  written: string,
  { isPlanted, spot }: { readonly isPlanted: boolean; readonly spot: Spot },
): string {
  const dates = windowDates(what, isPlanted);
  if (dates === null) return written;
  const window = windowAround(dates, dayOf(written), spot);
  const day = dayNumber(dayOf(written));
  return monthDayOf(dayAt(Math.max(window.fromDay, Math.min(day, Math.max(window.toDay, window.fromDay)))));
}

function windowDates(what: string, isPlanted: boolean): readonly [MonthDay, MonthDay] | null {
  const cover = reference.covers.get(what);
  const crop = reference.crops.get(what);
  const [from, to] =
    cover !== undefined
      ? [cover.sowFrom, cover.sowTo]
      : isPlanted
        ? [crop?.plantFrom, crop?.plantTo]
        : [crop?.sowOutFrom, crop?.sowOutTo];
  return from === undefined || from === null || to === undefined || to === null ? null : [from, to];
}

/** Last day on which this cover still holds the ground by winter here, month and day. */
export function lastCoverSowing(cover: string, spot: Spot): string {
  const latest = reference.covers.get(cover)?.latestWinterCoverSow ?? null;
  if (latest === null) throw new Error(`The covers table has no latest winter sowing for "${cover}".`);
  return monthDayOf(addDays(dayInYear(latest, someYear), -Math.max(0, seasonShiftDays(spot))));
}

function lastLifting(spot: Spot): string {
  return monthDayOf(addDays(dayOf(lastCoverSowing('grazing-rye', spot)), -daysToSow));
}

function earlier(a: string, b: string): string {
  return a < b ? a : b;
}

function dayOf(monthDay: string) {
  return asDay(dayInYear(asMonthDay(monthDay), someYear));
}
