/**
 * How much it rains on a wet day: a gamma law.
 *
 * Source  fit: Thom 1958, Monthly Weather Review 86:117; drawing: Marsaglia & Tsang 2000, ACM Transactions on Mathematical Software 26:363.
 *         Wet days have 0.3 mm at least; the law put in is solved so that the amounts that come out have the mean and the shape wanted (own construction).
 * Checks  test/checks/science.csv wg-03; test/drawn-weather.test.ts (drawn amounts refit to the shape and mean they were drawn from)
 * Holds   no wet day under 0.3 mm; mean of many days = the mean wanted.
 * Leaves out  cloudbursts beyond a gamma tail.
 */

import { wetFromMm } from './rain-chain.ts';
import type { Chance } from './seeded-stream.ts';

/** Shape (no unit) and scale (mm); the mean is their product. */
export interface RainLaw {
  readonly shapeFactor: number;
  readonly scaleMm: number;
}

/** Thom's fit from the mean of wet days and the mean of their logarithms. */
export function fitRainLaw(meanMm: number, meanLogarithmRatio: number): RainLaw {
  const s = Math.log(meanMm) - meanLogarithmRatio;
  const shapeFactor = (1 + Math.sqrt(1 + (4 * s) / 3)) / (4 * s);
  return { shapeFactor, scaleMm: meanMm / shapeFactor };
}

/** The law to draw from so that amounts raised to 0.3 mm at least refit to the wanted one. */
export function lawToDraw(wanted: RainLaw): RainLaw {
  const meanMm = wanted.shapeFactor * wanted.scaleMm;
  let law = wanted;
  for (let step = 0; step < 40; step++) {
    const out = momentsOfRaised(law);
    const refit = fitRainLaw(out.meanMm, out.meanLogarithm);
    const shapeFactor = Math.max(0.05, law.shapeFactor * (wanted.shapeFactor / refit.shapeFactor));
    const drawnMeanMm = law.shapeFactor * law.scaleMm * (meanMm / out.meanMm);
    const settled = Math.abs(shapeFactor - law.shapeFactor) < 1e-7 * shapeFactor;
    law = { shapeFactor, scaleMm: drawnMeanMm / shapeFactor };
    if (settled) break;
  }
  return law;
}

/** Mean and mean logarithm of amounts of a law raised to the limit, by Simpson's rule over the logarithm; normed by their own sum. */
function momentsOfRaised({ shapeFactor, scaleMm }: RainLaw): { meanMm: number; meanLogarithm: number } {
  const from = -30 / Math.max(0.3, shapeFactor);
  const to = Math.log(shapeFactor + 40);
  const steps = 400;
  let mass = 0;
  let sum = 0;
  let logarithms = 0;
  for (let at = 0; at <= steps; at++) {
    const y = from + ((to - from) * at) / steps;
    const weight = (at === 0 || at === steps ? 1 : at % 2 === 1 ? 4 : 2) * Math.exp(shapeFactor * y - Math.exp(y));
    const raisedMm = Math.max(wetFromMm, scaleMm * Math.exp(y));
    mass += weight;
    sum += weight * raisedMm;
    logarithms += weight * Math.log(raisedMm);
  }
  return { meanMm: sum / mass, meanLogarithm: logarithms / mass };
}

/** A law made ready for drawing. */
export interface RainDraw {
  readonly scaleMm: number;
  readonly shapeLessThirdFactor: number;
  readonly spreadFactor: number;
  /** Under a shape of 1 a draw of shape + 1 is brought down by a uniform to this power; 0 where it is not. */
  readonly boostExponent: number;
}

/** Makes a law ready: the amounts drawn by it, raised to 0.3 mm at least, refit to the law given. */
export function rainDraw(wanted: RainLaw): RainDraw {
  const { shapeFactor, scaleMm } = lawToDraw(wanted);
  const boosted = shapeFactor < 1;
  const d = shapeFactor + (boosted ? 1 : 0) - 1 / 3;
  return {
    scaleMm,
    shapeLessThirdFactor: d,
    spreadFactor: 1 / Math.sqrt(9 * d),
    boostExponent: boosted ? 1 / shapeFactor : 0,
  };
}

/** A wet day's rain (mm), 0.3 at least. Takes the chances of the day the stream stands at, from `purposeIndex` on. */
export function drawRainMm(law: RainDraw, numbers: Chance, purposeIndex: number): number {
  const { scaleMm, shapeLessThirdFactor: d, spreadFactor: c, boostExponent } = law;
  // Fewer than five trials in a hundred are turned down: a hundred in a row never are.
  for (let trial = 0; trial < 100; trial++) {
    numbers.take(purposeIndex + trial);
    const x = numbers.normal(0);
    const v = (1 + c * x) ** 3;
    if (v <= 0 || Math.log(numbers.uniform(2)) >= 0.5 * x * x + d - d * v + d * Math.log(v)) continue;
    const boost = boostExponent > 0 ? numbers.uniform(3) ** boostExponent : 1;
    return Math.max(wetFromMm, d * v * boost * scaleMm);
  }
  return Math.max(wetFromMm, d * scaleMm);
}
