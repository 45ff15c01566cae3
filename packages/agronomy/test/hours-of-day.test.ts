import { hoursOfDay, runCheckTable } from '@leywright/agronomy';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readChecks } from './read-checks.ts';

const rows = readChecks('pests.csv').map((row) => ({ id: '', inputs: '', expected: '', tolerance: '', ...row }));

describe('published values of the hours of a day and of blight', () => {
  test.each(rows)('$id agrees with $source ($how_known)', (row) => {
    const [checked] = runCheckTable([row]);
    expect(checked, JSON.stringify(checked)).toMatchObject({ status: 'met' });
  });

  test('all four rows were held, none passed over', () => expect(rows).toHaveLength(4));
});

const anyDay = fc.record({
  latDeg: fc.double({ min: -60, max: 60, noNaN: true }),
  dayOfYear: fc.integer({ min: 1, max: 365 }),
  tMinC: fc.double({ min: -10, max: 20, noNaN: true }),
  rangeC: fc.double({ min: 0, max: 20, noNaN: true }),
  tMinNextC: fc.double({ min: -10, max: 20, noNaN: true }),
});

describe('the hours of a day', () => {
  test('lie between the lowest and the highest that stand about them', () => {
    fc.assert(
      fc.property(anyDay, fc.double({ min: 0, max: 24, noNaN: true }), ({ rangeC, ...ends }, hour) => {
        const day = { ...ends, tMaxC: ends.tMinC + rangeC };
        const tC = hoursOfDay.temperatureAtHourC(day, hour);
        if (tC === null) throw new Error('Below 60 degrees the sun rises every day.');
        expect(tC).toBeGreaterThanOrEqual(Math.min(day.tMinC, day.tMinNextC) - 1e-9);
        expect(tC).toBeLessThanOrEqual(Math.max(day.tMaxC, day.tMinNextC) + 1e-9);
      }),
    );
  });

  test('are warmest 1.86 hours after noon, at the highest temperature of the day', () => {
    const day = { latDeg: 52, dayOfYear: 172, tMinC: 10, tMaxC: 22, tMinNextC: 11 };
    expect(hoursOfDay.temperatureAtHourC(day, 13.86)).toBeCloseTo(22, 9);
    for (const hour of [12, 13, 15, 16]) expect(hoursOfDay.temperatureAtHourC(day, hour)).toBeLessThan(22);
  });

  test('cannot be drawn where the sun does not set, and that is said', () => {
    const day = { latDeg: 78, dayOfYear: 172, tMinC: 3, tMaxC: 7, tMinNextC: 3 };
    expect(hoursOfDay.temperatureAtHourC(day, 12)).toBeNull();
  });

  test('air cooled below its dew point is full, not fuller', () => {
    expect(hoursOfDay.humidityAtPct(5, 1.2)).toBe(100);
  });
});
