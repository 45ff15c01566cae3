/**
 * Climate for a farm that has no weather of its own yet: the nearest station with monthly normals, and how far to trust it.
 *
 * Source  reference/science/climate-normals.csv (each row names its own source and how it is known); lapse of 0.65 °C per 100 m: common practice.
 * Checks  test/climate.test.ts (nearest by distance; both hemispheres; the lapse)
 * Holds   the station's own figures are never changed; only `forElevation` moves temperatures, and says so.
 * Leaves out  the side of the hills, the sea and frost hollows: a station over the hill may lie in another climate.
 */
import { cellsOf, tableText } from '../reference/table-text.ts';

/** Twelve figures, January first. */
export type ByMonth = readonly number[];

export interface ClimateStation {
  readonly name: string;
  readonly country: string;
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly elevationM: number;
  readonly tMaxC: ByMonth;
  readonly tMinC: ByMonth;
  /** Sum of the month. */
  readonly rainMm: ByMonth;
  /** Days of the month with `rainDayFromMm` or more. */
  readonly rainDays: ByMonth | null;
  readonly rainDayFromMm: number | null;
  /** Hours in the month. */
  readonly sunH: ByMonth | null;
  /** A day. */
  readonly solarMjM2: ByMonth | null;
  readonly windMS: ByMonth | null;
  readonly windHeightM: number | null;
  readonly rhMeanPct: ByMonth | null;
  readonly period: string;
  readonly source: string;
}

export const climateDoubts = ['near', 'far', 'another-climate'] as const;

export interface NearestClimate {
  readonly station: ClimateStation;
  readonly distanceKm: number;
  /** Farm less station; null while the farm's height is not known. */
  readonly heightDifferenceM: number | null;
  /** near: within 60 km and 100 m of height; far: within 250 km and 300 m; else another climate. Common practice: own weather soon. */
  readonly doubt: (typeof climateDoubts)[number];
}

const lapseCPerM = -0.0065;
/** A metre up is worth a kilometre toward the pole: a hundred of either cool the year by about 0.65 °C. Common practice. */
const kmPerM = 1;

let kept: readonly ClimateStation[] | null = null;

/** All stations with normals. */
export function climateStations(): readonly ClimateStation[] {
  kept ??= readStations();
  return kept;
}

/** The station nearest to a place, height counted where it is given. */
export function climateNear(latDeg: number, lonDeg: number, elevationM: number | null = null): NearestClimate {
  let best: { station: ClimateStation; distanceKm: number; reach: number } | null = null;
  for (const station of climateStations()) {
    const distanceKm = distanceBetweenKm({ latDeg, lonDeg }, station);
    const reach = distanceKm + (elevationM === null ? 0 : Math.abs(elevationM - station.elevationM) * kmPerM);
    if (best === null || reach < best.reach) best = { station, distanceKm, reach };
  }
  if (best === null) throw new Error('The table of climate normals is empty.');
  const heightDifferenceM = elevationM === null ? null : elevationM - best.station.elevationM;
  const height = Math.abs(heightDifferenceM ?? 0);
  const doubt =
    best.distanceKm <= 60 && height <= 100
      ? 'near'
      : best.distanceKm <= 250 && height <= 300
        ? 'far'
        : 'another-climate';
  return { station: best.station, distanceKm: best.distanceKm, heightDifferenceM, doubt };
}

/** The station's temperatures moved to another height; rain and sun stay, for no rule holds for them. */
export function forElevation(station: ClimateStation, elevationM: number): ClimateStation {
  const shiftC = (elevationM - station.elevationM) * lapseCPerM;
  return {
    ...station,
    elevationM,
    tMaxC: station.tMaxC.map((t) => t + shiftC),
    tMinC: station.tMinC.map((t) => t + shiftC),
  };
}

/** Great-circle distance on a sphere: 0.5 % is near enough to choose a station. */
function distanceBetweenKm(a: { latDeg: number; lonDeg: number }, b: { latDeg: number; lonDeg: number }): number {
  const rad = Math.PI / 180;
  const h =
    Math.sin(((b.latDeg - a.latDeg) * rad) / 2) ** 2 +
    Math.cos(a.latDeg * rad) * Math.cos(b.latDeg * rad) * Math.sin(((b.lonDeg - a.lonDeg) * rad) / 2) ** 2;
  return 2 * 6371 * Math.asin(Math.min(1, Math.sqrt(h)));
}

function readStations(): readonly ClimateStation[] {
  const byName = new Map<string, ((column: string) => string)[]>();
  for (const cell of cellsOf(tableText('science/climate-normals'))) {
    byName.set(cell('station'), [...(byName.get(cell('station')) ?? []), cell]);
  }
  return [...byName.values()].map(readStation);
}

function readStation(months: readonly ((column: string) => string)[]): ClimateStation {
  const ordered = [...months].sort((a, b) => Number(a('month')) - Number(b('month')));
  const first = ordered[0];
  if (first === undefined || ordered.length !== 12)
    throw new Error(`${first?.('station')} has ${ordered.length} months in climate-normals.csv.`);
  const whole = (column: string): ByMonth => ordered.map((month) => Number(month(column)));
  const orNull = (column: string) => (ordered.every((month) => month(column) !== '') ? whole(column) : null);
  return {
    name: first('station'),
    country: first('country'),
    latDeg: Number(first('lat')),
    lonDeg: Number(first('lon')),
    elevationM: Number(first('elev_m')),
    tMaxC: whole('tmax_C'),
    tMinC: whole('tmin_C'),
    rainMm: whole('rain_mm'),
    rainDays: orNull('rain_days'),
    rainDayFromMm: first('rain_day_threshold_mm') === '' ? null : Number(first('rain_day_threshold_mm')),
    sunH: orNull('sun_h'),
    solarMjM2: orNull('rad_MJ_m2_d'),
    windMS: orNull('wind_m_s'),
    windHeightM: first('wind_height_m') === '' ? null : Number(first('wind_height_m')),
    rhMeanPct: orNull('rh_mean_pct'),
    period: first('period'),
    source: first('source'),
  };
}
