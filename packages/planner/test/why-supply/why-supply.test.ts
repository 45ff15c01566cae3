import { boxPromise, boxSize, sampleFarm, sampleToday } from '@leywright/farm-kit';
import { describe, expect, test } from 'vitest';
import { planFarm } from '../../src/plan/planner.ts';
import { whyOf } from '../../src/why/why-of.ts';

const farm = sampleFarm();
const wish = { today: sampleToday, year: 2027 };
const plan = planFarm(farm, wish);
const supply = plan.supply;
if (supply === null) throw new Error('the sample farm promises boxes');

describe('every figure of supply and work opens to its own value', () => {
  test.each(['potato-maincrop', 'lettuce-head', 'carrot-maincrop'])('ground and seed of %s', (crop) => {
    const need = supply.needs.find((one) => one.crop === crop);
    const area = whyOf(farm, wish, need?.why.area ?? '');
    expect(area?.value).toBe(need?.needM2);
    expect(area?.inputs.length).toBeGreaterThan(2);
    expect(area?.sum).toContain('=');
    expect(whyOf(farm, wish, need?.why.seed ?? '')?.value).toBe(need?.seeds ?? need?.setKg);
  });
  test('a week in store, and the week before it', () => {
    const run = supply.stores.find((one) => one.crop === 'carrot-maincrop');
    const row = run?.weeks[8];
    const why = whyOf(farm, wish, `store/carrot-maincrop/${row?.week}`);
    expect(why?.value).toBe(row?.closeKg);
    expect(why?.inputs[0]?.why).toBe(`store/carrot-maincrop/${run?.weeks[7]?.week}`);
  });
  test('a box, a week’s hours, the reach', () => {
    const box = supply.boxes[30];
    expect(whyOf(farm, wish, box?.why ?? '')?.value).toBe(box?.itemsPerBox);
    const week = plan.work.weeks[20];
    expect(whyOf(farm, wish, week?.why ?? '')?.value).toBeCloseTo(week?.hours.typ ?? 0, 9);
    expect(whyOf(farm, wish, supply.reach?.why ?? '')?.value).toBe(supply.reach?.households);
  });
  test('no figure, no derivation', () => {
    for (const id of [
      'area/unicorn/2027',
      'store/carrot-maincrop/2027-w99',
      'box/9999-w01',
      'hours/',
      'reach/abcd/x/y',
      'seed/',
    ])
      expect(whyOf(farm, { ...wish }, id === 'reach/abcd/x/y' ? 'reach/1800' : id)).toBeNull();
  });
});

describe('a lever', () => {
  test('is the plan worked out again: a tenth fewer households is what the plan then says', () => {
    const why = whyOf(farm, wish, 'area/onion-set/2027');
    const lever = why?.levers.find((one) => one.change === 'households');
    const sizes = (farm.promise?.sizes ?? []).map((size) => boxSize(size.id, size.households * 0.9));
    const fewer = planFarm({ ...farm, promise: boxPromise({ ...farm.promise, sizes }) }, wish);
    expect(lever?.result).toBeCloseTo(fewer.supply?.needs.find((one) => one.crop === 'onion-set')?.needM2 ?? 0, 6);
  });
  test('there are two or three of them', () => {
    for (const id of [
      'area/onion-set/2027',
      'seed/carrot-maincrop/2027',
      'box/2027-w24',
      'hours/2027-w24',
      'reach/2027',
    ])
      expect(whyOf(farm, wish, id)?.levers.length, id).toBeGreaterThanOrEqual(2);
  });
});
