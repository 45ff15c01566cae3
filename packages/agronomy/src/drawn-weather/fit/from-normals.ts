/**
 * A weather generator from monthly normals: means are the normals', all that lies within a month is the donor's.
 *
 * Source  chain: Geng, Penning de Vries & Supit 1986 (rain-chain.ts); shape of rain, spreads and dry-wet differences: donor.ts; own construction.
 * Checks  test/drawn-weather.test.ts (1,000 drawn years of four stations against their normals)
 * Holds   dry and wet days mix into the normals; a month's rain is the normal's.
 * Leaves out  a climate unlike the donor's: spreads of a continental winter are wider. In a darker month than the donor's its radiation spreads less, in
 *         proportion. Wet days not known: the donor's mean wet day.
 */

import type { ClimateStation } from '../../weather/climate.ts';
import { solarByMonth } from '../../weather/daily-normals.ts';
import { wind2mMS } from '../../weather/reference-evapotranspiration.ts';
import { saturationKpa } from '../../weather/vapour-pressure.ts';
import { type BySky, type GeneratorMonth, mixedSpread, type WeatherGenerator } from '../generator.ts';
import { chainOfWetShare, wetDaysFromLimit, wetShareOfChain } from '../rain-chain.ts';
import { residualMatrices } from '../residuals.ts';
import { type DonorMonth, donorMonths } from './donor.ts';

/** A month's normals. */
export interface MonthNormals {
  readonly monthDays: number;
  readonly tMaxC: number;
  readonly tMinC: number;
  /** A day. */
  readonly solarMjM2: number;
  /** Sum of the month. */
  readonly rainMm: number;
  /** Days of `rainDayFromMm` or more; null where not known. */
  readonly rainDays: number | null;
  readonly rainDayFromMm: number;
  readonly dewOffsetC: number;
  readonly wind2mMS: number;
}

const monthDays = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
/** FAO-56 chapter 4, where no wind is known. */
const worldMeanWindMS = 2;
/** A wet day brings this much on the mean, or there are fewer of them: the law has no room nearer to its 0.3 mm. */
const leastWetDayMm = 0.6;

/** The generator of a station's normals. */
export function generatorFromStation(station: ClimateStation): WeatherGenerator {
  return generatorFromNormals(station.latDeg, normalsOf(station));
}

/** The generator of twelve months of normals, January first. */
export function generatorFromNormals(latDeg: number, normals: readonly MonthNormals[]): WeatherGenerator {
  const donors = donorMonths(latDeg);
  return {
    latDeg,
    months: normals.map((month, at) => monthOf(month, donors[at] as DonorMonth)),
    residuals: residualMatrices['de-bilt-1990-2019'],
    origin: 'normals',
    recordYears: 0,
  };
}

/** A station's normals by month, with what it lacks filled by the rules of FAO-56. */
export function normalsOf(station: ClimateStation): readonly MonthNormals[] {
  const { solar } = solarByMonth(station);
  return monthDays.map((days, at) => ({
    monthDays: days,
    tMaxC: station.tMaxC[at] ?? 0,
    tMinC: station.tMinC[at] ?? 0,
    solarMjM2: solar[at] ?? 0,
    rainMm: station.rainMm[at] ?? 0,
    rainDays: station.rainDays?.[at] ?? null,
    rainDayFromMm: station.rainDayFromMm ?? 1,
    dewOffsetC: dewOffsetC(station, at),
    wind2mMS: station.windMS === null ? worldMeanWindMS : wind2mMS(station.windMS[at] ?? 2, station.windHeightM ?? 10),
  }));
}

function monthOf(normals: MonthNormals, donor: DonorMonth): GeneratorMonth {
  const donorWetDayMm = donor.rain.shapeFactor * donor.rain.scaleMm;
  const asked =
    normals.rainDays === null
      ? normals.rainMm / donorWetDayMm
      : wetDaysFromLimit(normals.rainDays, normals.rainDayFromMm, normals.monthDays);
  const wetDays = Math.min(asked, normals.rainMm / leastWetDayMm, 0.98 * normals.monthDays);
  const wetShare = wetDays / normals.monthDays;
  const wetDayMm = wetDays > 0 ? normals.rainMm / wetDays : donorWetDayMm;
  const brightness = normals.solarMjM2 / mixedSpread(donor.solarMjM2, wetShareOfChain(donor)).mean;
  return {
    ...chainOfWetShare(wetShare),
    rain: { shapeFactor: donor.rain.shapeFactor, scaleMm: wetDayMm / donor.rain.shapeFactor },
    tMaxC: aroundMean(donor.tMaxC, normals.tMaxC, { wetShare, factor: 1 }),
    tMinC: aroundMean(donor.tMinC, normals.tMinC, { wetShare, factor: 1 }),
    solarMjM2: aroundMean(donor.solarMjM2, normals.solarMjM2, { wetShare, factor: Math.min(1, brightness) }),
    dewOffsetC: normals.dewOffsetC,
    wind2mMS: normals.wind2mMS,
  };
}

/** The donor's spreads and difference of wet and dry, set so that both mix into a mean. */
function aroundMean(
  donor: BySky,
  mean: number,
  { wetShare, factor }: { readonly wetShare: number; readonly factor: number },
): BySky {
  const difference = factor * (donor.wet.mean - donor.dry.mean);
  return {
    dry: { mean: mean - wetShare * difference, sd: factor * donor.dry.sd },
    wet: { mean: mean + (1 - wetShare) * difference, sd: factor * donor.wet.sd },
  };
}

/** Dew point less least temperature, from mean humidity; none known: the night cools to the dew point (FAO-56 eq. 48). */
function dewOffsetC(station: ClimateStation, at: number): number {
  const rhPct = station.rhMeanPct?.[at];
  if (rhPct === undefined) return 0;
  const [tMaxC, tMinC] = [station.tMaxC[at] ?? 0, station.tMinC[at] ?? 0];
  const vapourKpa = (rhPct / 100) * ((saturationKpa(tMaxC) + saturationKpa(tMinC)) / 2);
  const logarithm = Math.log(vapourKpa / 0.6108);
  return (237.3 * logarithm) / (17.27 - logarithm) - tMinC;
}
