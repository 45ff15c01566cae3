/** Proposals for farms by chance, laid out with days, against the findings of any plan and against a calendar. */
import type { Farm } from '@leywright/book';
import { day, rotatingFarm, sampleFarm, sampleToday } from '@leywright/farm-kit';
import { asMonthDay } from '@leywright/measures';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coversForFarm } from '../../src/cover-choice/farm-covers.ts';
import { planFarm } from '../../src/plan/planner.ts';
import { farmProblem } from '../../src/rotation-farm/farm-problem.ts';
import { proposeRotation } from '../../src/rotation-farm/propose.ts';
import type { FarmRotationWish } from '../../src/rotation-farm/rotation-farm.ts';
import { datedBreaches } from '../../src/rotation-proof/check-dates.ts';
import { planBreaches } from '../../src/rotation-proof/check-plan.ts';
import type { Solver } from '../../src/rotation-solver/solver.ts';

/** Gives nothing: what is proposed is the quick search's own, and has to be lawful without any proof. */
const noSolver: Solver = {
  solve: async () => ({ ending: 'failed', values: null, boundScore: Number.NEGATIVE_INFINITY, failure: 'none here' }),
  nowS: () => performance.now() / 1000,
  pause: async () => undefined,
};
const ask = { timeLimitS: 0.5, gapShare: 0 };
const wish: FarmRotationWish = {
  today: day('2027-01-10'),
  years: 8,
  firstYear: null,
  pins: [],
  never: [],
  dear: [],
};
const season = { from: asMonthDay('03-01'), to: asMonthDay('10-31') };

/** Stands of a plot that begin in the years planned, and those before them. */
function standsOf(farm: Farm, plot: string, years: readonly [from: number, to: number]) {
  const plan = planFarm(farm, { today: wish.today, fromYear: years[0] - 8, toYear: years[1] });
  return (plan.ground.find((one) => one.plot === plot)?.stands ?? []).filter(
    (one) => (one.courseYear ?? 0) <= years[1],
  );
}

test('a proposal, laid out with its days, breaks no hard rest and asks for no ground twice, by the plan and by the calendar', async () => {
  let proposals = 0;
  await fc.assert(
    fc.asyncProperty(fc.nat(100_000), async (seed) => {
      const farm = rotatingFarm(seed);
      const proposed = await proposeRotation(farm, wish, { ask, solver: noSolver });
      if (proposed.kind !== 'proposal') return;
      proposals += 1;
      const { asked } = proposed;
      expect(planBreaches(asked.problem, proposed.answer.plan)).toEqual([]);
      const hard = proposed.findings.filter(
        (one) =>
          one.gravity === 'put-right' &&
          ['stands-overlap', 'family-back-too-soon', 'organism-back-too-soon'].includes(one.code),
      );
      expect(hard.map((one) => [seed, one.code, one.place])).toEqual([]);
      for (const plot of asked.plots) {
        const years = [asked.firstYear, asked.firstYear + wish.years - 1] as const;
        const stands = standsOf(proposed.farm, plot.id, years);
        const fromYear = `${asked.firstYear}-01-01`;
        const laterIds = new Set(
          stands.filter((one) => one.from >= fromYear && (one.courseYear ?? 0) >= asked.firstYear).map((one) => one.id),
        );
        const breaches = datedBreaches(stands as never, season).filter((one) => laterIds.has(one.later));
        expect(breaches.map((one) => [seed, one])).toEqual([]);
      }
    }),
    { numRuns: 25, seed: 11 },
  );
  expect(proposals).toBeGreaterThan(10);
}, 240_000);

test('ground stays bare in the wet season only where no cover can soundly be sown, and the proposal says where', async () => {
  let named = 0;
  for (const seed of [3, 5, 8, 9, 13, 20]) {
    const proposed = await proposeRotation(rotatingFarm(seed), wish, { ask, solver: noSolver });
    if (proposed.kind !== 'proposal') continue;
    const bare = proposed.findings.filter(
      (one) => one.code === 'bare-in-leaching-season' && one.gravity === 'put-right',
    );
    named += bare.length;
    const { firstYear, problem } = proposed.asked;
    const gaps = coversForFarm(proposed.farm, {
      today: wish.today,
      fromYear: firstYear - 1,
      toYear: firstYear + problem.years - 1,
    });
    for (const finding of bare) {
      const here = gaps.filter(
        (gap) =>
          gap.plot === finding.place.plot &&
          gap.from <= (finding.place.to ?? '') &&
          gap.to >= (finding.place.from ?? ''),
      );
      for (const gap of here)
        expect(
          gap.choices
            .filter((one) => one.isSound && (one.wetDaysCoveredShare ?? 0) > 0.5)
            .map((one) => [seed, gap.from, one.cover]),
        ).toEqual([]);
    }
  }
  expect(named).toBeLessThan(25);
}, 240_000);

test('the sample farm keeps its order, and nothing hard is left to put right but what its own order leaves', async () => {
  const proposed = await proposeRotation(sampleFarm(), { ...wish, today: sampleToday }, { ask, solver: noSolver });
  expect(proposed.kind).toBe('proposal');
  if (proposed.kind !== 'proposal') return;
  expect(proposed.farm.rotation?.placed).toEqual([]);
  expect(proposed.findings.filter((one) => one.code === 'stands-overlap')).toEqual([]);
});

test('a wish is kept: potatoes on B in 2030 stand there, or the rules against it are named', async () => {
  const pins = [{ plot: 'b', year: 2031, course: 'potatoes' }];
  const proposed = await proposeRotation(
    sampleFarm(),
    { ...wish, today: sampleToday, pins },
    { ask, solver: noSolver },
  );
  if (proposed.kind === 'proposal')
    expect(proposed.cells.find((one) => one.plot === 'b' && one.year === 2031)?.course).toBe('potatoes');
  else
    expect(proposed.kind === 'no-plan' && proposed.conflicts[0]?.lifted.some((one) => one.rule.kind === 'pin')).toBe(
      true,
    );
});

test('a farm without a rotation is told so', () => {
  expect(farmProblem({ ...sampleFarm(), rotation: null }, wish)).toEqual({
    kind: 'nothing-to-plan',
    why: 'no-rotation',
  });
});
