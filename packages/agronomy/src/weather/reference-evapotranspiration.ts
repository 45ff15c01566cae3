/**
 * Reference evapotranspiration: the water a short green well-watered sward gives off in a day (mm), with a ladder of fall-backs for what was not measured.
 *
 * Source  FAO-56 (Allen et al. 1998), eq. 6 with chapters 3 and 4; Hargreaves eq. 52; clipping of brightness and wind as ASCE 2005.
 * Checks  test/checks/science.csv et-18 to et-31 (FAO-56 examples 14, 17, 18 and 20); test/measured-weather.test.ts (four years of real days)
 * Holds   never negative; a drier or windier day never asks for less, nor a brighter one from April to September; says which rung each input stood on.
 * Leaves out  the soil's own heat in a day (taken as nil, as FAO-56 says) and hours within the day.
 */
import {
  brightness,
  clearSkyMjM2,
  extraterrestrialMjM2,
  netLongWaveMjM2,
  netShortWaveMjM2,
  solarFromSunshineMjM2,
  solarFromTemperatureMjM2,
  sunHoursPossible,
  temperatureRadiationFactors,
} from './radiation.ts';
import {
  airPressureKpa,
  meanSaturationKpa,
  psychrometricKpaC,
  saturationKpa,
  saturationSlopeKpaC,
  vapourFromRhMaxKpa,
  vapourFromRhMeanKpa,
  vapourFromRhRangeKpa,
  vapourFromTMinKpa,
} from './vapour-pressure.ts';

/** Where the weather was read. */
export interface WeatherPlace {
  readonly latDeg: number;
  readonly elevationM: number;
  /** Near the sea the range of temperature is narrower: this picks kRs 0.19 instead of 0.16 where radiation must be guessed from it. */
  readonly coast?: boolean;
}

/** What is known of a day; absent or null is not measured. */
export interface EvapotranspirationDay {
  readonly dayOfYear: number;
  readonly tMaxC: number;
  readonly tMinC: number;
  readonly vapourKpa?: number | null;
  readonly dewPointC?: number | null;
  readonly rhMaxPct?: number | null;
  readonly rhMinPct?: number | null;
  readonly rhMeanPct?: number | null;
  readonly windMS?: number | null;
  /** Height of the wind gauge; 2 m when not given. */
  readonly windHeightM?: number | null;
  readonly solarMjM2?: number | null;
  readonly sunH?: number | null;
  /** A printed example may give its own possible sunshine and clear sky; they then stand in for ours. */
  readonly possibleSunH?: number | null;
  readonly clearSkyMjM2?: number | null;
}

export const humidityRungs = [
  'vapour-pressure',
  'dew-point',
  'rh-max-and-min',
  'rh-max',
  'rh-mean',
  'night-minimum',
] as const;
export const radiationRungs = ['measured', 'sunshine', 'temperature-range'] as const;
export const windRungs = ['measured', 'world-mean'] as const;

/** The answer with its parts, and the rung each stood on, the first being the best. */
export interface ReferenceEvapotranspiration {
  readonly etoMm: number;
  readonly humidityRung: (typeof humidityRungs)[number];
  readonly radiationRung: (typeof radiationRungs)[number];
  readonly windRung: (typeof windRungs)[number];
  readonly saturationKpa: number;
  readonly vapourKpa: number;
  readonly raMjM2: number;
  readonly possibleSunH: number;
  readonly solarMjM2: number;
  readonly clearSkyMjM2: number;
  readonly netRadiationMjM2: number;
  readonly wind2mMS: number;
}

const worldMeanWindMS = 2; // FAO-56, chapter 4
/** Air is never quite still (ASCE 2005). */
export const leastWindMS = 0.5;
/** Brightness where the sun does not clear the horizon and none can be reckoned; it moves the day's sum by hundredths of a millimetre. */
const darkBrightness = 0.65;

/** Wind at 2 m (m/s) from a gauge at another height, over short grass. */
export function wind2mMS(windMS: number, heightM: number): number {
  return heightM === 2 ? windMS : (windMS * 4.87) / Math.log(67.8 * heightM - 5.42); // eq. 47
}

/** Eq. 6 itself, from its parts. Never negative: dew is not counted as rain. */
export function penmanMonteithMm(parts: {
  readonly tMeanC: number;
  readonly slopeKpaC: number;
  readonly psychrometricKpaC: number;
  readonly netRadiationMjM2: number;
  readonly soilHeatMjM2: number;
  readonly wind2mMS: number;
  readonly deficitKpa: number;
}): number {
  const radiationTerm = 0.408 * parts.slopeKpaC * (parts.netRadiationMjM2 - parts.soilHeatMjM2);
  const windTerm = parts.psychrometricKpaC * (900 / (parts.tMeanC + 273)) * parts.wind2mMS * parts.deficitKpa;
  return Math.max(
    0,
    (radiationTerm + windTerm) / (parts.slopeKpaC + parts.psychrometricKpaC * (1 + 0.34 * parts.wind2mMS)),
  ); // eq. 6
}

