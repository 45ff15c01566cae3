import { describe, expect, test } from 'vitest';
import { writeArea, writeDay, writeFigure, writeMass, writeWeek } from '../src/words/en-GB/figures.ts';
import type { Voice } from '../src/words/voice.ts';

const none: ReadonlyMap<string, string> = new Map();
const metric: Voice = {
  language: 'en-GB',
  shows: { area: 'ha', mass: 'kg' },
  year: 2027,
  names: {
    plots: new Map([['c', 'Far Ridding']]),
    plants: new Map([['leek-mid', 'Mid-season leek']]),
    stands: none,
    stores: none,
    people: none,
    organisms: none,
    courses: none,
    common: new Map([
      ['Mid-season leek', 'leek-mid'],
      ['January King cabbage', 'cabbage-january-king'],
      ['Trefoil (black medick)', 'trefoil'],
    ]),
  },
};
const imperial: Voice = { ...metric, shows: { area: 'acres', mass: 'lb' } };
const written = (name: string, value: string | number, voice = metric, way: string | null = null) =>
  writeFigure(voice)(name, value, way);

describe('figures as people say them', () => {
  test.each([
    [9_800, '0.98 ha'],
    [640, '640 m²'],
    [4.25, '4.3 m²'],
    [52_000, '5.2 ha'],
  ])('%d square metres are %s', (areaM2, said) => expect(writeArea(areaM2, metric)).toBe(said));

  // One acre is 4840 square yards, by definition.
  test.each([
    [4046.8564224, '1 acre'],
    [9_800, '2.42 acres'],
    [8.3612736, '10 sq yd'],
  ])('%d square metres are %s where acres are used', (areaM2, said) => expect(writeArea(areaM2, imperial)).toBe(said));

  test.each([
    [24, '24 kg'],
    [3.25, '3.3 kg'],
    [1284, '1.28 t'],
    [0.35, '350 g'],
    [0, '0 kg'],
    [0.004, '4 g'],
  ])('%d kilograms are %s', (kg, said) => expect(writeMass(kg, metric)).toBe(said));

  // The pound is 0.45359237 kg, by definition.
  test('kilograms are pounds where pounds are used', () => {
    expect(writeMass(45.359237, imperial)).toBe('100 lb');
    expect(writeMass(0.1, imperial)).toBe('3.5 oz');
  });

  test('a day has its weekday and its week, and its year where that is not the year in view', () => {
    expect(writeDay('2027-06-08', metric, { week: true })).toBe('Tue 8 June, week 23');
    expect(writeDay('2028-02-29', metric, { week: true })).toBe('Tue 29 February 2028, week 9');
  });

  test('a week never stands without a date beside it', () => {
    expect(writeWeek('2027-w23', metric)).toBe('week 23 (from Mon 7 June)');
    expect(writeWeek('2026-w53', metric)).toBe('week 53 (from Mon 28 December 2026)');
  });

  test.each([
    ['gapYears', 1, '1 year'],
    ['gapYears', 3, '3 years'],
    ['year', 2027, '2027'],
    ['leachingDays', 34, '34 days'],
    ['keepShare', 0.322, '32 %'],
    ['lossShare', 0.011, '1.1 %'],
    ['leftKgHa', -12.4, '−12 kg/ha'],
    ['yieldTHa', 30, '30 t/ha'],
    ['hoursH', 46.4, '46 hours'],
    ['promisedHouseholds', 260, '260 households'],
    ['from', '2027-06-08', 'Tue 8 June, week 23'],
    ['week', '2027-w23', 'week 23 (from Mon 7 June)'],
    ['plot', 'c', 'Far Ridding'],
    ['crop', 'leek-mid', 'mid-season leek'],
    ['previousName', 'January King cabbage', 'January King cabbage'],
    ['previousName', 'Trefoil (black medick)', 'trefoil'],
    ['previousName', 'Ruth’s red', 'Ruth’s red'],
    ['windowFrom', '05-01', '1 May'],
    ['distanceKm', 12.6, '13 km'],
    ['rows', 12_400, '12,400'],
  ])('%s of %s is said as "%s"', (name, value, said) => expect(written(name, value)).toBe(said));

  test('a share of land and mass together follows both of the farm’s measures', () => {
    expect(written('leftKgHa', 100, imperial)).toBe('89 lb/acre');
  });

  test('a way of writing can be asked for', () => {
    expect(written('week', '2027-w23', metric, 'month')).toBe('June');
    expect(written('gapYears', 3, metric, 'number')).toBe('3');
    expect(written('week', '2027-w23', metric, 'start')).toBe('Mon 7 June');
  });
});
