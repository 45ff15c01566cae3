/**
 * When a pest is due: warmth above its base, summed from its day of reckoning.
 *
 * Source  rows of reference/pest-models.csv, each with its own study; day sums by the single sine (Baskerville & Emin 1969) with a horizontal cut-off where
 *         a row gives one. The authors took the mean or the sine; at a base of 4-7 °C they differ by under 5 % after April (common practice).
 * Checks  test/pest-sums.test.ts (constant warmth just met and just missed on the day reckoned by hand for every row; both hemispheres; Seattle 2012-2015)
 * Holds   the event falls on the first day whose evening has the sum; warmer weather never makes it later.
 * Leaves out  what the fly itself asks besides warmth (diapause, day length, wind on the day of flight). Calibrate with your own first catch.
 */
import { dayInYear, dayNumber, type MonthDay, readMonthDay } from '@leywright/measures';
import { degreeDaysBySine, degreeDaysBySineCutOff } from '../growth/degree-days.ts';
import type { PestModel } from '../reference/pest-columns.ts';
import { reference } from '../reference/reference.ts';
import { stepSoilTemperatureC } from '../soil/soil-temperature.ts';

/** Days of weather without a gap from a first day on; null is not known. */
export interface PestWeather {
  readonly firstDay: number;
  readonly tMinC: ArrayLike<number | null>;
  readonly tMaxC: ArrayLike<number | null>;
}

export interface PestPlace {
  /** South is negative: calendar days of reckoning fall half a year later. */
  readonly latDeg: number;
  /** Days on which the grower recorded what a row reckons from (first eggs, flies of a generation), by model id. */
  readonly recorded?: ReadonlyMap<string, number>;
}

export const pestStates = ['met', 'under-way', 'not-yet', 'not-begun', 'condition', 'cannot-say'] as const;

export interface PestDue {
  readonly model: string;
  readonly pest: string;
  readonly event: string;
  readonly state: (typeof pestStates)[number];
  /** Day the sum is counted from; null where the grower has to record it. */
  readonly fromDay: number | null;
  /** First day with the lower sum, and with the upper one. */
  readonly metDay: number | null;
  readonly doneDay: number | null;
  /** Sum at the end of the days given. */
  readonly sumCd: number;
  readonly needCd: number | null;
  /** Published mean error in days where there is one, else a week (common practice). */
  readonly errorDays: number;
  readonly why:
    | 'record-what-it-counts-from'
    | 'waits-for-another-event'
    | 'weather-missing'
    | 'no-sum-published'
    | null;
}

/** Every degree-day and threshold row for a year, in the order of the table. */
export function pestsDue(weather: PestWeather, place: PestPlace, year: number): readonly PestDue[] {
  const due = new Map<string, PestDue>();
  for (const model of reference.pestModels.values()) {
    if (model.ruleType !== 'humidity_rule') due.set(model.id, pestDue(model, weather, { ...place, year, due }));
  }
  return [...due.values()];
}

interface Asked extends PestPlace {
  readonly year: number;
  readonly due: ReadonlyMap<string, PestDue>;
}

function pestDue(model: PestModel, weather: PestWeather, asked: Asked): PestDue {
  const { id, pestId, event, sumLowCd, sumHighCd, baseC } = model;
  const blank = { model: id, pest: pestId, event, metDay: null, doneDay: null, sumCd: 0, needCd: sumLowCd };
  const errorDays = errorOf(model);
  if (sumLowCd === null || baseC === null)
    return { ...blank, fromDay: null, errorDays, state: 'condition', why: 'no-sum-published' };
  const start = startOf(model, asked);
  if (typeof start === 'string') return { ...blank, fromDay: null, errorDays, state: 'not-begun', why: start };
  const run = sumFrom(model, weather, start);
  const metDay = run.dayOf(sumLowCd);
  const doneDay = run.dayOf(sumHighCd ?? sumLowCd);
  const isGap = metDay === null && run.isBroken;
  const state = metDay === null ? (isGap ? 'cannot-say' : 'not-yet') : doneDay === null ? 'under-way' : 'met';
  return {
    ...blank,
    fromDay: start,
    metDay,
    doneDay,
    sumCd: run.sumCd,
    errorDays,
    state,
    why: isGap ? 'weather-missing' : null,
  };
}

