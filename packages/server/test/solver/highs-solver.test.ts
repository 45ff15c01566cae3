/** The solver's threads: what is asked wrongly, stopped or broken never takes the next one with it. */
import { smallRotations } from '@leywright/farm-kit';
import { type LinearModel, type RotationProblem, rotations, type SolveAsk } from '@leywright/planner';
import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import { highsSolver } from '../../src/solver/highs-solver.ts';

const solver = highsSolver();
afterAll(() => solver.close());

/** Take things of some worth and weight into a bag: the best of many whole choices. */
function bagModel(things: number): LinearModel {
  const worth = Array.from({ length: things }, (_, at) => 10 + ((at * 37) % 61));
  const weight = Array.from({ length: things }, (_, at) => 10 + ((at * 53) % 59));
  return {
    columnCount: things,
    rowCount: 1,
    costWeight: Float64Array.from(worth, (one) => -one),
    columnLow: new Float64Array(things),
    columnHigh: new Float64Array(things).fill(1),
    wholeIndex: new Int32Array(things).fill(1),
    rowLow: Float64Array.of(Number.NEGATIVE_INFINITY),
    rowHigh: Float64Array.of(100.5),
    rowStarts: Int32Array.of(0, things),
    entryIndex: Int32Array.from(worth, (_, at) => at),
    entryValue: Float64Array.from(weight),
    offsetScore: 0,
  };
}

/** The bag by trying every weight: a second way to the same answer. */
function bestWorth(model: LinearModel): number {
  const best = new Array<number>(101).fill(0);
  for (let at = 0; at < model.columnCount; at++)
    for (let room = 100; room >= (model.entryValue[at] ?? 0); room--)
      best[room] = Math.max(
        best[room] ?? 0,
        (best[room - (model.entryValue[at] ?? 0)] ?? 0) - (model.costWeight[at] ?? 0),
      );
  return best[100] ?? 0;
}

const ask = (model: LinearModel): SolveAsk => ({ model, timeLimitS: 20, gapShare: 0 });

test('the best is found and proven', async () => {
  const model = bagModel(20);
  const answer = await solver.solve(ask(model));
  expect(answer.ending).toBe('optimal');
  expect(answer.boundScore).toBeCloseTo(-bestWorth(model), 6);
});

test('a model that breaks the machine code is told as failed, and the next one is solved in a fresh thread', async () => {
  const broken = { ...bagModel(5), entryIndex: Int32Array.of(0, 1, 2, 3, 77) };
  const answer = await solver.solve(ask(broken));
  expect(answer.ending).toBe('failed');
  expect(answer.failure).not.toBeNull();
  expect(answer.failure?.length ?? 0).toBeLessThan(300);
  expect((await solver.solve(ask(bagModel(12)))).ending).toBe('optimal');
});

test('what cannot be kept is told as infeasible', async () => {
  const model = bagModel(3);
  const answer = await solver.solve(ask({ ...model, rowLow: Float64Array.of(1000), rowHigh: Float64Array.of(2000) }));
  expect(answer.ending).toBe('infeasible');
  expect(answer.values).toBeNull();
});

test('a run that is stopped comes back soon, whatever the solver is doing', async () => {
  const startedMs = performance.now();
  const answer = await solver.solve({ ...ask(bagModel(4000)), timeLimitS: 60, stop: { isStopped: () => true } });
  expect(['stopped', 'optimal']).toContain(answer.ending);
  expect(performance.now() - startedMs).toBeLessThan(15_000);
});

test('fifty farms one after another leave the memory as it was', async () => {
  const farms: readonly RotationProblem[] = fc.sample(smallRotations, { numRuns: 50, seed: 7 });
  const usedMb: number[] = [];
  for (const problem of farms) {
    await rotations.solveRotation(problem, { timeLimitS: 10, gapShare: 0 }, solver);
    usedMb.push(process.memoryUsage().rss / 2 ** 20);
  }
  const early = Math.max(...usedMb.slice(10, 25));
  expect(Math.max(...usedMb.slice(35)) - early).toBeLessThan(80);
}, 120_000);
