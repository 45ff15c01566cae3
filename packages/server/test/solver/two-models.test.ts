/** The rotation's two models against each other and against trying every plan, and both against instances with known optima. */
import { readFileSync } from 'node:fs';
import { smallRotations } from '@leywright/farm-kit';
import { type RotationAnswer, type RotationProblem, rotations } from '@leywright/planner';
import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import { highsSolver } from '../../src/solver/highs-solver.ts';

const solver = highsSolver();
afterAll(() => solver.close());

const solveBy = (problem: RotationProblem, formulation: 'flow' | 'assignment', timeLimitS = 60) =>
  rotations.solveRotation(problem, { timeLimitS, gapShare: 0, formulation }, solver);

/** So many whole plans are looked at one by one; farms with more are passed over. */
const mostPlans = 6_000;

describe('farms of up to four plots and four years', () => {
  test('flow, assignment and trying every plan agree on the best score, or that there is none', async () => {
    let compared = 0;
    await fc.assert(
      fc.asyncProperty(smallRotations, async (problem) => {
        const planCount = rotations.planCountOf(problem);
        if (planCount > mostPlans) return;
        const best = rotations.bestOfAll(problem);
        const flow = await solveBy(problem, 'flow');
        expect(flow.kind).toBe(best === null ? 'no-plan' : 'plan');
        if (best === null || flow.kind === 'no-plan') return;
        const assignment = await solveBy(problem, 'assignment');
        for (const answer of [flow, assignment]) expectProven(answer, best.totalScore);
        expect(rotations.planBreaches(problem, flow.plan)).toEqual([]);
        compared += 1;
      }),
      { numRuns: 60, seed: 20_261_125 },
    );
    expect(compared).toBeGreaterThan(15);
  }, 240_000);
});

/** Proven means that the solver's bound has come up to the score; the bound is the solver's own word about its own model. */
function expectProven(answer: RotationAnswer, score: number) {
  if (answer.kind === 'no-plan') throw new Error('There is a plan, and none was found.');
  expect(answer.status).toBe('optimal');
  expect(answer.totalScore).toBeCloseTo(score, 6);
  expect(answer.boundScore).toBeCloseTo(score, 3);
  expect(answer.score.totalScore).toBeCloseTo(score, 6);
}

function instance(name: string) {
  const path = new URL(`../../../../bench/rotation-instances/${name}.json`, import.meta.url);
  const said = JSON.parse(readFileSync(path, 'utf8')) as { readonly expected: { readonly objective: number } };
  const read = rotations.readRotationProblem(said);
  if (read.kind === 'faults') throw new Error(JSON.stringify(read.faults));
  return { problem: read.problem, expectedScore: said.expected.objective };
}

describe('instances whose optimum several solvers agreed on (bench/rotation-instances)', () => {
  test.each(['o1-s7-a', 'o1-s8-a', 'o1-l40x8-a'])(
    '%s is planned at the recorded optimum, lawfully',
    async (name) => {
      const { problem, expectedScore } = instance(name);
      const answer = await solveBy(problem, 'flow', 120);
      if (answer.kind === 'no-plan') throw new Error('no plan');
      expect(answer.status).toBe('optimal');
      expect(Math.abs(answer.totalScore - expectedScore) / expectedScore).toBeLessThan(1e-6);
      expect(rotations.planBreaches(problem, answer.plan)).toEqual([]);
    },
    150_000,
  );

  test('o1-inf-a: one plot has no lawful sequence; the conflict is the recorded one', () => {
    const { problem } = instance('o1-inf-a');
    const conflict = rotations.conflictOf(
      problem,
      problem.plots.findIndex((plot) => plot.id === 'P1'),
    );
    const rules = conflict?.rules ?? [];
    expect(rules.map((rule) => rule.kind).sort()).toEqual(['followed-by', 'followed-by', 'pin']);
    expect(rotations.canKeep(problem, conflict?.plotIndex ?? -1, rules)).toBe(false);
    for (const rule of rules) {
      const others = rules.filter((one) => one !== rule);
      expect(rotations.canKeep(problem, conflict?.plotIndex ?? -1, others)).toBe(true);
    }
  });
});
