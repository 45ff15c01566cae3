/**
 * The weather of a span made ready for the soil run: reference evapotranspiration and short days worked out once for all parts of a farm.
 *
 * Source  weather/reference-evapotranspiration.ts by temperature and radiation; short days: weather/day-length.ts.
 * Checks  test/run-soil.test.ts (each day's ETo is that of the model)
 * Holds   as many days as the series.
 * Leaves out  wind and humidity: the series carries none, so the ladder's lower rungs stand in.
 */
import { dayAt, dayOfYear } from '@leywright/measures';
import type { SoilWeather } from '../soil/soil-part.ts';
import { dayLengthH } from '../weather/day-length.ts';
import { referenceEvapotranspiration, type WeatherPlace } from '../weather/reference-evapotranspiration.ts';
import type { WeatherSeries } from '../weather/weather-series.ts';

/** Makes a series ready. */
export function soilWeather(series: WeatherSeries, place: WeatherPlace): SoilWeather {
  const { dayCount, startDayNumber, tMaxC, tMinC } = series;
  const etoMm = new Float64Array(dayCount);
  const shortDayCount = new Uint8Array(dayCount);
  let warmth = 0;
  for (let at = 0; at < dayCount; at++) {
    const ofYear = dayOfYear(dayAt(startDayNumber + at));
    const day = {
      dayOfYear: ofYear,
      tMaxC: tMaxC[at] ?? 0,
      tMinC: tMinC[at] ?? 0,
      solarMjM2: series.solarMjM2[at] ?? null,
    };
    etoMm[at] = referenceEvapotranspiration(day, place).etoMm;
    shortDayCount[at] = dayLengthH(place.latDeg, ofYear) < 10 ? 1 : 0;
    warmth += (day.tMaxC + day.tMinC) / 2;
  }
  const yearMeanC = dayCount === 0 ? 0 : warmth / dayCount;
  return { startDayNumber, dayCount, tMaxC, tMinC, rainMm: series.rainMm, etoMm, shortDayCount, yearMeanC };
}
