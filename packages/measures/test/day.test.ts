import {
  addDays,
  addMonths,
  asDay,
  dayAt,
  dayNumber,
  dayOfYear,
  daysBetween,
  monthOf,
  readDay,
  readDayLoosely,
  yearOf,
} from '@leywright/measures';
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';

const epoch = Temporal.PlainDate.from('1970-01-01');
const from1600to2400 = fc.integer({
  min: epoch.until('1600-01-01', { largestUnit: 'day' }).days,
  max: epoch.until('2400-12-31', { largestUnit: 'day' }).days,
});

describe('a day of the calendar', () => {
  test('is counted as the calendar library counts it, whatever the year from 1600 to 2400', () => {
    fc.assert(
      fc.property(from1600to2400, (number) => {
        const day = dayAt(number);
        expect(day).toBe(epoch.add({ days: number }).toString());
        expect(dayNumber(day)).toBe(number);
        expect(dayOfYear(day)).toBe(Temporal.PlainDate.from(day).dayOfYear);
      }),
    );
  });

  test('steps over every new year and every end of February from 1600 to 2400', () => {
    for (let year = 1600; year <= 2400; year++) {
      for (const text of [`${year}-01-01`, `${year}-02-28`, `${year}-03-01`, `${year}-12-31`]) {
        const library = Temporal.PlainDate.from(text);
        expect(addDays(asDay(text), 1)).toBe(library.add({ days: 1 }).toString());
      }
    }
  });

  test('moves by months as the calendar library does, a missing day becoming the last of its month', () => {
    fc.assert(
      fc.property(from1600to2400, fc.integer({ min: -600, max: 600 }), (number, months) => {
        const day = dayAt(number);
        expect(addMonths(day, months)).toBe(Temporal.PlainDate.from(day).add({ months }).toString());
      }),
    );
    expect(addMonths(asDay('2027-01-31'), 1)).toBe('2027-02-28');
    expect(addMonths(asDay('2028-01-31'), 1)).toBe('2028-02-29');
    expect(addMonths(asDay('2028-02-29'), 12)).toBe('2029-02-28');
  });

  test('is refused when the calendar has none such, or when it is written another way', () => {
    for (const text of [
      '2027-02-31',
      '2027-02-29',
      '2027-13-01',
      '2027-00-10',
      '2027-4-8',
      '20270408',
      '2027-04-08T00:00',
      ' 2027-04-08',
      '',
      '+002027-04-08',
    ]) {
      expect(readDay(text), text).toBeNull();
    }
    expect(readDay('2028-02-29')).toBe('2028-02-29');
    expect(() => asDay('2027-02-31')).toThrow(/not a day/);
    expect(() => dayAt(0.5)).toThrow(/whole/);
  });

  test('potatoes lifted on 20 September and kept 30 weeks reach 18 April', () => {
    expect(addDays(asDay('2026-09-20'), 210)).toBe('2027-04-18');
    expect(daysBetween(asDay('2026-09-20'), asDay('2027-04-18'))).toBe(210);
    expect([yearOf(asDay('2027-04-18')), monthOf(asDay('2027-04-18'))]).toEqual([2027, 4]);
  });
});

describe('a day as people write it', () => {
  test('that could be two days is refused with both, unless the order is known', () => {
    expect(readDayLoosely('3/4/2027')).toEqual({ kind: 'ambiguous', readings: ['2027-04-03', '2027-03-04'] });
    expect(readDayLoosely('3/4/2027', 'day-first')).toEqual({ kind: 'day', day: '2027-04-03' });
    expect(readDayLoosely('3/4/2027', 'month-first')).toEqual({ kind: 'day', day: '2027-03-04' });
    expect(readDayLoosely('8.4.2027')).toEqual({ kind: 'ambiguous', readings: ['2027-04-08', '2027-08-04'] });
  });

  test('that can only be one day is read', () => {
    for (const text of [
      '2027-04-18',
      '18.4.2027',
      '18/04/2027',
      '4/18/2027',
      '18-4-2027',
      '2027/4/18',
      ' 18.04.2027 ',
    ]) {
      expect(readDayLoosely(text), text).toEqual({ kind: 'day', day: '2027-04-18' });
    }
    expect(readDayLoosely('4.4.2027')).toEqual({ kind: 'day', day: '2027-04-04' });
  });

  test('that is none says why', () => {
    expect(readDayLoosely('31.2.2027')).toEqual({ kind: 'not-a-day', why: 'not-in-calendar' });
    expect(readDayLoosely('4/18/2027', 'day-first')).toEqual({ kind: 'not-a-day', why: 'not-in-calendar' });
    expect(readDayLoosely('18.4.27')).toEqual({ kind: 'not-a-day', why: 'two-digit-year' });
    expect(readDayLoosely('mid April')).toEqual({ kind: 'not-a-day', why: 'form' });
    expect(readDayLoosely('18.4/2027')).toEqual({ kind: 'not-a-day', why: 'form' });
  });
});
