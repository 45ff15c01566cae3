/** Which cover comes first in a gap, and why. */
import type { Stand } from '@leywright/book';
import { cover, day, farmWith, plot, stand } from '@leywright/farm-kit';
import { describe, expect, test } from 'vitest';
import { coversForFarm } from '../../src/cover-choice/farm-covers.ts';

const today = day('2027-06-01');

function gapOf(stands: readonly Stand[]) {
  const farm = farmWith({ plots: [plot('A')], stands });
  const [gap] = coversForFarm(farm, { today, toYear: 2028 });
  if (gap === undefined) throw new Error('no gap');
  return gap;
}

const potatoes = stand('a', 'potato-maincrop', ['2027-04-26', '2027-09-18'], { plantedOn: '2027-04-26' });
const onions = stand('a', 'onion-set', ['2028-04-10', '2028-08-24'], { plantedOn: '2028-04-10' });
const cabbage = stand('a', 'cabbage-autumn', ['2028-06-10', '2028-10-20'], { plantedOn: '2028-06-10' });

describe('after potatoes lifted in the middle of September, before onions', () => {
  const gap = gapOf([potatoes, onions]);
  const at = (id: string) => gap.choices.find((one) => one.cover === id);

  test('rye, alone or with vetch, is the first that is sound (common practice)', () => {
    expect(['grazing-rye', 'mix-rye-vetch']).toContain(gap.choices[0]?.cover);
    expect(gap.choices[0]?.isSound).toBe(true);
    expect(gap.choices[0]?.wetDaysCoveredShare).toBeGreaterThan(0.7);
  });

  test('what should have been sown in August is left out, or late and not sound', () => {
    for (const id of ['crimson-clover', 'phacelia', 'fodder-radish']) expect(at(id)?.isSound ?? false).toBe(false);
  });

  test('it is turned in its weeks before the onions', () => {
    const rye = at('grazing-rye');
    expect(rye?.turnInOn).not.toBeNull();
    expect((rye?.turnInOn ?? '') < '2028-04-10').toBe(true);
    expect(rye?.missingWeeks).toBe(0);
  });
});

test('a gap that opens at the end of October is rye’s alone, and even that is late', () => {
  const gap = gapOf([stand('a', 'carrot-maincrop', ['2027-05-05', '2027-10-28']), onions]);
  expect(gap.choices.map((one) => one.cover)).toContain('grazing-rye');
  expect(gap.choices.find((one) => one.cover === 'grazing-rye')?.lateDays).toBeGreaterThan(7);
  expect(gap.choices.filter((one) => one.isSound)).toEqual([]);
});

test('mustard before cabbage breaks the brassicas’ rest and is never sound', () => {
  const early = stand('a', 'lettuce-head', ['2027-05-01', '2027-08-01']);
  const mustard = gapOf([early, cabbage]).choices.find((one) => one.cover === 'white-mustard');
  expect(mustard?.isSound).toBe(false);
  expect(mustard?.isKinOfNext).toBe(true);
  expect(mustard?.rests.some((rest) => rest.rule === 'fam-brassicaceae' && rest.force === 'hard')).toBe(true);
});

test('a cover the frost ends needs no turning in', () => {
  const early = stand('a', 'lettuce-head', ['2027-05-01', '2027-08-01']);
  const phacelia = gapOf([early, onions]).choices.find((one) => one.cover === 'phacelia');
  if (phacelia?.killedOn !== null) expect(phacelia?.turnInOn).toBeNull();
  expect(phacelia?.frostKillC).toBeLessThan(0);
});

test('squash not yet grown over may be undersown with the ley mix, four to six weeks after planting (reference/covers.csv)', () => {
  const squash = stand('a', 'squash-maxima', ['2027-05-27', '2027-09-28'], { plantedOn: '2027-05-27' });
  const into = gapOf([squash, cabbage]).choices.filter((one) => one.way === 'undersown');
  expect(into.map((one) => one.cover)).toContain('mix-undersow-ley');
  const ley = into.find((one) => one.cover === 'mix-undersow-ley');
  expect((ley?.sowOn ?? '') >= '2027-06-24' && (ley?.sowOn ?? '') <= '2027-07-08').toBe(true);
});

test('ground under a cover is no gap', () => {
  const rye = cover('a', 'grazing-rye', ['2027-09-20', '2028-04-01']);
  const farm = farmWith({ plots: [plot('A')], stands: [potatoes, rye, onions] });
  expect(coversForFarm(farm, { today, toYear: 2028 }).filter((gap) => gap.from < '2028-04-10')).toEqual([]);
});
