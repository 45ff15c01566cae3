import { reference } from '@leywright/agronomy';
import { farmWith, plot } from '@leywright/farm-kit';
import { addDays, asDay, type Day, dayAt } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { harvestWindows } from '../../src/supply/harvest-window.ts';
import { inputOf } from './inputs.ts';

const { climate } = inputOf(farmWith({ plots: [plot('A')] }), '2026-03-01', 2026);
const windowOf = (crop: string, from: string, to: string, planted = true) => {
  const days = {
    sownOn: planted ? null : asDay(from),
    plantedOn: planted ? asDay(from) : null,
    from: asDay(from),
    to: asDay(to),
  };
  const window = harvestWindows(days, reference.crops.get(crop) ?? null, climate, false)[0];
  if (window === undefined) throw new Error(`no harvest of ${crop}`);
  return {
    ...window,
    from: dayAt(window.readyFromDay),
    to: dayAt(window.readyToDay),
    until: dayAt(window.standsUntil),
  };
};

describe('the harvest of a stand', () => {
  test('maincrop carrots sown in May are ready at once in autumn and stand into the new year', () => {
    const window = windowOf('carrot-maincrop', '2026-05-20', '2027-04-01', false);
    expect(window.from > '2026-09-01' && window.from < '2026-11-15').toBe(true);
    expect(window.readyToDay - window.readyFromDay).toBe(7);
    expect(window.until > '2027-01-31').toBe(true);
  });
  test('courgettes are picked for weeks', () => {
    const window = windowOf('courgette', '2026-06-05', '2026-10-15');
    expect(window.readyToDay - window.readyFromDay).toBeGreaterThan(35);
  });
  test('one planting of lettuce is over in two or three weeks', () => {
    const window = windowOf('lettuce-head', '2026-06-01', '2026-10-01');
    expect(window.standsUntil - window.readyFromDay).toBeLessThanOrEqual(21);
  });
  test('purple sprouting waits for the new year, whatever the summer', () => {
    expect(windowOf('broccoli-purple-sprouting', '2026-07-01', '2027-05-15').from).toMatch(/^2027-0[12]/);
  });
  test('a grower who lifts a little before the table’s day has the crop; much before, only part', () => {
    const table = windowOf('potato-maincrop', '2026-04-20', '2026-12-31');
    const early = windowOf('potato-maincrop', '2026-04-20', addDays(table.to, -10));
    expect(early.to <= addDays(table.to, -10)).toBe(true);
    const muchEarly = addDays(table.to, -60);
    expect(windowOf('potato-maincrop', '2026-04-20', muchEarly).to > muchEarly).toBe(true);
  });
  test('rhubarb comes every year from its third', () => {
    const crop = reference.crops.get('rhubarb') ?? null;
    const windows = harvestWindows(
      { sownOn: null, plantedOn: asDay('2020-11-10'), from: asDay('2020-11-10'), to: asDay('2026-12-31') },
      crop,
      climate,
      false,
    );
    expect(windows.map((one) => dayAt(one.readyFromDay))).toEqual([
      '2022-04-01',
      '2023-04-01',
      '2024-04-01',
      '2025-04-01',
      '2026-04-01',
    ]);
  });
  test('runs forward, and a later sowing is never ready earlier', () => {
    const scaled = [...reference.crops.values()].filter((crop) => crop.ttDerivedUse === 'scale').map((crop) => crop.id);
    fc.assert(
      fc.property(
        fc.constantFrom(...scaled),
        fc.integer({ min: 0, max: 150 }),
        fc.integer({ min: 1, max: 40 }),
        (crop, start, later) => {
          const at = (day: Day) => windowOf(crop, day, '2028-12-31');
          const one = at(addDays(asDay('2026-03-15'), start));
          const two = at(addDays(asDay('2026-03-15'), start + later));
          expect(one.readyFromDay).toBeLessThan(one.readyToDay);
          expect(one.readyToDay).toBeLessThanOrEqual(one.standsUntil);
          expect(two.readyFromDay).toBeGreaterThanOrEqual(one.readyFromDay);
        },
      ),
      { numRuns: 60 },
    );
  });
});
