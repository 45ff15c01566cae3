/**
 * Pressure of the air and of the water vapour in it.
 *
 * Source  Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56, eqs 7, 8, 11-19 and 48 (the 1998 numbers, not the 2025 revision).
 * Checks  test/checks/science.csv et-01 to et-10, et-27 (FAO-56 examples 2-5 and 17; McMahon et al. 2013)
 * Holds   saturation pressure rises with temperature; actual pressure from humidity of 0-100 % lies between 0 and saturation.
 * Leaves out  the small effect of the weather on air pressure: altitude alone decides it.
 */

/** Air pressure (kPa) at an altitude (m). */
export function airPressureKpa(elevationM: number): number {
  return 101.3 * ((293 - 0.0065 * elevationM) / 293) ** 5.26; // eq. 7
}

/** Psychrometric constant (kPa/°C) at an air pressure. */
export function psychrometricKpaC(pressureKpa: number): number {
  return 0.665e-3 * pressureKpa; // eq. 8
}

/** Pressure (kPa) of water vapour that just saturates air of a temperature (°C): e°(T). */
export function saturationKpa(temperatureC: number): number {
  return 0.6108 * Math.exp((17.27 * temperatureC) / (temperatureC + 237.3)); // eq. 11
}

/** Saturation pressure of a day (kPa): the mean of its two ends, not that of its mean temperature. */
export function meanSaturationKpa(tMaxC: number, tMinC: number): number {
  return (saturationKpa(tMaxC) + saturationKpa(tMinC)) / 2; // eq. 12
}

/** Slope of the saturation curve (kPa/°C). */
export function saturationSlopeKpaC(temperatureC: number): number {
  return (4098 * saturationKpa(temperatureC)) / (temperatureC + 237.3) ** 2; // eq. 13
}

/** Actual vapour pressure (kPa) from wet and dry bulb; the coefficient is 0.000662 for a ventilated instrument, 0.0008 natural, 0.0012 indoors. */
export function vapourFromBulbsKpa(bulbs: {
  readonly wetC: number;
  readonly dryC: number;
  readonly pressureKpa: number;
  readonly coefficientPerC: number;
}): number {
  return saturationKpa(bulbs.wetC) - bulbs.coefficientPerC * bulbs.pressureKpa * (bulbs.dryC - bulbs.wetC); // eqs 15, 16
}

/** Actual vapour pressure (kPa) from the day's greatest and least relative humidity. */
export function vapourFromRhRangeKpa(day: {
  readonly tMaxC: number;
  readonly tMinC: number;
  readonly rhMaxPct: number;
  readonly rhMinPct: number;
}): number {
  return ((saturationKpa(day.tMinC) * day.rhMaxPct) / 100 + (saturationKpa(day.tMaxC) * day.rhMinPct) / 100) / 2; // eq. 17
}

/** Actual vapour pressure (kPa) from the greatest humidity alone, which is read at dawn. */
export function vapourFromRhMaxKpa(tMinC: number, rhMaxPct: number): number {
  return (saturationKpa(tMinC) * rhMaxPct) / 100; // eq. 18
}

/** Actual vapour pressure (kPa) from mean humidity. */
export function vapourFromRhMeanKpa(tMaxC: number, tMinC: number, rhMeanPct: number): number {
  return (rhMeanPct / 100) * meanSaturationKpa(tMaxC, tMinC); // eq. 19
}

/** Actual vapour pressure (kPa) when nothing is known of humidity: the night has cooled to the dew point. On dry ground take 2 °C off first. */
export function vapourFromTMinKpa(tMinC: number): number {
  return saturationKpa(tMinC); // eq. 48
}

/** Relative humidity (%) of air with a dew point, never above 100. */
export function relativeHumidityPct(temperatureC: number, dewPointC: number): number {
  return Math.min(100, (100 * saturationKpa(dewPointC)) / saturationKpa(temperatureC)); // eq. 10
}
