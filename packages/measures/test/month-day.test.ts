import { asDay, asMonthDay, dayInYear, endOfWindow, inWindow, monthDayOf, readMonthDay } from '@leywright/measures';
import { describe, expect, test } from 'vitest';

describe('a window of the year', () => {
  test('whose end is before its start runs over new year', () => {
    const [from, to] = [asMonthDay('11-01'), asMonthDay('03-15')];
    expect(inWindow(asDay('2026-12-24'), from, to)).toBe(true);
    expect(inWindow(asDay('2027-03-15'), from, to)).toBe(true);
    expect(inWindow(asDay('2026-11-01'), from, to)).toBe(true);
    expect(inWindow(asDay('2027-03-16'), from, to)).toBe(false);
    expect(inWindow(asDay('2026-10-31'), from, to)).toBe(false);
  });

  test('that ends on 28 February ends on the last day of February', () => {
    const [from, to] = [asMonthDay('01-01'), asMonthDay('02-28')];
    expect(inWindow(asDay('2028-02-29'), from, to)).toBe(true);
    expect(inWindow(asDay('2028-03-01'), from, to)).toBe(false);
    expect(endOfWindow(to, 2028)).toBe('2028-02-29');
    expect(endOfWindow(to, 2027)).toBe('2027-02-28');
    expect(endOfWindow(asMonthDay('08-31'), 2027)).toBe('2027-08-31');
    expect(dayInYear(to, 2028)).toBe('2028-02-28');
  });

  test('has days of the calendar only; 29 February is one, and 28 February in common years', () => {
    for (const text of ['02-30', '13-01', '00-10', '4-8', '04-31', '2027-04-08', ''])
      expect(readMonthDay(text), text).toBeNull();
    expect(dayInYear(asMonthDay('02-29'), 2028)).toBe('2028-02-29');
    expect(dayInYear(asMonthDay('02-29'), 2027)).toBe('2027-02-28');
    expect(monthDayOf(asDay('2027-04-18'))).toBe('04-18');
    expect(() => asMonthDay('04-31')).toThrow(/MM-DD/);
  });
});
