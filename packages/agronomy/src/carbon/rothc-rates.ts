/**
 * How fast a topsoil's carbon turns over in a month: warmth, dryness, plant cover and clay.
 *
 * Source  RothC-26.3: Coleman, Prout & Milne 2024, RothC, a model for the turnover of carbon in soil, sections 1.6 and 1.7 (read whole).
 * Checks  test/checks/science.csv rc-01, rc-03, rc-05; test/carbon.test.ts (bounds; deficits never leave 0 .. the greatest)
 * Holds   warmth ≥ 0 and rising; dryness 0.2 .. 1; a deficit is never positive and never below the greatest of its depth.
 * Leaves out  waterlogging and peat, for which the model was not made. Evaporation is that of an open pan: from reference evapotranspiration take ETo / 0.75.
 */

/** A topsoil as the model sees it: clay in % by weight, and the depth the stocks are counted to. */
export interface CarbonSoil {
  readonly clayPct: number;
  readonly depthCm: number;
}

/** One month's weather and cover. */
export interface CarbonMonthWeather {
  readonly tMeanC: number;
  readonly rainMm: number;
  /** From an open pan of water; reference evapotranspiration / 0.75. */
  readonly panMm: number;
  /** Whether plants grew on it in that month. */
  readonly covered: boolean;
}

/** Open-pan evaporation from reference evapotranspiration. */
export function panFromReferenceMm(etoMm: number): number {
  return etoMm / 0.75;
}

/** Warmth, 1 at about 9.3 °C; none below -5 °C. */
export function warmthFactor(tMeanC: number): number {
  return tMeanC < -5 ? 0 : 47.91 / (Math.exp(106.06 / (tMeanC + 18.27)) + 1);
}

/** The greatest deficit of the topsoil under plants (mm, negative). */
export function greatestDeficitMm({ clayPct, depthCm }: CarbonSoil): number {
  return (-(20 + 1.3 * clayPct - 0.01 * clayPct * clayPct) * depthCm) / 23;
}

/** The deficit (mm, 0 or negative) at the end of a month, from that at the end of the month before. */
export function nextDeficitMm(
  deficitMm: number,
  weather: Pick<CarbonMonthWeather, 'rainMm' | 'panMm' | 'covered'>,
  greatestMm: number,
): number {
  const wanted = Math.min(0, deficitMm + weather.rainMm - 0.75 * weather.panMm);
  // Bare ground dries only as far as its crust lets it, but what plants have dried stays dry until it rains.
  const floor = weather.covered ? greatestMm : Math.min(0.556 * greatestMm, deficitMm);
  return Math.max(floor, wanted);
}

/** Dryness, 1 while moist down to 0.2 at the greatest deficit. */
export function drynessFactor(deficitMm: number, greatestMm: number): number {
  const brakesFrom = 0.444 * greatestMm;
  if (deficitMm > brakesFrom) return 1;
  return 0.2 + (0.8 * (greatestMm - deficitMm)) / (greatestMm - brakesFrom);
}

/** Plants on the ground slow the turnover to 0.6. */
export function coverFactor(covered: boolean): number {
  return covered ? 0.6 : 1;
}

/** Carbon breathed out for each part kept by microbes and humus: more on sand than on clay. */
export function breathedRatio(clayPct: number): number {
  return 1.67 * (1.85 + 1.6 * Math.exp(-0.0786 * clayPct));
}

/** Deficits month by month (mm), from field capacity unless another start is given. */
export function deficitsMm(
  soil: CarbonSoil,
  months: readonly Pick<CarbonMonthWeather, 'rainMm' | 'panMm' | 'covered'>[],
  startDeficitMm = 0,
): readonly number[] {
  const greatestMm = greatestDeficitMm(soil);
  let deficitMm = startDeficitMm;
  return months.map((month) => {
    deficitMm = nextDeficitMm(deficitMm, month, greatestMm);
    return deficitMm;
  });
}
