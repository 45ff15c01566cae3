/**
 * Weather by day over the years of a plan: the farm's own where recorded, else the mean day of the nearest station's climate.
 *
 * Three years before the horizon are filled too, for leys and wintered crops that began before it, and two after it, for harvests that end there.
 */
import {
  climate,
  dailyNormals,
  dayLength,
  type SoilWeather,
  soilAccount,
  type ThermalSettings,
  type ThermalSums,
  thermal,
  type WeatherSeries,
  weather,
} from '@leywright/agronomy';
import type { Place, WeatherDay } from '@leywright/book';
import { type Day, dayAt, dayNumber, dayOf, dayOfYear } from '@leywright/measures';
import type { ClimateDays } from '../plan/inputs.ts';
import type { ClimateUsed, Horizon } from '../plan/plan.ts';

const yearsBefore = 3;
const yearsAfter = 2;

/** The weather of a plan's years at a place. */
export function climateDaysOf(place: Place, recorded: readonly WeatherDay[], horizon: Horizon): ClimateDays {
  const from = dayOf(horizon.fromYear - yearsBefore, 1, 1);
  const to = dayOf(horizon.toYear + yearsAfter, 12, 31);
  const nearest = climate.climateNear(place.latDeg, place.lonDeg, place.elevationM);
  const station = place.elevationM === null ? nearest.station : climate.forElevation(nearest.station, place.elevationM);
  const series = weather.weatherFor({ from, to }, recorded, dailyNormals.dailyNormals(station));
  const meanC = series.tMaxC.map((tMaxC, at) => (tMaxC + (series.tMinC[at] ?? tMaxC)) / 2);
  const kept = new Map<string, ThermalSums>();
  const sums = (settings: ThermalSettings): ThermalSums => {
    const key = `${settings.baseC}/${settings.warmerByC ?? 0}/${settings.restInShortDaysLatDeg ?? ''}`;
    const found = kept.get(key) ?? thermal.thermalSums(series, settings);
    kept.set(key, found);
    return found;
  };
  let ofSoil: SoilWeather | null = null;
  return {
    firstDay: series.startDayNumber,
    latDeg: place.latDeg,
    meanC,
    minC: series.tMinC,
    maxC: series.tMaxC,
    recorded: series.originIndex.map((_, at: number) => (weather.originOf(series, at) === 'climate' ? 0 : 1)),
    dayLengthH: dayLengths(place.latDeg, series.startDayNumber, series.dayCount),
    doubt: nearest.doubt,
    used: usedClimate(nearest, recorded),
    ofSoil: () => {
      ofSoil ??= soilAccount.soilWeather(inShowers(series), { latDeg: place.latDeg, elevationM: station.elevationM });
      return ofSoil;
    },
    sums,
    degreeDays: (baseC, fromDay, toDay) => thermal.thermalTimeBetween(sums({ baseC }), fromDay, toDay),
    dayOfSum: (baseC, fromDay, sumCd) => thermal.dayWhenReached(sums({ baseC }), fromDay, sumCd),
  };
}

/**
 * The mean climate drizzles every day, and drizzle dries off before it drains. Its rain is gathered into showers: it falls on the day on which so much has come
 * together. Common practice of lowland Britain, where a wet day brings about 5 mm. What was recorded falls as it fell.
 */
const showerMm = 5;

function inShowers(series: WeatherSeries): WeatherSeries {
  const rainMm = Float64Array.from(series.rainMm);
  let waitingMm = 0;
  for (let at = 0; at < series.dayCount; at++) {
    if (weather.originOf(series, at) !== 'climate') continue;
    waitingMm += rainMm[at] ?? 0;
    const falls = waitingMm >= showerMm || at === series.dayCount - 1;
    rainMm[at] = falls ? waitingMm : 0;
    if (falls) waitingMm = 0;
  }
  return { ...series, rainMm };
}

function usedClimate(nearest: ReturnType<typeof climate.climateNear>, recorded: readonly WeatherDay[]): ClimateUsed {
  let recordedFrom: Day | null = null;
  let recordedTo: Day | null = null;
  for (const { day } of recorded) {
    if (recordedFrom === null || day < recordedFrom) recordedFrom = day;
    if (recordedTo === null || day > recordedTo) recordedTo = day;
  }
  return {
    station: nearest.station.name,
    period: nearest.station.period,
    distanceKm: nearest.distanceKm,
    elevationDifferenceM: nearest.heightDifferenceM,
    recordedDays: new Set(recorded.map((one) => one.day)).size,
    recordedFrom,
    recordedTo,
  };
}

function dayLengths(latDeg: number, firstDay: number, count: number): Float64Array {
  const byDayOfYear = Float64Array.from({ length: 366 }, (_, at) => dayLength.dayLengthH(latDeg, at + 1));
  let at = dayOfYear(dayAt(firstDay)) - 1;
  let newYear = dayNumber(dayOf(Number(dayAt(firstDay).slice(0, 4)) + 1, 1, 1));
  return Float64Array.from({ length: count }, (_, index) => {
    if (firstDay + index === newYear) {
      at = 0;
      newYear = dayNumber(dayOf(Number(dayAt(newYear).slice(0, 4)) + 1, 1, 1));
    }
    return byDayOfYear[at++] ?? 0;
  });
}
