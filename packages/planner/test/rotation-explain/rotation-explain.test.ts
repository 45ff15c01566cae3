/** Explanations of a rotation, each against trying every sequence. */
import { smallRotations } from '@leywright/farm-kit';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bestSequences } from '../../src/rotation-explain/best-sequences.ts';
import { cellChoices } from '../../src/rotation-explain/cell-choices.ts';
import { canKeep, conflictOf, liftedOf } from '../../src/rotation-explain/conflict.ts';
import { whyNot } from '../../src/rotation-explain/why-not.ts';
import { scoreOfPlan } from '../../src/rotation-model/score.ts';
import type { RotationPlan, RotationProblem } from '../../src/rotation-problem/problem.ts';
import { sequenceBreaches } from '../../src/rotation-proof/check-plan.ts';
import { plainScore } from '../../src/rotation-proof/exhaustive.ts';

const runs = { numRuns: 60, seed: 4 };

/** Every lawful sequence of options of a plot, by the plain checker. */
function lawfulSequences(problem: RotationProblem, plotIndex: number): readonly (readonly string[])[] {
  const plot = problem.plots[plotIndex];
  if (plot === undefined) return [];
  let all: (readonly string[])[] = [[]];
  for (let year = 0; year < problem.years; year++)
    all = all.flatMap((begun) => problem.options.map((option) => [...begun, option.id]));
  return all.filter((sequence) => sequenceBreaches(problem, plot, sequence).length === 0);
}

const courseOf = (problem: RotationProblem, option: string) =>
  problem.options.find((one) => one.id === option)?.course ?? '';

/** A lawful plan by chance; null when a plot has none. */
function anyPlan(problem: RotationProblem, pick: number): RotationPlan | null {
  const plan = problem.plots.map((plot, at) => {
    if (!plot.isRotated) return [];
    const lawful = lawfulSequences(problem, at);
    return lawful[pick % Math.max(1, lawful.length)] ?? null;
  });
  return plan.some((one) => one === null) ? null : plan.map((one) => one ?? []);
}

const with_ = (plan: RotationPlan, plotIndex: number, sequence: readonly string[]): RotationPlan =>
  plan.map((own, at) => (at === plotIndex ? sequence : own));

test('a plot has a conflict exactly when no sequence is lawful; its rules cannot be kept together, but can when any one is laid aside', () => {
  let conflicts = 0;
  fc.assert(
    fc.property(smallRotations, (problem) => {
      for (const [plotIndex, plot] of problem.plots.entries()) {
        if (!plot.isRotated) continue;
        const conflict = conflictOf(problem, plotIndex);
        expect(conflict === null).toBe(lawfulSequences(problem, plotIndex).length > 0);
        if (conflict === null) continue;
        conflicts += 1;
        expect(conflict.rules.length).toBeGreaterThan(0);
        expect(canKeep(problem, plotIndex, conflict.rules)).toBe(false);
        for (const rule of conflict.rules)
          expect(
            canKeep(
              problem,
              plotIndex,
              conflict.rules.filter((one) => one !== rule),
            ),
          ).toBe(true);
        for (const lifted of liftedOf(problem, conflict)) expect(lifted.isEnough).toBe(lifted.sequences > 0);
      }
    }),
    runs,
  );
  expect(conflicts).toBeGreaterThan(10);
});

test('why a course cannot stand in a year is answered exactly where no lawful sequence has it there', () => {
  fc.assert(
    fc.property(smallRotations, (problem) => {
      const lawful = lawfulSequences(problem, 0);
      if (lawful.length === 0 || problem.plots[0]?.isRotated === false) return;
      for (let year = 0; year < problem.years; year++)
        for (const course of problem.courses) {
          if (problem.plots[0]?.pins[year] !== undefined) continue;
          const stands = lawful.some((sequence) => courseOf(problem, sequence[year] ?? '') === course);
          expect(whyNot(problem, 0, { year, course }) === null).toBe(stands);
        }
    }),
    { ...runs, numRuns: 15 },
  );
});

test('the best sequences of a plot are those that trying every one finds best', () => {
  fc.assert(
    fc.property(smallRotations, fc.nat(500), (problem, pick) => {
      const plan = anyPlan(problem, pick);
      if (plan === null) return;
      const now = plainScore(problem, plan);
      const extraOf = (sequence: readonly string[]) => plainScore(problem, with_(plan, 0, sequence)) - now;
      const byCourses = new Map<string, number>();
      for (const sequence of lawfulSequences(problem, 0)) {
        const key = sequence.map((option) => courseOf(problem, option)).join(' ');
        byCourses.set(key, Math.min(byCourses.get(key) ?? Number.POSITIVE_INFINITY, extraOf(sequence)));
      }
      const best = [...byCourses.values()].sort((a, b) => a - b).slice(0, 5);
      const found = bestSequences(problem, { plan, plotIndex: 0, most: 5 });
      // Where the plan has dearer covers than it needs, the cheapest covers count as what it has now.
      const cheapestNow = byCourses.get((plan[0] ?? []).map((option) => courseOf(problem, option)).join(' ')) ?? 0;
      expect(found.length).toBe(best.length);
      for (const [at, one] of found.entries()) expect(one.extraScore).toBeCloseTo((best[at] ?? 0) - cheapestNow, 6);
    }),
    runs,
  );
});

test('the next best of a cell costs what trying every sequence says, and barred courses stand in no lawful one', () => {
  fc.assert(
    fc.property(smallRotations, fc.nat(500), (problem, pick) => {
      const plan = anyPlan(problem, pick);
      if (plan === null) return;
      const lawful = lawfulSequences(problem, 0);
      const scoreWith = (year: number, course: string) =>
        Math.min(
          ...lawful
            .filter((sequence) => courseOf(problem, sequence[year] ?? '') === course)
            .map((sequence) => plainScore(problem, with_(plan, 0, sequence))),
        );
      for (const cell of cellChoices(problem, { plan, plotIndex: 0 })) {
        for (const other of cell.others)
          expect(other.extraScore).toBeCloseTo(
            scoreWith(cell.year, other.course) - scoreWith(cell.year, cell.course),
            6,
          );
        for (const course of cell.barred) expect(scoreWith(cell.year, course)).toBe(Number.POSITIVE_INFINITY);
        expect(1 + cell.others.length + cell.barred.length).toBe(problem.courses.length);
      }
    }),
    { ...runs, numRuns: 30 },
  );
});

test('the score by rules is the score reckoned straight from its definition', () => {
  fc.assert(
    fc.property(smallRotations, fc.nat(500), (problem, pick) => {
      const plan = anyPlan(problem, pick);
      if (plan === null) return;
      const { totalScore, byRule } = scoreOfPlan(problem, plan);
      expect(totalScore).toBeCloseTo(plainScore(problem, plan), 6);
      expect(Object.values(byRule).reduce((sum, one) => sum + one, 0)).toBeCloseTo(totalScore, 9);
    }),
    runs,
  );
});
