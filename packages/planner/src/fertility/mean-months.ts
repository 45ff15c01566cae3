/** The mean months of a place, as the carbon model reads them: warmth, rain, and an open pan's evaporation. */
import { carbon, climate, dailyNormals, evapotranspiration } from '@leywright/agronomy';
import type { Place } from '@leywright/book';

export interface MeanMonth {
  readonly tMeanC: number;
  readonly rainMm: number;
  readonly panMm: number;
}

const monthDays = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Twelve months of the nearest station, brought to the farm's height. */
export function meanMonths({ latDeg, lonDeg, elevationM }: Place): readonly MeanMonth[] {
  const { station } = climate.climateNear(latDeg, lonDeg, elevationM);
  const here = elevationM === null ? station : climate.forElevation(station, elevationM);
  const { solar } = dailyNormals.solarByMonth(here);
  return monthDays.map((days, at) => {
    const [tMaxC, tMinC] = [here.tMaxC[at] ?? 0, here.tMinC[at] ?? 0];
    const day = evapotranspiration.referenceEvapotranspiration(
      { dayOfYear: Math.round(30.4 * at + 15), tMaxC, tMinC, solarMjM2: solar[at] ?? null },
      { latDeg: here.latDeg, elevationM: here.elevationM },
    );
    return {
      tMeanC: (tMaxC + tMinC) / 2,
      rainMm: here.rainMm[at] ?? 0,
      panMm: carbon.rates.panFromReferenceMm(day.etoMm * days),
    };
  });
}
