/** Drawn weather by name. */
import * as drawn from '../../drawn-weather/drawn-weather.ts';
import type { ResidualMatrices, Three } from '../../drawn-weather/residuals.ts';
import { climateStations } from '../../weather/climate.ts';
import { type CalcModel, calcModel, noAnswer } from '../calc-model.ts';
import { inputs, outputs } from '../input-list.ts';

export const drawnModels: Readonly<Record<string, CalcModel>> = {
  geng_p: calcModel({
    title: 'Chances of rain from the share of wet days',
    inputs: inputs('wet_fraction - share of wet days'),
    outputs: outputs('p01 - chance of rain after a dry day', 'p11 - chance of rain after a wet day'),
    source: 'Geng, Penning de Vries & Supit 1986, Agricultural and Forest Meteorology 36:363 (recalled)',
    evaluate: (v) => {
      const share = v.number('wet_fraction');
      if (share < 0 || share > 1) return noAnswer('wet_fraction', 'a share lies between 0 and 1');
      const chain = drawn.chainOfWetShare(share);
      return { p01: chain.wetAfterDryProbability, p11: chain.wetAfterWetProbability };
    },
  }),
  wet_fraction: calcModel({
    title: 'Long-run share of wet days',
    inputs: inputs('p01 - chance of rain after a dry day', 'p11 - chance of rain after a wet day'),
    outputs: outputs('f - share of wet days'),
    source: 'chain of two states, stationary share; Richardson 1981, Water Resources Research 17:182',
    evaluate: (v) => {
      const chain = { wetAfterDryProbability: v.number('p01'), wetAfterWetProbability: v.number('p11') };
      const share = drawn.wetShareOfChain(chain);
      return Number.isFinite(share)
        ? { f: share }
        : noAnswer('p01', 'a chain that never leaves its state has no share');
    },
  }),
  gamma_thom: calcModel({
    title: 'Gamma law of rain on wet days',
    inputs: inputs('mean mm mean of wet days', 'mean_ln - mean of their natural logarithms'),
    outputs: outputs('shape - shape', 'scale mm scale'),
    source: 'Thom 1958, Monthly Weather Review 86:117',
    evaluate: (v) => {
      const [mean, meanLogarithm] = [v.number('mean'), v.number('mean_ln')];
      // The mean of logarithms is under the logarithm of the mean for any days that are not all alike.
      if (mean <= 0 || meanLogarithm >= Math.log(mean))
        return noAnswer('mean_ln', 'the mean of logarithms must be less than the logarithm of the mean');
      const law = drawn.fitRainLaw(mean, meanLogarithm);
      return { shape: law.shapeFactor, scale: law.scaleMm };
    },
  }),
  wgen_step: calcModel({
    title: 'Residuals of the next day',
    inputs: inputs(
      'x_prev series:- residuals of Tmax, Tmin and radiation',
      'e series:- three independent standard normals',
      'matrices? text:- Richardson & Wright 1984 (when not given) or De Bilt',
    ),
    outputs: outputs('x - residuals of Tmax, Tmin and radiation'),
    source: 'Richardson & Wright 1984, USDA-ARS ARS-8; De Bilt 1990-2019 computed from the open record of KNMI',
    evaluate: (v) => {
      const matrices = matricesNamed(v.given('matrices') ? v.text('matrices') : 'richardson');
      if (matrices === null) return noAnswer('matrices', 'are those of Richardson & Wright 1984, or of De Bilt');
      const [before, chances] = [v.series('x_prev'), v.series('e')];
      if (!isThree(before)) return noAnswer('x_prev', 'wants three numbers');
      if (!isThree(chances)) return noAnswer('e', 'wants three numbers');
      return { x: drawn.nextResiduals(before, chances, matrices) };
    },
  }),
  generator_invariant: calcModel({
    title: 'A thousand drawn years are the climate they were drawn from',
    inputs: [],
    outputs: outputs('ok - nine statistics in ten within two standard errors, all within four'),
    source: 'science of drawn weather, acceptance over 1,000 years of a fixed seed',
    evaluate: () => ({ ok: thousandYearsHold() }),
  }),
};

function matricesNamed(name: string): ResidualMatrices | null {
  if (/richardson|wright|1984|ars-?8/i.test(name)) return drawn.residualMatrices['richardson-wright-1984'];
  return /bilt|knmi/i.test(name) ? drawn.residualMatrices['de-bilt-1990-2019'] : null;
}

function isThree(numbers: readonly number[]): numbers is Three {
  return numbers.length === 3;
}

/** Some seconds' work, so it is kept: nothing about it can change while the program runs. */
let kept: boolean | null = null;

function thousandYearsHold(): boolean {
  const station = climateStations().find((one) => one.name.startsWith('De Bilt')) ?? climateStations()[0];
  if (station === undefined) return false;
  kept ??= drawn.drawnFiguresHold(drawn.drawnFigures(drawn.generatorFromStation(station), 1000, 1));
  return kept;
}
