/**
 * The days on which a crop or cover may be sown or planted at a farm's latitude and height.
 *
 * Source  sow_ and plant_ columns of reference/crops.csv and covers.csv, for lowland England (52° N, below 150 m): "add 7-10 days per 2 degrees north or
 *         150 m up in spring, take off in autumn" (reference/README.md). South of the equator the seasons lie half a year away.
 * Holds   nothing is judged nearer the equator than 40° or beyond 62°: the tables know no seasons there.
 */

import type { Place, Stand } from '@leywright/book';
import {
  asMonthDay,
  type Day,
  dayAt,
  dayInYear,
  dayNumber,
  endOfWindow,
  type MonthDay,
  yearOf,
} from '@leywright/measures';
import type { Plant } from './plant.ts';

/** Day numbers, both ends included. */
export interface SowingWindow {
  readonly fromDay: number;
  readonly toDay: number;
}

const tableLatDeg = 52;
const judgedFromLatDeg = 40;
const judgedToLatDeg = 62;
const daysPerDegree = 8.5 / 2;
const daysPerM = 8.5 / 150;
const tableHeightM = 150;

/** Whether the tables' windows say anything about this place. */
export function hasTableSeasons(place: Pick<Place, 'latDeg'>): boolean {
  const lat = Math.abs(place.latDeg);
  return lat >= judgedFromLatDeg && lat <= judgedToLatDeg;
}

/** How many days spring comes later here than in the tables, and autumn earlier; negative where it is milder. */
export function seasonShiftDays(place: Pick<Place, 'latDeg' | 'elevationM'>): number {
  const aboveM = Math.max(0, (place.elevationM ?? 0) - tableHeightM);
  return Math.round((Math.abs(place.latDeg) - tableLatDeg) * daysPerDegree + aboveM * daysPerM);
}

/** The window a stand's start should lie in: the one about its day. Null where the table has none. */
export function windowOfStand(
  plant: Plant,
  stand: Pick<Stand, 'sownOn' | 'plantedOn' | 'from'>,
  place: Place,
): SowingWindow | null {
  if (!hasTableSeasons(place)) return null;
  const dates = tableDates(plant, stand.plantedOn !== null);
  return dates === null ? null : windowAround(dates, startOf(stand), place);
}

/** The day a stand goes into its own ground. */
export function startOf(stand: Pick<Stand, 'sownOn' | 'plantedOn' | 'from'>): Day {
  return stand.plantedOn ?? stand.from;
}

type Dates = readonly [from: MonthDay, to: MonthDay];

function tableDates(plant: Plant, isPlanted: boolean): Dates | null {
  if (plant.cover !== null) return [plant.cover.sowFrom, plant.cover.sowTo];
  if (plant.crop === null) return null;
  const { plantFrom, plantTo, sowOutFrom, sowOutTo } = plant.crop;
  const planted = plantFrom === null || plantTo === null ? null : ([plantFrom, plantTo] as const);
  const sown = sowOutFrom === null || sowOutTo === null ? null : ([sowOutFrom, sowOutTo] as const);
  // Tubers and sets are planted whatever the record calls it; what is drilled only is sown.
  return isPlanted ? (planted ?? sown) : (sown ?? planted);
}

/** The window of the year nearest to a day, moved to the farm's place. */
export function windowAround([from, to]: Dates, day: Day, place: Pick<Place, 'latDeg' | 'elevationM'>): SowingWindow {
  const number = dayNumber(day);
  let best: SowingWindow | null = null;
  for (let year = yearOf(day) - 1; year <= yearOf(day) + 1; year++) {
    const window = windowInYear([from, to], year, place);
    if (best === null || distanceTo(window, number) < distanceTo(best, number)) best = window;
  }
  return best ?? windowInYear([from, to], yearOf(day), place);
}

/** Days by which a day lies outside a window; 0 inside. */
export function distanceTo(window: SowingWindow, day: number): number {
  return Math.max(0, window.fromDay - day, day - window.toDay);
}

const halfYearDays = 182;

function windowInYear([from, to]: Dates, year: number, place: Pick<Place, 'latDeg' | 'elevationM'>): SowingWindow {
  const flip = place.latDeg < 0 ? halfYearDays : 0;
  const opens = dayNumber(dayInYear(from, year));
  const closes = dayNumber(endOfWindow(to, to < from ? year + 1 : year));
  const shift = seasonShiftDays(place);
  return {
    fromDay: opens + flip + (from < midsummer ? shift : 0),
    toDay: closes + flip + (to >= midsummer ? -shift : 0),
  };
}

const midsummer = asMonthDay('06-21');

/** A single date of the tables in the year nearest to a day, moved as the end of a window. */
export function lastDayNear(date: MonthDay, day: Day, place: Pick<Place, 'latDeg' | 'elevationM'>): Day {
  return dayAt(windowAround([date, date], day, place).toDay);
}
