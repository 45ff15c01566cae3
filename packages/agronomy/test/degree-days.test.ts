import { degreeDays } from '@leywright/agronomy';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const { degreeDaysByHeldMean, degreeDaysByMean, degreeDaysBySine, degreeDaysBySineCutOff } = degreeDays;
const aDay = fc
  .tuple(fc.double({ min: -20, max: 30, noNaN: true }), fc.double({ min: 0, max: 25, noNaN: true }))
  .map(([tMin, reach]) => ({ tMin, tMax: tMin + reach }));
const aBase = fc.double({ min: -2, max: 15, noNaN: true });

/** The area between the sine and the base, added up by the two hundredth of a day. */
function sineByParts(day: { tMin: number; tMax: number }, base: number): number {
  const parts = 2000;
  let sum = 0;
  for (let at = 0; at < parts; at++) {
    const t = (day.tMax + day.tMin) / 2 + ((day.tMax - day.tMin) / 2) * Math.sin((2 * Math.PI * (at + 0.5)) / parts);
    sum += Math.max(0, t - base) / parts;
  }
  return sum;
}

describe('degree-days', () => {
  test('the sine is the area under it, added up in small steps', () => {
    fc.assert(
      fc.property(aDay, aBase, (day, base) => {
        expect(degreeDaysBySine(day, base)).toBeCloseTo(sineByParts(day, base), 3);
      }),
    );
  });

  test('no method ever takes warmth away, and a warmer day never counts less', () => {
    fc.assert(
      fc.property(aDay, aBase, fc.double({ min: 0, max: 5, noNaN: true }), (day, base, warmer) => {
        const warm = { tMin: day.tMin + warmer, tMax: day.tMax + warmer };
        const methods = [
          (d: typeof day) => degreeDaysByMean((d.tMax + d.tMin) / 2, base),
          (d: typeof day) => degreeDaysBySine(d, base),
          (d: typeof day) => degreeDaysBySineCutOff(d, base, base + 15),
          (d: typeof day) => degreeDaysByHeldMean(d, base, base + 15),
        ];
        for (const method of methods) {
          expect(method(day)).toBeGreaterThanOrEqual(0);
          expect(method(warm)).toBeGreaterThanOrEqual(method(day) - 1e-9);
        }
      }),
    );
  });

  test('where the night falls under the base the sine still counts the afternoon, the mean may not', () => {
    expect(degreeDaysByMean(4, 4.4)).toBe(0);
    expect(degreeDaysBySine({ tMin: -2, tMax: 10 }, 4.4)).toBeGreaterThan(1);
  });

  test('at or under the base a stage never comes', () => {
    expect(degreeDays.daysAtConstant(5, 5, 100)).toBeNull();
    expect(degreeDays.daysAtConstant(10, 5, 100)).toBe(20);
  });
});
