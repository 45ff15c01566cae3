/** The promise planner against recorded optima, against a second solver, against its own sums added up again, and after edits. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type PromiseProblem, promises } from '@leywright/planner';
import { afterAll, describe, expect, test } from 'vitest';
import { highsKeeper } from '../../src/solver/highs-keeper.ts';
import { highsSolver } from '../../src/solver/highs-solver.ts';
import { mpsOf } from './write-mps.ts';

const solver = highsSolver();
const keeper = highsKeeper();
const machine = { solver, keeper };
afterAll(() => solver.close());

interface Expected {
  readonly lp: { readonly objective: number };
}

function instance(name: string) {
  const path = new URL(`../../../../bench/promise-instances/${name}.json`, import.meta.url);
  const said = JSON.parse(readFileSync(path, 'utf8')) as { readonly expected: Expected };
  const read = promises.readPromiseProblem(said);
  if (read.kind === 'faults') throw new Error(JSON.stringify(read.faults));
  return { problem: read.problem, expectedScore: said.expected.lp.objective };
}

const relative = (got: number, expected: number) => Math.abs(got - expected) / Math.abs(expected);
const solve = (problem: PromiseProblem) =>
  promises.solvePromise(problem, { timeLimitS: 120, wholeBeds: false }, machine);

describe('instances whose linear optimum GLPK and CBC agreed on (bench/promise-instances)', () => {
  test.each(['o2-s-a', 'o2-m-a', 'o2-l-a'])(
    '%s: the recorded optimum, kept in every limit, and the same cost when added up again',
    async (name) => {
      const { problem, expectedScore } = instance(name);
      const answer = await solve(problem);
      expect(answer.status).toBe('optimal');
      expect(relative(answer.totalScore, expectedScore)).toBeLessThan(1e-6);
      if (answer.plan === null) throw new Error('An optimal answer has a plan.');
      expect(promises.promiseBreaches(problem, answer.plan)).toEqual([]);
      expect(relative(promises.promiseCost(problem, answer.plan), expectedScore)).toBeLessThan(1e-5);
    },
    240_000,
  );

  test.each(['o2-s-a', 'o2-m-a'])(
    '%s in whole beds: within one per cent of the bound, every bed whole, every limit kept',
    async (name) => {
      const { problem, expectedScore } = instance(name);
      const ask = { timeLimitS: 120, wholeBeds: true, proofS: 90, proofGapShare: 0.01 };
      const { wholeBeds } = await promises.solvePromise(problem, ask, machine);
      if (wholeBeds === null) throw new Error('There was no time for whole beds.');
      expect(wholeBeds.gapShare).toBeLessThanOrEqual(0.01);
      expect(wholeBeds.boundScore).toBeGreaterThanOrEqual(expectedScore * (1 - 1e-6));
      expect(relative(promises.promiseCost(problem, wholeBeds.plan), wholeBeds.totalScore)).toBeLessThan(1e-5);
      expect(promises.promiseBreaches(problem, wholeBeds.plan)).toEqual([]);
      problem.successions.forEach(({ bedM2 }, at) => {
        const beds = (wholeBeds.plan.areaM2[at] ?? 0) / bedM2;
        expect(Math.abs(beds - Math.round(beds))).toBeLessThan(1e-5);
      });
    },
    240_000,
  );
});

/** What each prints or writes, and where its objective stands there. */
const others = [
  {
    name: 'glpsol',
    arguments: (mps: string, answer: string) => ['--freemps', mps, '--output', answer],
    objective: /^Objective:\s+\S+ = (\S+)/m,
  },
  {
    name: 'cbc',
    arguments: (mps: string, answer: string) => [mps, '-solve', '-solu', answer],
    objective: /objective value\s+(\S+)/,
  },
];

describe('a second solver, where this machine has one', () => {
  test.for(others)('$name finds the same optimum', { timeout: 240_000 }, (other, context) => {
    const program = process.env[`LEYWRIGHT_${other.name.toUpperCase()}`] ?? other.name;
    if (!isThere(program)) context.skip(`there is no ${other.name} on this machine`);
    const { problem, expectedScore } = instance('o2-s-a');
    const folder = mkdtempSync(join(tmpdir(), 'leywright-mps-'));
    const [mps, answer] = [join(folder, 'promise.mps'), join(folder, 'answer.txt')];
    writeFileSync(mps, mpsOf(promises.promiseModel(problem).linear));
    execFileSync(program, other.arguments(mps, answer), { stdio: 'ignore' });
    const found = Number(other.objective.exec(readFileSync(answer, 'utf8'))?.[1]);
    rmSync(folder, { recursive: true });
    expect(relative(found, expectedScore)).toBeLessThan(1e-6);
  });
});

