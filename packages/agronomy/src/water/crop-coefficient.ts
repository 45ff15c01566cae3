/**
 * Crop coefficients over a season, corrected for the climate, and the most that crop and ground together can give off.
 *
 * Source  FAO-56 (Allen et al. 1998) eqs 62, 66 and 72; stages stretched by thermal time: own, keeping the proportions of Table 11.
 * Checks  test/checks/soil.csv wb-05 (example 28), wb-07 (example 27), wb-08; test/soil-water.test.ts (joins, bounds)
 * Holds   the curve has no steps; the upper limit is never under the basal coefficient.
 * Leaves out  frost and freezing ground.
 */

/** A coefficient's three values and the four stages between them, in days or in thermal time: one unit throughout. */
export interface CoefficientCurve {
  readonly initialKc: number;
  readonly midKc: number;
  readonly endKc: number;
  /** Ends of the initial, development and mid stage and of the season, counted from its start. */
  readonly stageEndsTotal: readonly [number, number, number, number];
}

/** The coefficient at a point of the season; after its end, the last value. */
export function coefficientAt(curve: CoefficientCurve, sinceStartTotal: number): number {
  // By place: taking a list apart makes an object, and this is asked every day of every stand.
  const ends = curve.stageEndsTotal;
  const ini = ends[0];
  const dev = ends[1];
  const mid = ends[2];
  const late = ends[3];
  if (sinceStartTotal <= ini) return curve.initialKc;
  if (sinceStartTotal < dev) return between(curve.initialKc, curve.midKc, (sinceStartTotal - ini) / (dev - ini)); // eq. 66
  if (sinceStartTotal <= mid) return curve.midKc;
  if (sinceStartTotal < late) return between(curve.midKc, curve.endKc, (sinceStartTotal - mid) / (late - mid));
  return curve.endKc;
}

/** How a season's climate differs from the table's: wind at 2 m and least humidity of the day. */
export interface CropClimate {
  readonly wind2mMS: number;
  readonly rhMinPct: number;
}

/** A mid or end coefficient of the table in another climate; values under 0.45 stay as they are. */
export function coefficientInClimate(tableKc: number, heightM: number, climate: CropClimate): number {
  return tableKc < 0.45 ? tableKc : tableKc + climateTerm(heightM, climate); // eq. 62
}

/** The most that crop and wet ground can give off, as a coefficient. */
export function greatestKc(basalKcb: number, heightM: number, climate: CropClimate): number {
  return Math.max(1.2 + climateTerm(heightM, climate), basalKcb + 0.05); // eq. 72
}

function climateTerm(heightM: number, { wind2mMS, rhMinPct }: CropClimate): number {
  const wind = Math.min(6, Math.max(1, wind2mMS));
  const humidity = Math.min(80, Math.max(20, rhMinPct));
  return (0.04 * (wind - 2) - 0.004 * (humidity - 45)) * (heightM / 3) ** 0.3;
}

function between(from: number, to: number, share: number): number {
  return from + (to - from) * share;
}
