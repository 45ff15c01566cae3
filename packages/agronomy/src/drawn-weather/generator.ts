/**
 * What a weather generator is made of: a month's chain of wet and dry days, its rain, and how warm and bright its dry and its wet days are.
 *
 * Source  Richardson 1981, Water Resources Research 17:182, with temperatures and radiation conditioned on wet and dry days (all three: dry nights in a
 *         maritime winter are 4 °C colder).
 * Checks  test/drawn-weather.test.ts (what a generator implies is what 1,000 drawn years come to)
 * Holds   the long-run share of wet days mixes dry and wet days into the month's own mean.
 * Leaves out  wet and dry years: sums of months and years spread 10-30 % too little and long droughts are too rare.
 */
import type { RainLaw } from './rain-amount.ts';
import { type RainChain, wetShareOfChain } from './rain-chain.ts';
import type { ResidualMatrices } from './residuals.ts';

export interface Spread {
  readonly mean: number;
  readonly sd: number;
}

/** Of dry days and of wet ones. */
export interface BySky {
  readonly dry: Spread;
  readonly wet: Spread;
}

export interface GeneratorMonth extends RainChain {
  readonly rain: RainLaw;
  readonly tMaxC: BySky;
  readonly tMinC: BySky;
  readonly solarMjM2: BySky;
  /** Dew point less least temperature, assumed. */
  readonly dewOffsetC: number;
  /** Mean wind at 2 m, assumed. */
  readonly wind2mMS: number;
}

/** Where the figures of a generator are from; each shown beside what it is used for. */
export const generatorOrigins = ['record-by-month', 'record-by-season', 'normals-moved-to-record', 'normals'] as const;

export interface WeatherGenerator {
  readonly latDeg: number;
  /** Twelve, January first. */
  readonly months: readonly GeneratorMonth[];
  readonly residuals: ResidualMatrices;
  readonly origin: (typeof generatorOrigins)[number];
  /** Years of record that went in; 0 for normals alone. */
  readonly recordYears: number;
}

/** Mean and spread of all days, dry and wet together. */
export function mixedSpread({ dry, wet }: BySky, wetShare: number): Spread {
  const between = wetShare * (1 - wetShare) * (wet.mean - dry.mean) ** 2;
  return {
    mean: wetShare * wet.mean + (1 - wetShare) * dry.mean,
    sd: Math.sqrt(wetShare * wet.sd ** 2 + (1 - wetShare) * dry.sd ** 2 + between),
  };
}

/** What a generator's month comes to in the long run: what its normals would be. */
export function impliedMonth(month: GeneratorMonth, monthDays: number) {
  const wetShare = wetShareOfChain(month);
  return {
    wetShare,
    wetDays: wetShare * monthDays,
    rainMm: wetShare * monthDays * month.rain.shapeFactor * month.rain.scaleMm,
    tMaxC: mixedSpread(month.tMaxC, wetShare),
    tMinC: mixedSpread(month.tMinC, wetShare),
    solarMjM2: mixedSpread(month.solarMjM2, wetShare),
  };
}
