import { daysBetween } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyEdit, anyFarm, edited, randomFarm } from '../src/index.ts';

describe('farms from a seed', () => {
  test('are the same farm every time, and another for another seed', () => {
    const size = { seed: 7, plots: 6, years: 10, crops: 12 };
    expect(randomFarm(size)).toEqual(randomFarm(size));
    expect(randomFarm({ ...size, seed: 8 })).not.toEqual(randomFarm(size));
  });
  test('have the plots, years and crops that were asked for', () => {
    const farm = randomFarm({ seed: 1, plots: 40, years: 12, crops: 5, firstYear: 2015 });
    expect(farm.plots).toHaveLength(40);
    expect(new Set(farm.stands.filter((one) => one.kind === 'crop').map((one) => one.what)).size).toBe(5);
    expect(farm.stands.some((one) => one.from.startsWith('2015'))).toBe(true);
    expect(farm.stands.some((one) => one.from.startsWith('2026'))).toBe(true);
  });
  test('have stands with ids of their own that end after they begin, and hosts that are there', () => {
    const farm = randomFarm({ seed: 3, plots: 30, years: 10, crops: 16 });
    const ids = new Set(farm.stands.map((one) => one.id));
    expect(ids.size).toBe(farm.stands.length);
    for (const one of farm.stands) {
      expect(daysBetween(one.from, one.to)).toBeGreaterThan(0);
      if (one.undersownIn !== null) expect(ids.has(one.undersownIn)).toBe(true);
    }
  });
});

test('an edit changes a farm without touching the farm it was made from', () => {
  fc.assert(
    fc.property(anyFarm(), anyEdit(), (farm, edit) => {
      const before = JSON.stringify(farm);
      const after = edited(farm, edit);
      expect(JSON.stringify(farm)).toBe(before);
      expect(after.stands.every((one) => one.to > one.from)).toBe(true);
    }),
  );
});
