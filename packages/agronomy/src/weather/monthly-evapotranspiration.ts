/**
 * Reference evapotranspiration of a month, in which the soil takes up or gives back heat.
 *
 * Source  FAO-56 (Allen et al. 1998), eqs 6, 43 and 44; clear sky as 0.75 Ra, as its example 17 prints it for low ground.
 * Checks  test/checks/science.csv et-21 (FAO-56 example 17, Bangkok in April)
 * Holds   a month warming against the one before gives less than one that does not.
 * Leaves out  the days within the month: for a water account use days.
 */

import {
  brightness,
  extraterrestrialMjM2,
  netLongWaveMjM2,
  netShortWaveMjM2,
  solarFromSunshineMjM2,
  sunHoursPossible,
} from './radiation.ts';
import { leastWindMS, penmanMonteithMm } from './reference-evapotranspiration.ts';
import { airPressureKpa, meanSaturationKpa, psychrometricKpaC, saturationSlopeKpaC } from './vapour-pressure.ts';

/** Heat into the soil in a month (MJ/m2 a day) between the month before and the month after. */
export function soilHeatBetweenMonthsMjM2(tBeforeC: number, tAfterC: number): number {
  return 0.07 * (tAfterC - tBeforeC); // eq. 43
}

/** The same when the month after is not known yet. */
export function soilHeatSinceMonthMjM2(tMeanC: number, tBeforeC: number): number {
  return 0.14 * (tMeanC - tBeforeC); // eq. 44
}

export interface EvapotranspirationMonth {
  readonly latDeg: number;
  readonly elevationM: number;
  /** The day in its middle. */
  readonly dayOfYear: number;
  readonly tMaxC: number;
  readonly tMinC: number;
  readonly vapourKpa: number;
  readonly wind2mMS: number;
  readonly sunH: number;
  readonly tMeanBeforeC: number;
}

/** Reference evapotranspiration (mm a day) of a month's mean day, with the parts its source prints. */
export function monthlyEvapotranspiration(month: EvapotranspirationMonth) {
  const tMeanC = (month.tMaxC + month.tMinC) / 2;
  const raMjM2 = extraterrestrialMjM2(month.latDeg, month.dayOfYear);
  const possibleSunH = sunHoursPossible(month.latDeg, month.dayOfYear);
  const solarMjM2 = solarFromSunshineMjM2(raMjM2, month.sunH, possibleSunH);
  const saturationKpa = meanSaturationKpa(month.tMaxC, month.tMinC);
  const vapourKpa = Math.min(month.vapourKpa, saturationKpa);
  const netRadiationMjM2 =
    netShortWaveMjM2(solarMjM2) -
    netLongWaveMjM2({ ...month, vapourKpa, brightness: brightness(solarMjM2, 0.75 * raMjM2) ?? 0.65 });
  const soilHeatMjM2 = soilHeatSinceMonthMjM2(tMeanC, month.tMeanBeforeC);
  const slopeKpaC = saturationSlopeKpaC(tMeanC);
  const gammaKpaC = psychrometricKpaC(airPressureKpa(month.elevationM));
  const etoMm = penmanMonteithMm({
    tMeanC,
    slopeKpaC,
    psychrometricKpaC: gammaKpaC,
    netRadiationMjM2,
    soilHeatMjM2,
    wind2mMS: Math.max(leastWindMS, month.wind2mMS),
    deficitKpa: saturationKpa - vapourKpa,
  });
  return {
    etoMm,
    saturationKpa,
    slopeKpaC,
    gammaKpaC,
    raMjM2,
    possibleSunH,
    solarMjM2,
    netRadiationMjM2,
    soilHeatMjM2,
  } as const;
}
