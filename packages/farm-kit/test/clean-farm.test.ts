import { replay } from '@leywright/book';
import { makePlanner } from '@leywright/planner';
import { describe, expect, test } from 'vitest';
import { cleanFarm, cleanWish, faultCodes, plantFault } from '../src/index.ts';

const planner = makePlanner();

test('the clean farm has nothing to be found, not even a note', () => {
  expect(planner.plan(cleanFarm(), cleanWish).findings).toEqual([]);
});

describe.each(faultCodes)('%s, planted in the clean farm', (code) => {
  test.each([1, 2, 3, 4, 5])('is found in its place, and nothing else (seed %i)', (seed) => {
    const planted = plantFault(code, cleanFarm(), seed);
    const { farm, findings: book } = replay(planted.farm, planted.entries);
    const { findings } = planner.plan(farm, { ...cleanWish, book });
    expect(findings.map((one) => one.code)).toEqual([code]);
    expect(findings[0]?.place).toMatchObject(planted.place);
  });
});
