import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readPromiseProblem } from '../../src/promise-problem/read-problem.ts';

interface Said extends Record<string, unknown> {
  crops: Record<string, unknown>[];
  succ: Record<string, unknown>[];
  slotNeed: Record<string, number[]>;
}

const instance = () =>
  JSON.parse(readFileSync(new URL('../../../../bench/promise-instances/o2-s-a.json', import.meta.url), 'utf8')) as Said;

test('an instance of ours is read whole, its hundreds of square metres as square metres', () => {
  const read = readPromiseProblem(instance());
  if (read.kind !== 'problem') throw new Error(JSON.stringify(read.faults));
  expect([read.problem.crops.length, read.problem.successions.length, read.problem.weeks]).toEqual([12, 66, 52]);
  expect(read.problem.groundM2['POT']).toBeCloseTo(1280, 9);
  expect(read.problem.successions[0]?.readyKgM2[0]).toBeCloseTo(1.2313, 9);
});

test('everything wrong is said at once, each with its place, what was found and what would do', () => {
  const said = instance();
  said['households'] = [100, 100];
  said.crops[2] = { ...said.crops[2], portionMin: 'a lot' };
  said.succ[4] = { ...said.succ[4], keep: 1.4 };
  const read = readPromiseProblem(said);
  expect(read.kind === 'faults' ? read.faults.map((fault) => fault.place) : []).toEqual(
    expect.arrayContaining(['households', 'crops.2.portionMin', 'succ.4.keep']),
  );
});

test('names that lead nowhere are told with the names there are', () => {
  const said = instance();
  said.crops[0] = { ...said.crops[0], group: 'POTS', slot: 'stapel' };
  said.succ[1] = { ...said.succ[1], crop: 99 };
  const read = readPromiseProblem(said);
  expect(read.kind === 'faults' ? read.faults.map((fault) => [fault.place, fault.found]) : []).toEqual([
    ['crops.0.group', 'POTS'],
    ['crops.0.slot', 'stapel'],
    ['succ.1.crop', '99'],
  ]);
});

test('what is no promise at all is a list of faults, never an exception', () => {
  for (const said of [null, 3, 'promise', [], {}, { schema: 'o2-1', W: 52, stores: 4 }])
    expect(readPromiseProblem(said).kind).toBe('faults');
});
