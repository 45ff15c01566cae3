/**
 * The weather of a span of days: the farm's own where it was recorded, the climate's mean day where not.
 *
 * Source  the farm's record, then the station's monthly normals (daily-normals.ts); nothing is drawn by chance here.
 * Checks  test/climate.test.ts (recorded days win; every day is marked; gaps are filled by quantity)
 * Holds   as many days as asked for, in order; a recorded value is never changed.
 * Leaves out  dry spells, frost nights and storms of the days that were not recorded: a mean year has none of them. Never use it for odds.
 */
import { type Day, dayAt, dayNumber } from '@leywright/measures';
import { type DailyNormals, normalIndex } from './daily-normals.ts';

/** A day's weather as recorded; null is not measured. */
export interface WeatherDay {
  readonly day: Day;
  readonly tMaxC: number | null;
  readonly tMinC: number | null;
  readonly rainMm: number | null;
  readonly solarMjM2?: number | null;
  readonly sunH?: number | null;
  readonly windMS?: number | null;
  readonly rhMeanPct?: number | null;
}

export const weatherOrigins = ['recorded', 'partly-recorded', 'climate', 'drawn'] as const;
export type WeatherOrigin = (typeof weatherOrigins)[number];

/** Weather by day number for inner loops; index 0 is `startDayNumber`. */
export interface WeatherSeries {
  readonly startDayNumber: number;
  readonly dayCount: number;
  readonly tMaxC: Float64Array;
  readonly tMinC: Float64Array;
  readonly rainMm: Float64Array;
  readonly solarMjM2: Float64Array;
  /** Index into `weatherOrigins`. */
  readonly originIndex: Uint8Array;
}

/** The weather of every day from the first to the last, both included. A day recorded twice counts as last recorded. */
export function weatherFor(
  span: { readonly from: Day; readonly to: Day },
  recorded: readonly WeatherDay[],
  normals: DailyNormals,
): WeatherSeries {
  const startDayNumber = dayNumber(span.from);
  const dayCount = Math.max(0, dayNumber(span.to) - startDayNumber + 1);
  const series = {
    startDayNumber,
    dayCount,
    tMaxC: new Float64Array(dayCount),
    tMinC: new Float64Array(dayCount),
    rainMm: new Float64Array(dayCount),
    solarMjM2: new Float64Array(dayCount),
    originIndex: new Uint8Array(dayCount).fill(weatherOrigins.indexOf('climate')),
  };
  fillFromNormals(series, normals);
  layRecordOver(series, recorded);
  return series;
}

/** Writes what was recorded over a series, be it of the climate or drawn: a recorded day always wins. */
export function layRecordOver(series: WeatherSeries, recorded: readonly WeatherDay[]): void {
  for (const day of recorded) {
    const at = dayNumber(day.day) - series.startDayNumber;
    if (at >= 0 && at < series.dayCount) overlay(series, at, day);
  }
}

/** Whether a day's weather was recorded, and how far. */
export function originOf(series: WeatherSeries, dayIndex: number): WeatherOrigin {
  return weatherOrigins[series.originIndex[dayIndex] ?? weatherOrigins.indexOf('climate')] ?? 'climate';
}

function fillFromNormals(series: WeatherSeries, normals: DailyNormals): void {
  let index = normalIndex(dayAt(series.startDayNumber));
  for (let at = 0; at < series.dayCount; at++) {
    // Once a year the calendar is asked whether there is a 29 February; between, days follow one another.
    if (at > 0) index = index === 58 || index === 365 ? normalIndex(dayAt(series.startDayNumber + at)) : index + 1;
    series.tMaxC[at] = normals.tMaxC[index] ?? 0;
    series.tMinC[at] = normals.tMinC[index] ?? 0;
    series.rainMm[at] = normals.rainMm[index] ?? 0;
    series.solarMjM2[at] = normals.solarMjM2[index] ?? 0;
  }
}

function overlay(series: WeatherSeries, at: number, day: WeatherDay): void {
  if (day.tMaxC !== null) series.tMaxC[at] = day.tMaxC;
  if (day.tMinC !== null) series.tMinC[at] = day.tMinC;
  if (day.rainMm !== null) series.rainMm[at] = day.rainMm;
  if (day.solarMjM2 !== null && day.solarMjM2 !== undefined) series.solarMjM2[at] = day.solarMjM2;
  const main = [day.tMaxC, day.tMinC, day.rainMm].filter((value) => value !== null).length;
  if (main > 0) series.originIndex[at] = weatherOrigins.indexOf(main === 3 ? 'recorded' : 'partly-recorded');
}
