/**
 * Running thermal time over a span of days, so that "how much between" and "when is it reached" cost nothing more.
 *
 * Source  sums of degree-days.ts by the mean of the day (the base temperatures of the tables were fitted that way).
 * Checks  test/thermal-sums.test.ts (against plain day-by-day addition; reached day is the first)
 * Holds   sums never fall; what lies between two days is the difference of their sums.
 * Leaves out  the course of the day: with a night under the base the mean counts less than the sine does.
 */
import { dayAt } from '@leywright/measures';
import { normalIndex } from '../weather/daily-normals.ts';
import { dayLengthH } from '../weather/day-length.ts';
import type { WeatherSeries } from '../weather/weather-series.ts';

/** `sumCd[i]` is the thermal time of all days before `startDayNumber + i`; there is one sum more than days. */
export interface ThermalSums {
  readonly startDayNumber: number;
  readonly baseC: number;
  readonly sumCd: Float64Array;
}

export interface ThermalSettings {
  readonly baseC: number;
  /** Warmth above this counts no further. */
  readonly upperC?: number | null;
  /** Degrees added to the air: +3 °C in a tunnel (common practice). */
  readonly warmerByC?: number;
  /** With a latitude, days under ten hours count only `shortDayShare`: leafy growth stands still then (common practice, no source). */
  readonly restInShortDaysLatDeg?: number | null;
  /** 0 for leafy crops; `hardyShortDayShare` for covers that grow on through the winter. */
  readonly shortDayShare?: number;
}

/** What a tunnel adds to the mean temperature of the day. Common practice. */
export const tunnelWarmerByC = 3;

/**
 * What a short day counts for rye, vetch, ryegrass and other covers that grow on in winter. Fitted here, not published: covers of the table sown on
 * their last useful day then hold three tenths of the ground by the new year, and rye and vetch sown four weeks later do not.
 */
export const hardyShortDayShare = 0.3;

/** Sums over the days of a span of weather. */
export function thermalSums(weather: WeatherSeries, settings: ThermalSettings): ThermalSums {
  const { baseC, warmerByC = 0 } = settings;
  const upperC = settings.upperC ?? Number.POSITIVE_INFINITY;
  const sumCd = new Float64Array(weather.dayCount + 1);
  const shares = daySharesOf(settings);
  let index = weather.dayCount > 0 ? normalIndex(dayAt(weather.startDayNumber)) : 0;
  for (let at = 0; at < weather.dayCount; at++) {
    const tMeanC = ((weather.tMaxC[at] ?? 0) + (weather.tMinC[at] ?? 0)) / 2 + warmerByC;
    sumCd[at + 1] = (sumCd[at] ?? 0) + (shares[index] ?? 1) * Math.max(0, Math.min(tMeanC, upperC) - baseC);
    // Day length moves by minutes a day: being one day out after 28 February of a common year does not show.
    index = index === 365 ? 0 : index + 1;
  }
  return { startDayNumber: weather.startDayNumber, baseC, sumCd };
}

/** Thermal time (°C d) from the first day up to, not including, the second. Days outside the span count nothing. */
export function thermalTimeBetween(sums: ThermalSums, fromDayNumber: number, toDayNumber: number): number {
  return sumBefore(sums, toDayNumber) - sumBefore(sums, fromDayNumber);
}

/** The first day by whose evening the sum counted from the morning of `fromDayNumber` is reached; null when the span ends before. */
export function dayWhenReached(sums: ThermalSums, fromDayNumber: number, neededCd: number): number | null {
  const target = sumBefore(sums, fromDayNumber) + neededCd;
  const last = sums.sumCd.length - 1;
  if (fromDayNumber - sums.startDayNumber > last || (sums.sumCd[last] ?? 0) < target) return null;
  if (neededCd <= 0) return fromDayNumber;
  let low = Math.max(0, fromDayNumber - sums.startDayNumber);
  let high = last;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sums.sumCd[middle] ?? 0) >= target) high = middle;
    else low = middle + 1;
  }
  return Math.max(fromDayNumber, sums.startDayNumber + low - 1);
}

function sumBefore(sums: ThermalSums, dayNumber: number): number {
  const at = Math.min(Math.max(dayNumber - sums.startDayNumber, 0), sums.sumCd.length - 1);
  return sums.sumCd[at] ?? 0;
}

const everyDay = new Float64Array(366).fill(1);
const keptShares = new Map<string, Float64Array>();

/** What each day of the year counts: 1, or less where it is short and that was asked for. */
function daySharesOf({ restInShortDaysLatDeg = null, shortDayShare = 0 }: ThermalSettings): Float64Array {
  if (restInShortDaysLatDeg === null) return everyDay;
  const key = `${restInShortDaysLatDeg} ${shortDayShare}`;
  let shares = keptShares.get(key);
  if (shares === undefined) {
    shares = Float64Array.from({ length: 366 }, (_, at) =>
      dayLengthH(restInShortDaysLatDeg, at + 1) >= 10 ? 1 : shortDayShare,
    );
    keptShares.set(key, shares);
  }
  return shares;
}
