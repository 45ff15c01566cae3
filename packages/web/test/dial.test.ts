import { asIsoWeek, weeksInYear } from '@leywright/measures';
import { expect, test } from 'vitest';
import { onRing, weekUnder } from '../src/look/head/dial-ring.ts';
import { monthStarts, spokenWeek, weekAt, weekSpan } from '../src/look/head/year-weeks.ts';

test.each([
  { year: 2027, weeks: 52 },
  { year: 2026, weeks: 53 },
])('the ring of $year has $weeks weeks, and the week drawn at a place is the week found there', ({ year, weeks }) => {
  const ring = { radius: 33, weeks: weeksInYear(year) };
  expect(ring.weeks).toBe(weeks);
  for (let week = 1; week <= weeks; week += 1) expect(weekUnder(ring, onRing(ring, week, 0.9))).toBe(week);
});

test('week 23 of 2027 is spoken with its Monday', () => {
  expect(spokenWeek(asIsoWeek('2027-w23'))).toBe('week 23, Monday 7 June');
  expect(weekSpan(asIsoWeek('2027-w26'))).toBe('28 June to 4 July');
  expect(weekSpan(asIsoWeek('2027-w24'))).toBe('14 to 20 June');
});

test('turning past the year’s end goes on into the next year, by the length of the year', () => {
  expect(weekAt(2026, 54)).toBe('2027-w01');
  expect(weekAt(2027, 0)).toBe('2026-w53');
  expect(weekAt(2027, 53)).toBe('2028-w01');
});

test('each month is named once, over its first week', () => {
  const names = monthStarts(2026).map(({ name }) => name);
  expect(names).toHaveLength(12);
  expect(new Set(names).size).toBe(12);
});
