import type { Farm } from '@leywright/book';
import {
  boxPromise,
  boxSize,
  course,
  courseStand,
  farmWith,
  ownCrop,
  person,
  plot,
  rotation,
  span,
  yearNeed,
} from '@leywright/farm-kit';
import { describe, expect, test } from 'vitest';
import { planSupply } from '../../src/supply/plan-supply.ts';
import { inputOf } from '../supply/inputs.ts';

// Worked case C11 (invented farm, sums by hand): plot 4 net = (4800 - 240) x 0.88 = 4012.8 m2; potatoes need 60 kg / 1.8 kg/m2 = 33.33 m2 a household, so 120
const names = ['ley1', 'ley2', 'potatoes', 'brassicas', 'alliums', 'roots', 'squash-corn'];

function sevenPlots(): Farm {
  const gross = [6200, 5400, 7000, 4800, 6600, 5900, 5100];
  const hedge = [180, 0, 260, 120, 0, 210, 95];
  const crop = (id: string, from = 0, to = 1) =>
    courseStand(id, id, { sow: '05-01', end: '10-01', span: span(from, to) });
  const byNeed = (hoursPerHa: number) => ({ hoursPerHa, hoursFollow: 'need' as const });
  const ley = { hoursPerHa: 14, hoursFollow: 'ground' as const };
  return farmWith({
    about: { conventions: { hedgeBufferM: 2, headlandShare: 0.12, packingHBox: 0.11, deliveryHWeek: 7.5 } },
    plots: gross.map((grossM2, at) =>
      plot(String(at + 1), { grossM2, hedgeM: hedge[at] ?? 0, headlandShare: null, courseAtStart: names[at] ?? '' }),
    ),
    rotation: rotation(2026, [
      course('ley1', [], ley),
      course('ley2', [], ley),
      course('potatoes', [crop('potato-maincrop')], byNeed(300)),
      course('brassicas', [crop('cabbage-autumn')], byNeed(420)),
      course('alliums', [crop('onion-set', 0, 0.5), crop('leek-mid', 0.5, 1)], byNeed(620)),
      course(
        'roots',
        [crop('carrot-maincrop', 0, 0.5), crop('parsnip', 0.5, 0.7), crop('beetroot-maincrop', 0.7, 1)],
        byNeed(560),
      ),
      course('squash-corn', [crop('squash-maxima', 0, 0.6), crop('sweet-corn', 0.6, 1)], byNeed(250)),
    ]),
    crops: Object.entries({
      'potato-maincrop': 18,
      'cabbage-autumn': 15,
      'onion-set': 16,
      'leek-mid': 14,
      'carrot-maincrop': 25,
      parsnip: 16,
      'beetroot-maincrop': 20,
      'squash-maxima': 12.5,
    }).map(([id, yieldPackedTHa]) => ownCrop(id, { yieldPackedTHa })),
    people: [person('grower', { hoursYear: 1250 }), person('seasonal', { hoursYear: 300 })],
    promise: boxPromise({
      sizes: [boxSize('box', 120)],
      boxWeeksPerYear: 51,
      needs: [
        ...Object.entries({
          'potato-maincrop': 60,
          'cabbage-autumn': 45,
          'onion-set': 20,
          'leek-mid': 14,
          'carrot-maincrop': 30,
          parsnip: 8,
          'beetroot-maincrop': 10,
          'squash-maxima': 10,
        }).map(([crop, kgHousehold]) => yearNeed(crop, { kgHousehold })),
        yearNeed('sweet-corn', { m2Household: 5 }),
      ],
    }),
  });
}

const reachOf = (farm: Farm) => planSupply(inputOf(farm, '2026-01-15', 2026))?.reach;

describe('households of seven unequal plots, worked by hand', () => {
  const reach = reachOf(sevenPlots());
  test('ground a household is the sum of what grows in the course', () => {
    const m2 = Object.fromEntries(
      (reach?.years[0]?.courses ?? []).map((one) => [one.course, Number(one.m2Household.toFixed(2))]),
    );
    expect(m2).toEqual({
      ley1: 0,
      ley2: 0,
      potatoes: 33.33,
      brassicas: 30,
      alliums: 22.5,
      roots: 22,
      'squash-corn': 13,
    });
  });
  test.each([
    [2026, [171, 133, 258, 219, 332], 133, 'brassicas'],
    [2027, [142, 190, 178, 264, 370], 142, 'potatoes'],
    [2028, [154, 158, 253, 182, 446], 154, 'potatoes'],
    [2029, [129, 171, 211, 259, 308], 129, 'potatoes'],
    [2030, [144, 144, 228, 216, 438], 144, 'potatoes'],
    [2031, [174, 160, 192, 233, 365], 160, 'brassicas'],
    [2032, [120, 193, 214, 196, 395], 120, 'potatoes'],
  ])('in %i', (year, capacity, households, binding) => {
    const found = reach?.years.find((one) => one.year === year);
    expect(found?.courses.slice(2).map((one) => one.households)).toEqual(capacity);
    expect([found?.households, found?.binding]).toEqual([households, binding]);
    expect(found?.courses.slice(0, 2).map((one) => one.households)).toEqual([null, null]);
  });
  test('the land feeds what its least year feeds: potatoes on plot 4', () => {
    expect(reach?.byLand).toEqual({ households: 120, year: 2032, course: 'potatoes', plot: '4' });
    expect(reach?.bestYear).toBe(2031);
  });
  test('hours bind before the land does, and the ley is not worked harder for more households', () => {
    const hours = reach?.hours;
    expect(hours?.fieldH).toBeCloseTo(640.3, 1);
    expect(hours?.packingH).toBeCloseTo(673.2, 6);
    expect(hours?.deliveryH).toBeCloseTo(382.5, 6);
    expect(hours?.totalH).toBeCloseTo(1696, 0);
    expect(hours?.availableH).toBe(1550);
    expect([reach?.byLabour, reach?.households, reach?.binding]).toEqual([106, 106, 'labour']);
  });
  test('more hours lift it to what the land feeds', () => {
    const farm = { ...sevenPlots(), people: [person('grower', { hoursYear: 3000 })] };
    expect([reachOf(farm)?.households, reachOf(farm)?.binding]).toEqual([120, 'land']);
  });
  test('hours nobody wrote down bind nobody and are not called nought', () => {
    const reach = reachOf({ ...sevenPlots(), people: [] });
    expect([reach?.hours, reach?.byLabour, reach?.households, reach?.binding]).toEqual([null, null, 120, 'land']);
  });
  test('a crop without a yield leaves the reach unknown', () => {
    const farm = sevenPlots();
    const unknown = {
      ...farm,
      crops: [...farm.crops, ownCrop('blue-root')],
      promise:
        farm.promise === null
          ? null
          : { ...farm.promise, needs: [...farm.promise.needs, yearNeed('blue-root', { kgHousehold: 5 })] },
    };
    const courses = (unknown.rotation?.courses ?? []).map((one) =>
      one.id === 'roots'
        ? { ...one, stands: [...one.stands, courseStand('blue', 'blue-root', { sow: '05-01', end: '09-01' })] }
        : one,
    );
    const reach = reachOf({
      ...unknown,
      rotation: unknown.rotation === null ? null : { ...unknown.rotation, courses },
    });
    expect([reach?.byLand, reach?.binding]).toEqual([null, 'unknown']);
  });
});
