/**
 * The station that lends what monthly normals do not say: how days differ within a month, and dry days from wet.
 *
 * Source  reference/science/weather-generator-debilt.csv: De Bilt 1990-2019, computed from the open daily record of KNMI.
 * Checks  test/drawn-weather.test.ts (the table is read whole; the southern half of the world gets it shifted by six months)
 * Holds   twelve months.
 * Leaves out  other climates: one lowland station by the North Sea stands for them all.
 */
import { cellsOf, tableText } from '../../reference/table-text.ts';
import type { BySky } from '../generator.ts';
import type { RainLaw } from '../rain-amount.ts';
import type { RainChain } from '../rain-chain.ts';

export interface DonorMonth extends RainChain {
  readonly rain: RainLaw;
  readonly tMaxC: BySky;
  readonly tMinC: BySky;
  readonly solarMjM2: BySky;
}

/** The donor's months for a latitude, January first; south of the equator shifted by six. */
export function donorMonths(latDeg: number): readonly DonorMonth[] {
  const months = cellsOf(tableText('science/weather-generator-debilt')).map((cell): DonorMonth => {
    const number = (column: string) => Number(cell(column));
    const bySky = (what: string): BySky => ({
      dry: { mean: number(`${what}_dry_mean`), sd: number(`${what}_dry_sd`) },
      wet: { mean: number(`${what}_wet_mean`), sd: number(`${what}_wet_sd`) },
    });
    return {
      wetAfterDryProbability: number('p_wet_after_dry'),
      wetAfterWetProbability: number('p_wet_after_wet'),
      rain: { shapeFactor: number('gamma_shape'), scaleMm: number('gamma_scale_mm') },
      tMaxC: bySky('tmax'),
      tMinC: bySky('tmin'),
      solarMjM2: bySky('rad'),
    };
  });
  return latDeg < 0 ? [...months.slice(6), ...months.slice(0, 6)] : months;
}
