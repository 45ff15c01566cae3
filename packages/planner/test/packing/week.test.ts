/** A week's packing from the plan of the sample farm; and who goes without when there is not enough. */
import { sampleFarm, sampleToday } from '@leywright/farm-kit';
import { packing, planFarm } from '@leywright/planner';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';

const farm = sampleFarm(sampleToday);
const plan = planFarm(farm, { today: sampleToday });
const open = plan.supply?.boxes.find((week) => week.closed === null && week.items.length > 3);

test('what is picked is what the boxes need, a twentieth over where it is cut fresh', () => {
  if (open === undefined) throw new Error('No open week.');
  const week = packing.packWeek(plan, farm, open.week);
  expect(week?.boxes).toBe(open.boxes);
  for (const pick of week?.picks ?? []) {
    const share = open.items.find((item) => item.crop === pick.crop && item.from === pick.from)?.boxesShare ?? 0;
    const needed = (week?.sizes ?? []).reduce(
      (sum, size) =>
        sum + size.boxes * share * (size.lines.find((line) => line.crop === pick.crop)?.portionQuantity ?? 0),
      0,
    );
    expect(pick.neededQuantity).toBeCloseTo(needed, 6);
    if (pick.unit === 'kg') expect(pick.toCutQuantity).toBeCloseTo(needed * (pick.from === 'store' ? 1 : 1.05), 6);
    else expect(Number.isInteger(pick.toCutQuantity)).toBe(true);
  }
});

test('a box of thirty kilos of potatoes is too heavy for one pair of hands', () => {
  if (open === undefined || farm.promise === null) throw new Error('No open week.');
  const heavy = {
    ...plan,
    supply:
      plan.supply === null
        ? null
        : {
            ...plan.supply,
            boxes: plan.supply.boxes.map((week) => ({
              ...week,
              items: week.items.map((item) => ({ ...item, unit: 'kg' as const, portions: { small: 30 } })).slice(0, 1),
            })),
          },
  };
  const week = packing.packWeek(heavy, farm, open.week);
  expect(week?.sizes.map((size) => [size.size, size.isTooHeavy])).toEqual([
    ['small', true],
    ['medium', false],
    ['large', false],
  ]);
});

test('a week nobody planned has no packing', () => {
  expect(packing.packWeek(plan, farm, '1999-w01' as never)).toBeNull();
});

test('over many short weeks nobody has had the substitute more than once oftener than another', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 12 }),
      fc.array(fc.integer({ min: 0, max: 12 }), { maxLength: 30 }),
      (count, shorts) => {
        let households = Array.from({ length: count }, (_, at) => ({ household: `h${at}`, weeks: [] as never[] }));
        shorts.forEach((short, at) => {
          const without = new Set(packing.goWithout(households, Math.min(short, count)));
          expect(without.size).toBe(Math.min(short, count));
          const week = `2027-w${String(at + 1).padStart(2, '0')}` as never;
          households = households.map((one) =>
            without.has(one.household) ? { ...one, weeks: [...one.weeks, week] } : one,
          );
        });
        const times = households.map((one) => one.weeks.length);
        expect(Math.max(...times) - Math.min(...times)).toBeLessThanOrEqual(1);
      },
    ),
  );
});
