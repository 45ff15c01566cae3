import { asIsoWeek } from '@leywright/measures';
import type { WorkWeek } from '@leywright/planner';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { brickGroups, brickWeek } from '../../src/pictures/work/bricks.ts';

const week = (byKind: WorkWeek['byKind'], handsH: number | null): WorkWeek => {
  const typ = Object.values(byKind).reduce((sum, hours) => sum + hours, 0);
  return { week: asIsoWeek('2027-w22'), hours: { low: typ, typ, high: typ }, handsH, byKind, why: '' };
};

describe('bricks of a week', () => {
  test('eight hours are a brick, packing at the foot and upkeep on top', () => {
    const { bricks } = brickWeek(week({ net: 8, pack: 16, cut: 8, plant: 8, hoe: 8 }, null));
    expect(bricks).toEqual(['pack', 'pack', 'pick', 'sow', 'weed', 'upkeep']);
  });

  test('what there are no hands for is missing: 40 hours against 24 are two days', () => {
    expect(brickWeek(week({ plant: 40 }, 24))).toMatchObject({ there: 3, roof: 3 });
    expect(brickWeek(week({ plant: 24 }, 24)).there).toBe(3);
    expect(brickWeek(week({ plant: 25 }, 24)).there).toBe(2); // over by an hour: somebody is lacking
  });

  test('hands nobody wrote down make no roof, and nothing is missing', () => {
    expect(brickWeek(week({ plant: 80 }, null))).toMatchObject({ there: 10, roof: null });
  });

  test('no hours are lost by rounding: bricks are the week’s hours in whole days, groups in their order', () => {
    const hours = fc.double({ min: 0, max: 90, noNaN: true });
    fc.assert(
      fc.property(fc.record({ pack: hours, cut: hours, plant: hours, hoe: hours, net: hours }), (byKind) => {
        const { bricks } = brickWeek(week(byKind, 100));
        expect(
          Math.abs(bricks.length - Object.values(byKind).reduce((sum, one) => sum + one, 0) / 8),
        ).toBeLessThanOrEqual(0.5 + 1e-9);
        const order = bricks.map((group) => brickGroups.indexOf(group));
        expect(order).toEqual(order.toSorted((a, b) => a - b));
      }),
    );
  });
});
