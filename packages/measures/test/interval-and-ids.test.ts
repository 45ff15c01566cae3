import { asId, intervals, type PlotId, readId } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const {
  addIntervals,
  between,
  exactly,
  interval,
  multiplyIntervals,
  scaleInterval,
  subtractIntervals,
  sumIndependent,
} = intervals;

const anInterval = fc
  .tuple(
    fc.double({ min: -1e4, max: 1e4, noNaN: true }),
    fc.double({ min: 0, max: 1e3, noNaN: true }),
    fc.double({ min: 0, max: 1e3, noNaN: true }),
  )
  .map(([typ, below, above]) => interval(typ - below, typ, typ + above));

describe('figures with doubt', () => {
  test('low goes with low when added, and with high when taken away', () => {
    const fixed = interval(100, 200, 300);
    const sold = interval(50, 60, 80);
    expect(addIntervals(fixed, sold)).toEqual({ low: 150, typ: 260, high: 380 });
    expect(subtractIntervals(fixed, sold)).toEqual({ low: 20, typ: 140, high: 250 });
    expect(scaleInterval(fixed, -1)).toEqual({ low: -300, typ: -200, high: -100 });
    expect(multiplyIntervals(between(1, 3), between(-1, 1))).toEqual({ low: -3, typ: 0, high: 3 });
    expect(() => interval(2, 1, 3)).toThrow(/upward/);
  });

  test('independent doubts add as squares: four of ± 10 make ± 20', () => {
    expect(sumIndependent(Array.from({ length: 4 }, () => interval(90, 100, 110)))).toEqual({
      low: 380,
      typ: 400,
      high: 420,
    });
    expect(sumIndependent([])).toEqual(exactly(0));
  });

  test('no sum or difference ever runs downward, and the independent sum is never the wider', () => {
    fc.assert(
      fc.property(anInterval, anInterval, (a, b) => {
        const together = addIntervals(a, b);
        const independent = sumIndependent([a, b]);
        const room = 1e-9 * (1 + Math.abs(together.low) + Math.abs(together.high));
        expect(independent.low).toBeGreaterThanOrEqual(together.low - room);
        expect(independent.high).toBeLessThanOrEqual(together.high + room);
        for (const sum of [together, independent, subtractIntervals(a, b)]) {
          expect(sum.low).toBeLessThanOrEqual(sum.typ + room);
          expect(sum.typ).toBeLessThanOrEqual(sum.high + room);
        }
      }),
    );
  });
});

describe('an id', () => {
  test('is letters and digits of any language, joined by dashes, points or colons', () => {
    for (const text of [
      'A',
      'plot-1',
      'österfeld',
      'carrot-maincrop',
      '0190f3a2-7b1c-7000-8000-000000000000',
      'area:plot-1:2027-w02',
      'bed_3',
    ]) {
      expect(readId<PlotId>(text), text).toBe(text);
    }
    expect(readId(' A ')).toBe('A');
  });

  test('is not a sentence, a path, a formula or anything longer than 64 letters', () => {
    for (const text of [
      '',
      ' ',
      'Top field',
      '../plots',
      'a/b',
      '=1+1',
      '-a',
      'a--b',
      'a\nb',
      '__proto__',
      'x'.repeat(65),
    ])
      expect(readId(text), text).toBeNull();
    expect(() => asId('Top field')).toThrow(/not an id/);
  });
});
