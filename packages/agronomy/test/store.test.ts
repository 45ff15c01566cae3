import { storeLoss } from '@leywright/agronomy';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectPrinted } from './expect-printed.ts';

describe('potatoes for three box sizes over a holiday week, worked by hand', () => {
  // 2025-w41 to w52 lose 0.6 % a week, 2026-w01 on 1.1 %; nothing is issued in 2026-w01.
  const wantedKg = (70 * 1 + 120 * 1.5 + 20 * 2.5) / 0.96;
  const weeks = Array.from({ length: 34 }, (_, at) => ({
    weeklyLossFraction: at < 12 ? 0.006 : 0.011,
    wantedKg: at === 12 ? 0 : wantedKg,
  }));
  const store = storeLoss.drawDown(9900, weeks);
  const leftAt = (week: number) => store.weeks[week]?.leftKg ?? Number.NaN;

  test('312.5 kg a week; 5581.6 kg at the year’s end, 5520.2 a week later, 2305.2 after 2026-w10', () => {
    expectPrinted(wantedKg, '312.5');
    expectPrinted(leftAt(11), '5581.6');
    expectPrinted(leftAt(12), '5520.2');
    expectPrinted(leftAt(21), '2305.2');
  });

  test('28 full weeks to 2026-w17; 16.7 kg are there in w18, 0.053 of the boxes; 1133.3 kg were lost', () => {
    expect(store.fullWeeks).toBe(28);
    expect(store.firstShortWeek).toBe(29);
    expectPrinted(store.weeks[29]?.issuedKg ?? Number.NaN, '16.7');
    expectPrinted((store.weeks[29]?.issuedKg ?? Number.NaN) / wantedKg, '0.053');
    expectPrinted(
      store.weeks.slice(0, 30).reduce((sum, week) => sum + week.lostKg, 0),
      '1133.3',
    );
  });
});

const aWeek = fc.record({
  weeklyLossFraction: fc.double({ min: 0, max: 0.1, noNaN: true }),
  wantedKg: fc.double({ min: 0, max: 500, noNaN: true }),
});

describe('a store', () => {
  test('keeps its account: put in = issued + lost + left, and is never below nought', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20_000, noNaN: true }),
        fc.array(aWeek, { maxLength: 53 }),
        (openingKg, weeks) => {
          const store = storeLoss.drawDown(openingKg, weeks);
          const issuedKg = store.weeks.reduce((sum, week) => sum + week.issuedKg, 0);
          expect(issuedKg + store.lostKg + store.leftKg).toBeCloseTo(openingKg, 6);
          for (const week of store.weeks)
            expect(Math.min(week.leftKg, week.issuedKg, week.shortKg)).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  test('filled with what its weeks ask for meets them all and is then empty', () => {
    fc.assert(
      fc.property(fc.array(aWeek, { minLength: 1, maxLength: 53 }), (weeks) => {
        const store = storeLoss.drawDown(storeLoss.openingFor(weeks), weeks);
        expect(store.leftKg).toBeCloseTo(0, 5);
        expect(store.weeks.every((week) => week.shortKg < 1e-5)).toBe(true);
      }),
    );
  });

  test('a year of weekly losses is twelve months of monthly ones', () => {
    const weekly = storeLoss.weeklyLossFraction(0.04);
    expect(storeLoss.keptOverWeeks(weekly, 365.25 / 7)).toBeCloseTo(0.96 ** 12, 12);
    expect(storeLoss.weeklyLossFraction(0)).toBe(0);
  });
});
