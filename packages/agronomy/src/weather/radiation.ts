/**
 * Radiation of a day: above the air, at the ground, and what a short green crop keeps of it. All in MJ/m2 a day.
 *
 * Source  FAO-56 (Allen et al. 1998), eqs 21-25, 34, 35, 37-40 and 50.
 * Checks  test/checks/science.csv et-12 to et-16, et-20, et-27, et-29, et-30 (FAO-56 examples 8-12 and 15)
 * Holds   no radiation where the sun does not rise; sunset angle within 0 .. pi at any latitude; solar radiation from temperature stays under a clear sky's.
 * Leaves out  slopes and shade of hills and hedges: the ground is flat and open.
 */

const stefanBoltzmann = 4.903e-9; // MJ K-4 m-2 day-1
const solarConstant = 0.082; // MJ m-2 min-1

/** Inverse relative distance from the earth to the sun. */
export function sunDistanceFactor(dayOfYear: number): number {
  return 1 + 0.033 * Math.cos(((2 * Math.PI) / 365) * dayOfYear); // eq. 23
}

/** Height of the sun over the equator (rad). */
export function declinationRad(dayOfYear: number): number {
  return 0.409 * Math.sin(((2 * Math.PI) / 365) * dayOfYear - 1.39); // eq. 24
}

/** Sunset hour angle (rad): 0 where the sun does not rise, pi where it does not set. */
export function sunsetAngleRad(latDeg: number, dayOfYear: number): number {
  const x = -Math.tan((latDeg * Math.PI) / 180) * Math.tan(declinationRad(dayOfYear));
  return Math.acos(Math.min(1, Math.max(-1, x))); // eq. 25
}

/** Radiation above the air: Ra. */
export function extraterrestrialMjM2(latDeg: number, dayOfYear: number): number {
  const phi = (latDeg * Math.PI) / 180;
  const delta = declinationRad(dayOfYear);
  const ws = sunsetAngleRad(latDeg, dayOfYear);
  const height = ws * Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.sin(ws);
  return Math.max(0, ((24 * 60) / Math.PI) * solarConstant * sunDistanceFactor(dayOfYear) * height); // eq. 21
}

/** Hours the sun can shine, without the bending of its light by the air: N. For day length as a plant sees it use day-length.ts. */
export function sunHoursPossible(latDeg: number, dayOfYear: number): number {
  return (24 / Math.PI) * sunsetAngleRad(latDeg, dayOfYear); // eq. 34
}

/** Solar radiation from hours of sunshine: Rs. Nothing where the sun does not rise. */
export function solarFromSunshineMjM2(raMjM2: number, sunH: number, possibleH: number): number {
  if (possibleH <= 0) return 0;
  return (0.25 + 0.5 * Math.min(1, sunH / possibleH)) * raMjM2; // eq. 35
}

/** kRs of eq. 50: inland, or on a coast where the sea narrows the range. */
export const temperatureRadiationFactors = { interior: 0.16, coast: 0.19 } as const;

/** Solar radiation from the day's range of temperature, when there is neither radiation nor sunshine. */
export function solarFromTemperatureMjM2(raMjM2: number, rangeC: number, factor: number): number {
  return factor * Math.sqrt(Math.max(0, rangeC)) * raMjM2; // eq. 50
}

/** Solar radiation under a clear sky: Rso. */
export function clearSkyMjM2(raMjM2: number, elevationM: number): number {
  return (0.75 + 2e-5 * elevationM) * raMjM2; // eq. 37
}

/** Short-wave radiation a green crop keeps: Rns. */
export function netShortWaveMjM2(solarMjM2: number): number {
  return 0.77 * solarMjM2; // eq. 38
}

/** Relative brightness Rs/Rso as eq. 39 may use it: never above a clear sky, never under 0.3 (ASCE 2005). Null in the dark of a polar winter. */
export function brightness(solarMjM2: number, clearMjM2: number): number | null {
  if (clearMjM2 < 0.01) return null;
  return Math.min(1, Math.max(0.3, solarMjM2 / clearMjM2));
}

/** Long-wave radiation the crop gives back to the sky: Rnl. */
export function netLongWaveMjM2(day: {
  readonly tMaxC: number;
  readonly tMinC: number;
  readonly vapourKpa: number;
  readonly brightness: number;
}): number {
  const fourthPowers = ((day.tMaxC + 273.16) ** 4 + (day.tMinC + 273.16) ** 4) / 2;
  return stefanBoltzmann * fourthPowers * (0.34 - 0.14 * Math.sqrt(day.vapourKpa)) * (1.35 * day.brightness - 0.35); // eq. 39
}
