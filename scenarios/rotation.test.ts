/** Scenarios that ask for a rotation: each folder with an expected-rotation.json, through the importer, the planner and the solver; one assertion a figure. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { tellRotation } from '@leywright/api';
import { readFarmFolder, replay } from '@leywright/book';
import { type ExpectedFigure, judge } from '@leywright/farm-kit';
import { asDay } from '@leywright/measures';
import { type FarmRotationWish, knownNames, rotations } from '@leywright/planner';
import { highsSolver } from '@leywright/server';
import { afterAll, describe, expect, test } from 'vitest';
import { farmFiles, scenariosFolder } from './read-scenario.ts';

interface Asked {
  readonly wish: Partial<FarmRotationWish>;
  readonly figures: readonly ExpectedFigure[];
}

interface ExpectedRotation {
  readonly today: string;
  /** Where the expected figures come from. */
  readonly source: string;
  readonly asked: Readonly<Record<string, Asked>>;
}

const solver = highsSolver();
afterAll(() => solver.close());

async function toldOf(folder: string, today: string, wish: Asked['wish']) {
  const reading = readFarmFolder(farmFiles(folder), knownNames());
  if (reading.farm === null) throw new Error(JSON.stringify(reading.problems));
  const { farm } = replay(reading.farm, reading.entries);
  const whole = { years: 8, firstYear: null, pins: [], never: [], dear: [], ...wish, today: asDay(today) };
  const ask = { timeLimitS: 4, gapShare: 0 };
  return tellRotation(await rotations.proposeRotation(farm, whole, { ask, solver }), { farm, today: asDay(today) });
}

const folders = readdirSync(scenariosFolder)
  .sort()
  .map((name) => join(scenariosFolder, name))
  .filter((folder) => existsSync(join(folder, 'expected-rotation.json')));

describe.each(folders)('%s', (folder) => {
  const expected = JSON.parse(readFileSync(join(folder, 'expected-rotation.json'), 'utf8')) as ExpectedRotation;

  test('asks its question in words and says where its figures come from', () => {
    expect(readFileSync(join(folder, 'question.md'), 'utf8')).toMatch(/^# .+\?/);
    expect(expected.source).not.toBe('');
  });

  test.each(Object.entries(expected.asked))('%s', async (_what, { wish, figures }) => {
    const told = await toldOf(folder, expected.today, wish);
    const missed = figures.flatMap((figure) => {
      const verdict = judge(told, figure);
      return verdict.kind === 'met'
        ? []
        : [`${figure.what} (${figure.at}): got ${JSON.stringify(verdict.got)}, expected ${verdict.expected}`];
    });
    expect(missed).toEqual([]);
    expect(figures.length).toBeGreaterThan(0);
  });
});
