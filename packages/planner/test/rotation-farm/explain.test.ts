/** Halving a plot changes nothing but what it is meant to: the same plan on both halves costs what it cost whole. */
import { smallRotations } from '@leywright/farm-kit';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { halved } from '../../src/rotation-farm/explain.ts';
import { scoreOfPlan } from '../../src/rotation-model/score.ts';

test('a plan laid on both halves alike costs the same as on whole plots', () => {
  fc.assert(
    fc.property(smallRotations, fc.array(fc.nat(5), { minLength: 16, maxLength: 16 }), (farm, picks) => {
      // Parts of split plots would be halved once more; whole plots alone are asked about.
      const problem = { ...farm, plots: farm.plots.map((plot) => ({ ...plot, parent: null })) };
      const plan = problem.plots.map((plot, at) =>
        plot.isRotated
          ? Array.from({ length: problem.years }, (_, year) => problem.options[picks[4 * at + year] ?? 0]?.id ?? '')
          : [],
      );
      const twice = plan.flatMap((sequence) => [sequence, sequence]);
      expect(scoreOfPlan(halved(problem), twice).totalScore).toBeCloseTo(scoreOfPlan(problem, plan).totalScore, 6);
    }),
    { numRuns: 100, seed: 5 },
  );
});
