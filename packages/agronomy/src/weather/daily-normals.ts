/**
 * Daily normals from monthly ones: a smooth year whose months keep their means.
 *
 * Source  periodic cubic spline through the running sum at the ends of months (its slope is smooth and every month's sum is kept); own construction.
 *         Radiation: the station's; else FAO-56 eq. 35 from sunshine, else eq. 50 from the range of temperature.
 * Checks  test/climate.test.ts (means of all months of all stations to 1e-9; no step over new year; rain and radiation never negative)
 * Holds   mean of each month's days = the month's normal, in a year of 366 days.
 * Leaves out  everything that makes weather of a climate: these are means, with no wet day and no dry one.
 */
import { type Day, dayOfYear, monthOf, yearOf } from '@leywright/measures';
import type { ByMonth, ClimateStation } from './climate.ts';
import {
  extraterrestrialMjM2,
  solarFromSunshineMjM2,
  solarFromTemperatureMjM2,
  sunHoursPossible,
  temperatureRadiationFactors,
} from './radiation.ts';

const monthDays = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** 366 values each, index 0 = 1 January, 59 = 29 February. */
export interface DailyNormals {
  readonly station: ClimateStation;
  readonly tMaxC: Float64Array;
  readonly tMinC: Float64Array;
  readonly rainMm: Float64Array;
  readonly solarMjM2: Float64Array;
  readonly solarFrom: 'measured' | 'sunshine' | 'temperature-range';
}

/** The smooth year of a station. */
export function dailyNormals(station: ClimateStation): DailyNormals {
  const { solar, solarFrom } = solarByMonth(station);
  return {
    station,
    tMaxC: spreadOverYear(station.tMaxC),
    tMinC: spreadOverYear(station.tMinC),
    rainMm: notBelowNought(spreadOverYear(station.rainMm.map((mm, month) => mm / (monthDays[month] ?? 30)))),
    solarMjM2: notBelowNought(spreadOverYear(solar)),
    solarFrom,
  };
}

/** Where a day's normals stand: common years pass over 29 February. */
export function normalIndex(day: Day): number {
  const index = dayOfYear(day) - 1;
  const year = yearOf(day);
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return !isLeap && monthOf(day) > 2 ? index + 1 : index;
}

/** 366 daily values whose monthly means are those given. */
export function spreadOverYear(byMonth: ByMonth): Float64Array {
  const yearMean = byMonth.reduce((sum, mean, month) => sum + mean * (monthDays[month] ?? 0), 0) / 366;
  // Without the year's mean the running sum comes home to nought on 31 December, so the spline may close on itself.
  const ends = new Float64Array(13);
  for (let month = 0; month < 12; month++)
    ends[month + 1] = (ends[month] ?? 0) + ((byMonth[month] ?? 0) - yearMean) * (monthDays[month] ?? 0);
  const bends = periodicSplineBends(ends);
  const values = new Float64Array(366);
  let day = 0;
  for (let month = 0; month < 12; month++) {
    const length = monthDays[month] ?? 30;
    const runningSum = (x: number) =>
      splineAt(x, length, [ends[month] ?? 0, ends[month + 1] ?? 0, bends[month] ?? 0, bends[(month + 1) % 12] ?? 0]);
    for (let at = 0; at < length; at++) values[day++] = yearMean + runningSum(at + 1) - runningSum(at);
  }
  return values;
}

function splineAt(
  x: number,
  length: number,
  [from, to, bendFrom, bendTo]: readonly [number, number, number, number],
): number {
  const b = x / length;
  const a = 1 - b;
  return a * from + b * to + (((a ** 3 - a) * bendFrom + (b ** 3 - b) * bendTo) * length * length) / 6;
}

/** Second derivatives at the twelve month ends of the cubic spline that closes on itself, by plain elimination. */
function periodicSplineBends(ends: Float64Array): Float64Array {
  const n = 12;
  const rows = Array.from({ length: n }, (_, i) => {
    const row = new Float64Array(n + 1);
    const before = monthDays[(i + n - 1) % n] ?? 30;
    const after = monthDays[i] ?? 30;
    row[(i + n - 1) % n] = before / 6;
    row[i] = (before + after) / 3;
    row[(i + 1) % n] = after / 6;
    const here = ends[i] ?? 0;
    row[n] =
      ((ends[i + 1] ?? 0) - here) / after - (here - (i === 0 ? (ends[n - 1] ?? 0) : (ends[i - 1] ?? 0))) / before;
    return row;
  });
  return solve(rows, n);
}

/** The rows' own diagonal is always the largest, so no rows need to change places. */
function solve(rows: readonly Float64Array[], n: number): Float64Array {
  rows.forEach((pivot, i) => {
    for (const row of rows.slice(i + 1)) takeAway(row, pivot, i);
  });
  const x = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    const row = rows[i] ?? x;
    let sum = row[n] ?? 0;
    for (let j = i + 1; j < n; j++) sum -= (row[j] ?? 0) * (x[j] ?? 0);
    x[i] = sum / (row[i] ?? 1);
  }
  return x;
}

function takeAway(row: Float64Array, pivot: Float64Array, column: number): void {
  const factor = (row[column] ?? 0) / (pivot[column] ?? 1);
  for (let j = column; j < row.length; j++) row[j] = (row[j] ?? 0) - factor * (pivot[j] ?? 0);
}

/** Radiation a day by month: the station's own, else from its sunshine, else from the range of temperature. */
export function solarByMonth(station: ClimateStation): { solar: ByMonth; solarFrom: DailyNormals['solarFrom'] } {
  if (station.solarMjM2 !== null) return { solar: station.solarMjM2, solarFrom: 'measured' };
  const sunH = station.sunH;
  const solar = monthDays.map((length, month) => {
    const middle = middleOfMonth(month);
    const raMjM2 = extraterrestrialMjM2(station.latDeg, middle);
    if (sunH !== null)
      return solarFromSunshineMjM2(
        raMjM2,
        (sunH[month] ?? 0) / (month === 1 ? 28.25 : length),
        sunHoursPossible(station.latDeg, middle),
      );
    return solarFromTemperatureMjM2(
      raMjM2,
      (station.tMaxC[month] ?? 0) - (station.tMinC[month] ?? 0),
      temperatureRadiationFactors.interior,
    );
  });
  return { solar, solarFrom: sunH === null ? 'temperature-range' : 'sunshine' };
}

function middleOfMonth(month: number): number {
  return monthDays.slice(0, month).reduce((sum, days) => sum + days, 0) + 15;
}

/** A very dry month beside a wet one may pull the curve a hair under nought: no day has less than no rain. */
function notBelowNought(values: Float64Array): Float64Array {
  return values.map((value) => Math.max(0, value));
}
