/**
 * Length of the day as plants see it, with the air's bending of light and the sun's upper edge.
 *
 * Source  Forsythe, Rykiel, Stahl, Wu & Schoolfield 1995, Ecological Modelling 80:87-95 (the CBM model); the form without refraction is FAO-56 eq. 34.
 * Checks  test/checks/science.csv dl-01 to dl-05; test/day-length.test.ts (both forms over the year)
 * Holds   0 .. 24 h at any latitude; longer than FAO-56's by the light before sunrise and after sunset.
 * Leaves out  hills on the horizon and the height of the place.
 */
import { sunHoursPossible } from './radiation.ts';

/** How far below the horizon the sun's centre stands when the day begins (degrees). */
export const dawnDepthDeg = { centreOfSun: 0, upperEdge: 0.8333, civilTwilight: 6 } as const;

/** Day length (h) with refraction; civil twilight is the day length that bulbing onions keep. */
export function dayLengthH(latDeg: number, dayOfYear: number, depthDeg: number = dawnDepthDeg.upperEdge): number {
  const theta = 0.2163108 + 2 * Math.atan(0.9671396 * Math.tan(0.0086 * (dayOfYear - 186)));
  const declination = Math.asin(0.39795 * Math.cos(theta));
  const lat = (latDeg * Math.PI) / 180;
  const x =
    (Math.sin((depthDeg * Math.PI) / 180) + Math.sin(lat) * Math.sin(declination)) /
    (Math.cos(lat) * Math.cos(declination));
  return 24 - (24 / Math.PI) * Math.acos(Math.min(1, Math.max(-1, x)));
}

/** Day length (h) by FAO-56 eq. 34, as evapotranspiration uses it: from sunrise to sunset of the sun's centre, without refraction. */
export function dayLengthFaoH(latDeg: number, dayOfYear: number): number {
  return sunHoursPossible(latDeg, dayOfYear);
}

/**
 * The winter span in which the day is under ten hours, as days of a 365-day year, or null where there is none.
 * That leafy crops stand still then is common practice of growers, without a source.
 */
export function shortDaySpan(
  latDeg: number,
): { readonly firstDayOfYear: number; readonly lastDayOfYear: number } | null {
  const short = (day: number) => dayLengthH(latDeg, ((day + 364) % 365) + 1) < 10;
  for (let day = 1; day <= 365; day++) {
    if (!short(day) && short(day + 1)) {
      let last = day + 1;
      while (short(last + 1) && last < day + 365) last++;
      return { firstDayOfYear: (day % 365) + 1, lastDayOfYear: ((last - 1) % 365) + 1 };
    }
  }
  return null;
}