/** Reference evapotranspiration of a day, whatever was measured beside its two temperatures. */
export function referenceEvapotranspiration(
  day: EvapotranspirationDay,
  place: WeatherPlace,
): ReferenceEvapotranspiration {
  const raMjM2 = extraterrestrialMjM2(place.latDeg, day.dayOfYear);
  const possibleSunH = day.possibleSunH ?? sunHoursPossible(place.latDeg, day.dayOfYear);
  const clear = day.clearSkyMjM2 ?? clearSkyMjM2(raMjM2, place.elevationM);
  const saturation = meanSaturationKpa(day.tMaxC, day.tMinC);
  const { vapourKpa, humidityRung } = humidityOf(day);
  const { solarMjM2, radiationRung } = solarOf(day, { raMjM2, possibleSunH, clear, coast: place.coast === true });
  const { wind, windRung } = windOf(day);
  const bright = brightness(solarMjM2, clear) ?? darkBrightness;
  const held = Math.min(vapourKpa, saturation);
  const netRadiationMjM2 =
    netShortWaveMjM2(solarMjM2) - netLongWaveMjM2({ ...day, vapourKpa: held, brightness: bright }); // eq. 40
  const tMeanC = (day.tMaxC + day.tMinC) / 2; // eq. 9
  const etoMm = penmanMonteithMm({
    tMeanC,
    slopeKpaC: saturationSlopeKpaC(tMeanC),
    psychrometricKpaC: psychrometricKpaC(airPressureKpa(place.elevationM)),
    netRadiationMjM2,
    soilHeatMjM2: 0,
    wind2mMS: wind,
    deficitKpa: saturation - held,
  });
  return {
    etoMm,
    humidityRung,
    radiationRung,
    windRung,
    saturationKpa: saturation,
    vapourKpa: held,
    raMjM2,
    possibleSunH,
    solarMjM2,
    clearSkyMjM2: clear,
    netRadiationMjM2,
    wind2mMS: wind,
  };
}

/** Hargreaves: from temperatures and the sun's height alone (mm a day). A cross-check; over a month it agrees better than over a day. */
export function hargreavesMm(
  tMaxC: number,
  tMinC: number,
  sun: { readonly raMjM2: number; readonly tMeanC?: number },
): number {
  const tMeanC = sun.tMeanC ?? (tMaxC + tMinC) / 2;
  return Math.max(0, 0.0023 * (tMeanC + 17.8) * Math.sqrt(Math.max(0, tMaxC - tMinC)) * 0.408 * sun.raMjM2); // eq. 52
}

function humidityOf(day: EvapotranspirationDay): {
  vapourKpa: number;
  humidityRung: ReferenceEvapotranspiration['humidityRung'];
} {
  const { tMaxC, tMinC } = day;
  if (known(day.vapourKpa)) return { vapourKpa: day.vapourKpa, humidityRung: 'vapour-pressure' };
  if (known(day.dewPointC)) return { vapourKpa: saturationKpa(day.dewPointC), humidityRung: 'dew-point' }; // eq. 14
  if (known(day.rhMaxPct) && known(day.rhMinPct)) {
    return {
      vapourKpa: vapourFromRhRangeKpa({ tMaxC, tMinC, rhMaxPct: day.rhMaxPct, rhMinPct: day.rhMinPct }),
      humidityRung: 'rh-max-and-min',
    };
  }
  if (known(day.rhMaxPct)) return { vapourKpa: vapourFromRhMaxKpa(tMinC, day.rhMaxPct), humidityRung: 'rh-max' };
  if (known(day.rhMeanPct))
    return { vapourKpa: vapourFromRhMeanKpa(tMaxC, tMinC, day.rhMeanPct), humidityRung: 'rh-mean' };
  return { vapourKpa: vapourFromTMinKpa(tMinC), humidityRung: 'night-minimum' };
}

function solarOf(
  day: EvapotranspirationDay,
  sky: { readonly raMjM2: number; readonly possibleSunH: number; readonly clear: number; readonly coast: boolean },
): { solarMjM2: number; radiationRung: ReferenceEvapotranspiration['radiationRung'] } {
  if (known(day.solarMjM2)) return { solarMjM2: day.solarMjM2, radiationRung: 'measured' };
  if (known(day.sunH))
    return { solarMjM2: solarFromSunshineMjM2(sky.raMjM2, day.sunH, sky.possibleSunH), radiationRung: 'sunshine' };
  const factor = sky.coast ? temperatureRadiationFactors.coast : temperatureRadiationFactors.interior;
  const guessed = solarFromTemperatureMjM2(sky.raMjM2, day.tMaxC - day.tMinC, factor);
  return { solarMjM2: Math.min(guessed, sky.clear), radiationRung: 'temperature-range' };
}

function windOf(day: EvapotranspirationDay): { wind: number; windRung: ReferenceEvapotranspiration['windRung'] } {
  if (!known(day.windMS)) return { wind: worldMeanWindMS, windRung: 'world-mean' };
  return { wind: Math.max(leastWindMS, wind2mMS(day.windMS, day.windHeightM ?? 2)), windRung: 'measured' };
}

function known(value: number | null | undefined): value is number {
  return value !== null && value !== undefined;
}
