/**
 * Temperature of the soil: the top 30 cm by a lag behind the air, below that by the damped wave of the year.
 *
 * Source  lag on air temperature after Zheng, Hunt & Running 1993, Climate Research 2:183 (form read where it is cited; factor 0.25 recalled), with one
 *         term for bare ground fitted here to Rothamsted's long-term means; wave: van Wijk & de Vries 1963, Campbell & Norman 1998 (recalled).
 * Checks  test/checks/soil.csv st-01 to st-06 (Rothamsted, 10, 20 and 30 cm: worst month 1.1 °C off); test/soil-temperature.test.ts
 * Holds   full cover follows the air alone; the deeper, the smaller and later the wave.
 * Leaves out  snow, slope, plastic and fleece (2-5 °C warmer, common practice). One day may be 1.5 °C off at 10 cm.
 */

/** How far bare ground leaves the air: warmer in summer, colder in winter. Fitted here. */
export const bareGroundFactor = 0.12;
/** Share of the way to the surface temperature gone in a day, 5-30 cm. */
export const dailyLagFactor = 0.25;
/** Depth at which the year's wave has shrunk to a third: Wageningen 1.8 m under grass (Jacobs et al. 2011); 1.8-2.3 m usual. */
export const yearDampingDepthM = 2;

/** Depth (m) at which a wave of a period has fallen to 1/e. */
export function dampingDepthM(diffusivityM2PerS: number, periodS: number): number {
  return Math.sqrt((diffusivityM2PerS * periodS) / Math.PI);
}

/** The wave of the year at the surface. */
export interface SoilWave {
  readonly meanC: number;
  readonly amplitudeC: number;
  readonly warmestDayOfYear: number;
  readonly dampingDepthM: number;
}

/** Temperature (°C) of the wave at a depth on a day of the year. */
export function waveTemperatureC(wave: SoilWave, depthM: number, dayOfYear: number): number {
  const inDepths = depthM / wave.dampingDepthM;
  const turn = (2 * Math.PI * (dayOfYear - wave.warmestDayOfYear)) / 365 - inDepths;
  return wave.meanC + wave.amplitudeC * Math.exp(-inDepths) * Math.cos(turn);
}

/** The wave that fits twelve monthly means best. */
export function waveOfMonths(monthC: readonly number[], depthDampingM: number = yearDampingDepthM): SoilWave {
  const angle = (month: number) => (2 * Math.PI * (month + 0.5)) / 12;
  const meanC = monthC.reduce((sum, value) => sum + value, 0) / 12;
  const a = monthC.reduce((sum, value, month) => sum + value * Math.cos(angle(month)), 0) / 6;
  const b = monthC.reduce((sum, value, month) => sum + value * Math.sin(angle(month)), 0) / 6;
  const warmestDayOfYear = ((365 * Math.atan2(b, a)) / (2 * Math.PI) + 365) % 365;
  return { meanC, amplitudeC: Math.hypot(a, b), warmestDayOfYear, dampingDepthM: depthDampingM };
}

/** The day's temperature (°C) of the top 30 cm from yesterday's. */
export function stepSoilTemperatureC(
  yesterdayC: number,
  day: { readonly airC: number; readonly yearMeanC: number; readonly coverShare: number },
  factors: { readonly bareGroundFactor: number; readonly lagFactor: number } = {
    bareGroundFactor,
    lagFactor: dailyLagFactor,
  },
): number {
  const surfaceC = day.airC + factors.bareGroundFactor * (1 - day.coverShare) * (day.airC - day.yearMeanC);
  return yesterdayC + factors.lagFactor * (surfaceC - yesterdayC);
}

const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Twelve means of the soil (°C) from twelve of the air: air on straight lines between mid-months, the second year taken. */
export function soilMonthsC(
  airMonthC: readonly number[],
  factors: { readonly bareGroundFactor: number; readonly lagFactor: number },
): readonly number[] {
  const air = dailyBetweenMidMonths(airMonthC);
  const yearMeanC = air.reduce((sum, value) => sum + value, 0) / air.length;
  let soilC = yearMeanC;
  const daily = [...air, ...air].map((airC) => {
    soilC = stepSoilTemperatureC(soilC, { airC, yearMeanC, coverShare: 0 }, factors);
    return soilC;
  });
  let at = air.length;
  return monthDays.map((length) => {
    const days = daily.slice(at, at + length);
    at += length;
    return days.reduce((sum, value) => sum + value, 0) / length;
  });
}

function dailyBetweenMidMonths(monthC: readonly number[]): readonly number[] {
  let start = 0;
  const middles = monthDays.map((length) => {
    start += length;
    return start - length / 2;
  });
  return Array.from({ length: 365 }, (_, day) => {
    const now = day + 0.5;
    const next = middles.findIndex((middle) => middle > now);
    const to = next === -1 ? 0 : next;
    const from = (to + 11) % 12;
    const fromDay = (middles[from] ?? 0) - (to === 0 && next === 0 ? 365 : 0);
    const toDay = (middles[to] ?? 0) + (next === -1 ? 365 : 0);
    const share = (now - fromDay) / (toDay - fromDay);
    return (monthC[from] ?? 0) * (1 - share) + (monthC[to] ?? 0) * share;
  });
}