function isThere(program: string): boolean {
  try {
    execFileSync('sh', ['-c', 'command -v "$0"', program], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

describe('after an edit', () => {
  test('the kept model answers as a model built anew, and again as at first when the edit is taken back', async () => {
    const { problem, expectedScore } = instance('o2-s-a');
    const { linear, places } = promises.promiseModel(problem);
    const kept = keeper.keep(linear);
    await kept.run({ timeLimitS: 60, isCold: true });
    const [ground, m2] = Object.entries(problem.groundM2)[3] ?? ['', 0];
    const rows = (factor: number) =>
      (places.groundRows.get(ground) ?? [])
        .filter((place) => place >= 0)
        .map((placeIndex) => ({ placeIndex, low: Number.NEGATIVE_INFINITY, high: (m2 * factor) / 100 }));
    const edited = await kept.run({ change: { rows: rows(0.5) }, timeLimitS: 60 });
    const anew = await solve({ ...problem, groundM2: { ...problem.groundM2, [ground]: m2 / 2 } });
    expect(relative(edited.totalScore, anew.totalScore)).toBeLessThan(1e-6);
    expect(edited.totalScore).toBeGreaterThan(expectedScore * 1.001);
    const back = await kept.run({ change: { rows: rows(1) }, timeLimitS: 60 });
    expect(relative(back.totalScore, expectedScore)).toBeLessThan(1e-6);
    await kept.close();
  }, 120_000);

  test('a thread that is ended loses nothing: the next answer has every change in it', async () => {
    const { problem } = instance('o2-s-a');
    const { linear, places } = promises.promiseModel(problem);
    const kept = keeper.keep(linear);
    const pinned = { columns: [{ placeIndex: places.beds[0] ?? 0, low: 3, high: 3 }] };
    const first = await kept.run({ change: pinned, timeLimitS: 60, isCold: true });
    await kept.close();
    const again = await kept.run({ timeLimitS: 60 });
    expect(again.values?.[places.beds[0] ?? 0]).toBeCloseTo(3, 6);
    expect(relative(again.totalScore, first.totalScore)).toBeLessThan(1e-6);
    await kept.close();
  }, 120_000);
});

describe('the plain checker', () => {
  test('finds each thing that a plan does wrong', async () => {
    const { problem } = instance('o2-s-a');
    const { plan } = await solve(problem);
    if (plan === null) throw new Error('There is a plan.');
    const rulesOf = (broken: typeof plan) =>
      new Set(promises.promiseBreaches(problem, broken).map((breach) => breach.rule));
    const more = (lists: readonly (readonly number[])[], by: number) =>
      lists.map((list) => list.map((one) => one + by));
    expect(rulesOf({ ...plan, areaM2: plan.areaM2.map((m2) => m2 * 1.5) })).toContain('ground');
    expect(rulesOf({ ...plan, areaM2: plan.areaM2.map((m2) => m2 * 0.9) })).toContain('cut-more-than-stands');
    expect(rulesOf({ ...plan, boxedFreshKg: more(plan.boxedFreshKg, 50) })).toContain('more-out-than-in');
    expect(rulesOf({ ...plan, stockKg: more(plan.stockKg, 3000) })).toContain('store-too-full');
    expect(rulesOf({ ...plan, takenKg: more(plan.takenKg, 50) })).toContain('store-does-not-add-up');
    expect(rulesOf({ ...plan, boxedKg: more(plan.boxedKg, 60) })).toContain('box');
    expect(rulesOf({ ...plan, carriedShare: more(plan.carriedShare, 0.2) })).toContain('portion');
    expect(rulesOf({ ...plan, carriedShare: plan.carriedShare.map((list) => list.map(() => 1)) })).toContain(
      'too-many-weeks-running',
    );
    expect(rulesOf({ ...plan, slotShortKg: plan.slotShortKg.map((list) => list.map(() => 0)) })).toContain('slot');
    const overtime = { ...plan, overtimeH: plan.overtimeH.map(() => -200) };
    expect(rulesOf(overtime)).toContain('hands');
  }, 60_000);
});