function startOf(model: PestModel, asked: Asked): number | NonNullable<PestDue['why']> {
  const recorded = asked.recorded?.get(model.id);
  if (recorded !== undefined) return recorded;
  const biofix = model.biofix ?? '';
  const monthDay = readMonthDay(biofix);
  if (monthDay !== null) return calendarStart(monthDay, asked);
  const [, other] = /^event (.+)$/.exec(biofix) ?? [];
  if (other === undefined) return 'record-what-it-counts-from';
  return asked.due.get(other)?.metDay ?? 'waits-for-another-event';
}

/** A day of the calendar, half a year later south of the equator (of the year before when that is the season's beginning). */
function calendarStart(monthDay: MonthDay, { latDeg, year }: Asked): number {
  if (latDeg >= 0) return dayNumber(dayInYear(monthDay, year));
  const month = Number(monthDay.slice(0, 2));
  const south = ((month + 5) % 12) + 1;
  const southern = `${String(south).padStart(2, '0')}${monthDay.slice(2)}` as unknown as MonthDay;
  return dayNumber(dayInYear(southern, month <= 6 ? year - 1 : year));
}

interface Sum {
  readonly sumCd: number;
  readonly isBroken: boolean;
  readonly dayOf: (needCd: number) => number | null;
}

/** A rounding of the last place is not a day. */
const hairCd = 1e-6;

function sumFrom(model: PestModel, weather: PestWeather, start: number): Sum {
  const dayCount = weather.tMinC.length;
  const sums: number[] = [];
  let sumCd = 0;
  let at = start - weather.firstDay;
  const soil = isSoil(model) ? soilDays(weather) : null;
  const isBefore = at < 0;
  for (; !isBefore && at < dayCount; at++) {
    const ends =
      soil === null ? { tMin: weather.tMinC[at], tMax: weather.tMaxC[at] } : { tMin: soil[at], tMax: soil[at] };
    if (ends.tMin == null || ends.tMax == null) break;
    sumCd += dayCd(model, { tMin: ends.tMin, tMax: ends.tMax });
    sums.push(sumCd);
  }
  return {
    sumCd,
    isBroken: isBefore || at < dayCount,
    dayOf: (needCd) => {
      const found = sums.findIndex((one) => one >= needCd - hairCd);
      return found === -1 ? null : start + found;
    },
  };
}

function dayCd({ baseC, upperC }: PestModel, ends: { readonly tMin: number; readonly tMax: number }): number {
  return upperC === null ? degreeDaysBySine(ends, baseC ?? 0) : degreeDaysBySineCutOff(ends, baseC ?? 0, upperC);
}

function isSoil({ temperature }: PestModel): boolean {
  return temperature?.startsWith('soil') ?? false;
}

/** Bare ground at a few centimetres, from the air: one model for 5 and 6 cm. Null from the first day that is not known. */
function soilDays({ tMinC, tMaxC }: PestWeather): readonly (number | null)[] {
  const air = Array.from({ length: tMinC.length }, (_, at) => {
    const [low, high] = [tMinC[at], tMaxC[at]];
    return low == null || high == null ? null : (low + high) / 2;
  });
  const known = air.flatMap((airC) => (airC === null ? [] : [airC]));
  const yearMeanC = known.reduce((sum, airC) => sum + airC, 0) / Math.max(1, known.length);
  let soilC: number | null = air[0] ?? null;
  return air.map((airC) => {
    soilC = airC === null || soilC === null ? null : stepSoilTemperatureC(soilC, { airC, yearMeanC, coverShare: 0 });
    return soilC;
  });
}

const usualErrorDays = 7;

/** "mean error 1.5 days" in the notes of a row. */
function errorOf({ notes }: PestModel): number {
  const [, days] = /mean error (\d+(?:\.\d+)?) days?/.exec(notes ?? '') ?? [];
  return days === undefined ? usualErrorDays : Number(days);
}
