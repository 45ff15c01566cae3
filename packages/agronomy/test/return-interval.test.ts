import { decline, returnInterval } from '@leywright/agronomy';
import { addDays, asDay } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const { lastOccupiedYear, occupiedYears, restGap } = returnInterval;

describe('years a stand counts for, worked by hand on eight plots', () => {
  test.each([
    ['mustard from 25 September 2022 to 1 March 2023', '2022-09-25', '2023-03-01', [2022, 2023]],
    ['parsnips that stand to 28 February', '2023-04-20', '2024-02-28', [2023]],
    ['leeks that stand to 31 March', '2021-06-05', '2022-03-31', [2021, 2022]],
    ['purple sprouting to the end of April', '2023-07-25', '2024-04-30', [2023, 2024]],
    ['fodder radish, autumn only', '2022-09-15', '2022-12-20', [2022]],
    ['a cover of the winter months alone', '2022-11-01', '2023-02-28', []],
    ['broad beans sown in November', '2022-11-05', '2023-07-20', [2023]],
    ['a ley of two years', '2022-05-01', '2024-03-01', [2022, 2023, 2024]],
  ])('%s', (_, from, out, years) => {
    expect(occupiedYears(asDay(from), asDay(out))).toEqual(years);
  });

  test.each([
    ['cabbage after mustard', 2026, 2023, 4, { gapYears: 3, shortYears: 1, earliestYear: 2027 }],
    ['carrots after parsnips', 2026, 2023, 4, { gapYears: 3, shortYears: 1, earliestYear: 2027 }],
    ['purple sprouting after purple sprouting', 2026, 2024, 4, { gapYears: 2, shortYears: 2, earliestYear: 2028 }],
    ['onions after wintered leeks', 2026, 2022, 5, { gapYears: 4, shortYears: 1, earliestYear: 2027 }],
    ['a ley after a ley of four years ago', 2026, 2022, 4, { gapYears: 4, shortYears: 0, earliestYear: 2026 }],
  ])('%s', (...[, planting, last, needed, expected]) => {
    expect(restGap(planting, last, needed)).toMatchObject(expected);
  });
});

describe('rests', () => {
  test('the earliest year is lawful, the year before is not, and a longer rest never makes a breach', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2000, max: 2100 }),
        fc.integer({ min: 1, max: 20 }),
        fc.nat(30),
        (last, needed, later) => {
          const { earliestYear } = restGap(last + later, last, needed);
          expect(restGap(earliestYear, last, needed).shortYears).toBe(0);
          expect(restGap(earliestYear - 1, last, needed).shortYears).toBe(1);
          expect(restGap(last + later + 1, last, needed).shortYears).toBeLessThanOrEqual(
            restGap(last + later, last, needed).shortYears,
          );
        },
      ),
    );
  });

  test('standing a day longer never takes a year away', () => {
    fc.assert(
      fc.property(fc.nat(3000), fc.nat(900), (from, length) => {
        const start = addDays(asDay('2020-01-01'), from);
        const years = occupiedYears(start, addDays(start, length));
        expect(occupiedYears(start, addDays(start, length + 1)).slice(0, years.length)).toEqual(years);
        expect(lastOccupiedYear(start, addDays(start, length))).toBe(years.at(-1) ?? null);
      }),
    );
  });

  test('a pest without a host only falls', () => {
    expect(decline.leftAfterYears(0, 0.3)).toBe(1);
    expect(decline.leftAtHalfLife(7, 3.5)).toBe(0.25);
  });
});
