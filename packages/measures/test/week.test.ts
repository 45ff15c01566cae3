import {
  addDays,
  addWeeks,
  asDay,
  asIsoWeek,
  dayAt,
  mondayOf,
  readIsoWeek,
  weekdayOf,
  weekIndex,
  weekOf,
  weeksBetween,
  weeksInYear,
} from '@leywright/measures';
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';

describe('an ISO week', () => {
  test('2020, 2026 and 2032 have 53, the years between have 52', () => {
    const long = Array.from({ length: 14 }, (_, at) => 2019 + at).filter((year) => weeksInYear(year) === 53);
    expect(long).toEqual([2020, 2026, 2032]);
  });

  test.each([2020, 2026, 2032])('the last week of %i is its 53rd and is followed by week 1', (year) => {
    const last = asIsoWeek(`${year}-w53`);
    expect(addWeeks(last, 1)).toBe(`${year + 1}-w01`);
    expect(weekOf(addDays(mondayOf(last), 7))).toBe(`${year + 1}-w01`);
    expect(weeksBetween(asIsoWeek(`${year}-w01`), asIsoWeek(`${year + 1}-w01`))).toBe(53);
    expect(readIsoWeek(`${year + 1}-w53`)).toBeNull();
  });

  test('the days round new year lie in the week of their Thursday', () => {
    expect(weekOf(asDay('2027-01-01'))).toBe('2026-w53');
    expect(weekOf(asDay('2027-01-04'))).toBe('2027-w01');
    expect(weekOf(asDay('2024-12-30'))).toBe('2025-w01');
    expect(mondayOf(asIsoWeek('2027-w01'))).toBe('2027-01-04');
  });

  test('is the one the calendar library names, with its Monday, for any day', () => {
    fc.assert(
      fc.property(fc.integer({ min: -130_000, max: 155_000 }), (number) => {
        const day = dayAt(number);
        const library = Temporal.PlainDate.from(day);
        const week = weekOf(day);
        expect(week).toBe(`${library.yearOfWeek}-w${String(library.weekOfYear).padStart(2, '0')}`);
        expect(mondayOf(week)).toBe(library.subtract({ days: library.dayOfWeek - 1 }).toString());
        expect(weekdayOf(day)).toBe(library.dayOfWeek);
        expect(readIsoWeek(week)).toBe(week);
      }),
    );
  });

  test('is read in either letter, and refused when the year has no such week', () => {
    expect(readIsoWeek('2027-W02')).toBe('2027-w02');
    expect(readIsoWeek('2026-w53')).toBe('2026-w53');
    for (const text of ['2027-w53', '2027-w00', '2027-w54', '2027-02', 'w02', '2027-w2'])
      expect(readIsoWeek(text), text).toBeNull();
    expect(() => asIsoWeek('2027-w53')).toThrow(/week/);
  });

  test('steps there and back come home', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30_000 }), fc.integer({ min: -500, max: 500 }), (number, count) => {
        const week = weekOf(dayAt(number));
        const later = addWeeks(week, count);
        expect(weeksBetween(week, later)).toBe(count);
        expect(weekIndex(week, mondayOf(later))).toBe(count);
        expect(weekIndex(week, addDays(mondayOf(later), 6))).toBe(count);
      }),
    );
  });
});
