/**
 * Hours of a day from its two ends: the temperature by the hour of the sun, and how moist the air then is.
 *
 * Source  Parton & Logan 1981, Agricultural Meteorology 23:205, in the form of Wann, Yen & Gold 1985 (read in published code): a sine by day, an exponential
 *         fall by night. The published night leaves a ninth of the fall undone at sunrise; here it ends at the lowest temperature (formula ours).
 *         Humidity: vapour of the day held even, FAO-56 eqs 10 and 11.
 * Checks  test/checks/pests.csv hr-01, hr-02; test/hours-of-day.test.ts (the day's two ends are met, the night never rises)
 * Holds   between the lowest and the highest temperature of the day and of the morning after; humidity 0 .. 100 %.
 * Leaves out  fronts, clouds, rain and dew: hours that were measured always win.
 */
import { dayLengthFaoH } from './day-length.ts';
import { saturationKpa } from './vapour-pressure.ts';

/** How long after noon it is warmest, how fast the night cools, and how long after sunrise it is coldest. */
export interface HourShape {
  readonly warmestAfterNoonH: number;
  readonly nightFallFactor: number;
  readonly coldestAfterSunriseH: number;
}

/** Air at 1.5 m (Parton & Logan 1981); the second set is that of Wann et al. 1985. */
export const airShape: HourShape = { warmestAfterNoonH: 1.86, nightFallFactor: 2.2, coldestAfterSunriseH: -0.17 };
export const airShapeWann: HourShape = { warmestAfterNoonH: 2.59, nightFallFactor: 2.2, coldestAfterSunriseH: 1.55 };

export interface DayEnds {
  readonly latDeg: number;
  readonly dayOfYear: number;
  readonly tMinC: number;
  readonly tMaxC: number;
  /** Lowest temperature of the coming morning. */
  readonly tMinNextC: number;
  /** Temperature at yesterday's sunset; today's stands for it when left out. */
  readonly sunsetBeforeC?: number;
}

/** Temperature (°C) at an hour of local solar time, 0 to 24. Null where the sun does not rise or does not set: the form knows no such day. */
export function temperatureAtHourC(day: DayEnds, hourH: number, shape: HourShape = airShape): number | null {
  const sun = sunOf(day, shape);
  if (sun === null) return null;
  if (hourH >= sun.coldestAtH && hourH <= sun.setsAtH) return byDayC(day, hourH, sun, shape);
  const isMorning = hourH < sun.coldestAtH;
  const todaySetC = byDayC(day, sun.setsAtH, sun, shape);
  const setC = isMorning ? (day.sunsetBeforeC ?? todaySetC) : todaySetC;
  const lowestC = isMorning ? day.tMinC : day.tMinNextC;
  const sinceSetH = isMorning ? hourH + 24 - sun.setsAtH : hourH - sun.setsAtH;
  return lowestC + (setC - lowestC) * leftOfFall(sinceSetH / sun.nightH, shape.nightFallFactor);
}

/** Temperature (°C) as the sun sets on a day. */
export function sunsetTemperatureC(day: DayEnds, shape: HourShape = airShape): number | null {
  const sun = sunOf(day, shape);
  return sun === null ? null : byDayC(day, sun.setsAtH, sun, shape);
}

/** Relative humidity (%) of air with a vapour pressure, never above 100. */
export function humidityAtPct(temperatureC: number, vapourKpa: number): number {
  return Math.min(100, (100 * vapourKpa) / saturationKpa(temperatureC));
}

interface Sun {
  readonly coldestAtH: number;
  readonly setsAtH: number;
  readonly lightH: number;
  readonly nightH: number;
}

/** A day or a night shorter than this is none that the form can draw. */
const shortestH = 1;

function sunOf({ latDeg, dayOfYear }: DayEnds, shape: HourShape): Sun | null {
  const lightH = dayLengthFaoH(latDeg, dayOfYear);
  const nightH = 24 - lightH + shape.coldestAfterSunriseH;
  if (lightH - shape.coldestAfterSunriseH < shortestH || nightH < shortestH) return null;
  return {
    coldestAtH: 12 - lightH / 2 + shape.coldestAfterSunriseH,
    setsAtH: 12 + lightH / 2,
    lightH,
    nightH,
  };
}

function byDayC({ tMinC, tMaxC }: DayEnds, hourH: number, sun: Sun, shape: HourShape): number {
  const wavesH = sun.lightH + 2 * (shape.warmestAfterNoonH - shape.coldestAfterSunriseH);
  return tMinC + (tMaxC - tMinC) * Math.sin((Math.PI * (hourH - sun.coldestAtH)) / wavesH);
}

/** 1 at sunset, 0 as the night ends. */
function leftOfFall(nightShare: number, fallFactor: number): number {
  const end = Math.exp(-fallFactor);
  return (Math.exp(-fallFactor * nightShare) - end) / (1 - end);
}
