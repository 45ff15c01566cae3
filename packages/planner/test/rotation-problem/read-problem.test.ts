import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readRotationProblem } from '../../src/rotation-problem/read-problem.ts';

const instance = () =>
  JSON.parse(
    readFileSync(new URL('../../../../bench/rotation-instances/o1-s7-a.json', import.meta.url), 'utf8'),
  ) as Record<string, unknown> & { plots: Record<string, unknown>[]; options: Record<string, unknown>[] };

test('an instance of ours is read whole', () => {
  const read = readRotationProblem(instance());
  expect(read.kind).toBe('problem');
  if (read.kind === 'problem') expect([read.problem.plots.length, read.problem.years]).toEqual([7, 10]);
});

test('everything wrong is said at once, each with its place, what was found and what would do', () => {
  const said = instance();
  said['years'] = 0;
  said.plots[1] = { ...said.plots[1], area: 'large' };
  said.options[0] = { ...said.options[0], hosts: 'all' };
  const read = readRotationProblem(said);
  expect(read.kind).toBe('faults');
  if (read.kind === 'faults')
    expect(read.faults.map((fault) => fault.place)).toEqual(
      expect.arrayContaining(['years', 'plots.1.area', 'options.0.hosts']),
    );
});

test('names that lead nowhere are told with the nearest that is known', () => {
  const said = instance();
  said.plots[0] = { ...said.plots[0], history: ['P0T'] };
  const read = readRotationProblem(said);
  expect(read.kind === 'faults' && read.faults[0]?.place).toBe('plots.0.history');
});

test('what is no farm at all is a list of faults, never an exception', () => {
  for (const said of [null, 3, 'farm', [], {}]) expect(readRotationProblem(said).kind).toBe('faults');
});
