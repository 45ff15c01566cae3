import { climate, dailyNormals, thermal, weather } from '@leywright/agronomy';
import { asDay, dayNumber } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const normals = dailyNormals.dailyNormals(climate.climateNear(52, 0).station);
const series = weather.weatherFor({ from: asDay('2027-01-01'), to: asDay('2029-12-31') }, [], normals);
const sums = thermal.thermalSums(series, { baseC: 4 });
const start = series.startDayNumber;

/** Day by day, as one would on paper. */
function plainSum(from: number, to: number): number {
  let sum = 0;
  for (let day = from; day < to; day++)
    sum += Math.max(0, ((series.tMaxC[day - start] ?? 0) + (series.tMinC[day - start] ?? 0)) / 2 - 4);
  return sum;
}

describe('thermal time', () => {
  test('between two days is what adding day by day gives', () => {
    fc.assert(
      fc.property(fc.nat(1000), fc.nat(90), (from, length) => {
        expect(thermal.thermalTimeBetween(sums, start + from, start + from + length)).toBeCloseTo(
          plainSum(start + from, start + from + length),
          6,
        );
      }),
    );
  });

  test('is reached on the first day whose evening has it', () => {
    fc.assert(
      fc.property(fc.nat(700), fc.double({ min: 1, max: 1500, noNaN: true }), (from, needed) => {
        const day = thermal.dayWhenReached(sums, start + from, needed);
        if (day === null) expect(plainSum(start + from, start + series.dayCount)).toBeLessThan(needed + 1e-6);
        else {
          expect(plainSum(start + from, day + 1)).toBeGreaterThanOrEqual(needed - 1e-6);
          expect(plainSum(start + from, day)).toBeLessThan(needed + 1e-6);
        }
      }),
    );
  });

  test('outside the days known is nought, and never reached', () => {
    expect(thermal.thermalTimeBetween(sums, start - 100, start)).toBe(0);
    expect(thermal.dayWhenReached(sums, start + 5000, 1)).toBeNull();
    expect(thermal.dayWhenReached(sums, dayNumber(asDay('2029-12-30')), 500)).toBeNull();
  });

  test('runs faster in a tunnel, stands still in days under ten hours, and is capped where asked', () => {
    const [november, march] = [dayNumber(asDay('2027-11-05')), dayNumber(asDay('2028-02-01'))];
    const resting = thermal.thermalSums(series, { baseC: 4, restInShortDaysLatDeg: 52 });
    expect(thermal.thermalTimeBetween(resting, november, march)).toBe(0);
    expect(thermal.thermalTimeBetween(sums, november, march)).toBeGreaterThan(50);
    const tunnel = thermal.thermalSums(series, { baseC: 4, warmerByC: thermal.tunnelWarmerByC });
    const [june, august] = [dayNumber(asDay('2027-06-01')), dayNumber(asDay('2027-08-01'))];
    expect(
      thermal.thermalTimeBetween(tunnel, june, august) - thermal.thermalTimeBetween(sums, june, august),
    ).toBeCloseTo(3 * 61, 6);
    expect(thermal.thermalTimeBetween(thermal.thermalSums(series, { baseC: 4, upperC: 10 }), june, august)).toBeCloseTo(
      6 * 61,
      6,
    );
  });
});
