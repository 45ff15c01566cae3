/** Blight: hourly days built by hand, just met and just missed, for each published rule (Hutton: James Hutton Institute and AHDB 2017; Smith 1956). */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type AirDay, pests, reference } from '@leywright/agronomy';
import { asDay, dayNumber } from '@leywright/measures';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

/** A day of so many damp hours (90 %, the others 89.9 %) whose coldest hour is the one given. */
function hourly(day: number, coldestC: number, dampH: number): AirDay {
  const hours = Array.from({ length: 24 }, (_, hour) => ({
    tC: hour === 4 ? coldestC : coldestC + 5,
    rhPct: hour < dampH ? 90 : 89.9,
  }));
  return { day, tMinC: null, tMaxC: null, hours };
}

const second = (a: AirDay, b: AirDay) => pests.blightOfDays([a, b], 52)[1];

describe('two hourly days on end', () => {
  test.each([
    ['10.0 °C and 6 damp hours on both meet Hutton', [10, 6], [10, 6], 'met', ['hutton']],
    ['5 damp hours on the second miss it', [12, 6], [12, 5], 'not-met', []],
    ['5 damp hours on the first miss it', [12, 5], [12, 6], 'not-met', []],
    ['9.9 °C on the first misses it, however damp', [9.9, 24], [12, 24], 'not-met', []],
    ['9.9 °C on the second misses it', [12, 24], [9.9, 24], 'not-met', []],
    [
      '10 °C and 11 damp hours on both are a Smith period, and Hutton too',
      [10, 11],
      [10, 11],
      'met',
      ['hutton', 'smith'],
    ],
    ['11 then 10 damp hours are a near miss of Smith', [11, 11], [11, 10], 'met', ['hutton', 'smith-near']],
    ['10 and 10 are a near miss as well', [11, 10], [11, 10], 'met', ['hutton', 'smith-near']],
    ['10 then 9 are not even that', [11, 10], [11, 9], 'met', ['hutton']],
  ] as const)('%s', (...row) => {
    const [, [tMinC, dampH], [nextMinC, nextDampH], verdict, rules] = row;
    const found = second(hourly(1, tMinC, dampH), hourly(2, nextMinC, nextDampH));
    expect(found).toMatchObject({ verdict, rules, basis: 'hours-measured', dampH: nextDampH });
  });

  test('a Smith period is always a Hutton period', () => {
    const aDay = fc.record({
      tMinC: fc.double({ min: 5, max: 15, noNaN: true }),
      dampH: fc.integer({ min: 0, max: 24 }),
    });
    fc.assert(
      fc.property(aDay, aDay, (a, b) => {
        const rules = pests.blightRulesMet(a, b);
        if (rules.includes('smith') || rules.includes('smith-near')) expect(rules).toContain('hutton');
        expect(rules.includes('smith') && rules.includes('smith-near')).toBe(false);
      }),
    );
  });

  test('a day that does not follow the other is not the second of two', () => {
    expect(second(hourly(1, 12, 24), hourly(3, 12, 24))).toMatchObject({
      verdict: 'cannot-say',
      why: 'day-before-unknown',
    });
  });

  test('two hours missing are filled by a straight line, three make the day unknown', () => {
    const without = (gone: readonly number[]): AirDay => ({
      ...hourly(2, 12, 12),
      hours: (hourly(2, 12, 12).hours ?? []).map((hour, at) => (gone.includes(at) ? { tC: null, rhPct: null } : hour)),
    });
    expect(second(hourly(1, 12, 12), without([6, 7]))).toMatchObject({ verdict: 'met', dampH: 12 });
    expect(second(hourly(1, 12, 12), without([6, 7, 8]))).toMatchObject({
      verdict: 'cannot-say',
      why: 'hours-missing',
    });
    expect(second(hourly(1, 12, 12), without([23]))).toMatchObject({ verdict: 'cannot-say', why: 'hours-missing' });
  });
});

describe('days without hours', () => {
  const midsummer = dayNumber(asDay('2027-06-21'));
  const daily = (day: number, rest: Partial<AirDay>): AirDay => ({ day, tMinC: 12, tMaxC: 16, ...rest });
  const both = (rest: Partial<AirDay>) => second(daily(midsummer, rest), daily(midsummer + 1, rest));

  test('with greatest and least humidity the hours are estimated, and it is said', () => {
    expect(both({ rhMaxPct: 100, rhMinPct: 92 })).toMatchObject({
      verdict: 'met',
      basis: 'hours-estimated',
    });
    expect(both({ rhMaxPct: 70, rhMinPct: 40 })).toMatchObject({ verdict: 'not-met', dampH: 0 });
  });

  test('where five per cent more or less vapour would turn the verdict it is perhaps', () => {
    const verdicts = Array.from({ length: 40 }, (_, at) => both({ rhMeanPct: 60 + at }));
    const kinds = verdicts.map((one) => one?.verdict);
    expect(kinds.indexOf('not-met')).toBeLessThan(kinds.indexOf('perhaps'));
    expect(kinds.indexOf('perhaps')).toBeLessThan(kinds.indexOf('met'));
    for (const one of verdicts) {
      expect(one?.dampLowH).toBeLessThanOrEqual(one?.dampH ?? -1);
      expect(one?.dampHighH).toBeGreaterThanOrEqual(one?.dampH ?? 25);
    }
  });

  test('without any humidity nothing is said, on however warm a night', () => {
    expect(both({})).toMatchObject({ verdict: 'cannot-say', why: 'no-humidity-record', basis: 'none' });
  });
});

test('four measured years at Seattle have no humidity: blight says so on every day of them', () => {
  // The package exports its program only; its data stand beside it.
  const file = join(dirname(createRequire(import.meta.url).resolve('vega-datasets')), '../data/seattle-weather.csv');
  const rows = parse(readFileSync(file, 'utf8'), { columns: true }) as Record<string, string>[];
  const days = rows.map((row) => ({
    day: dayNumber(asDay((row['date'] ?? '').slice(0, 10).replaceAll('/', '-'))),
    tMinC: Number(row['temp_min']),
    tMaxC: Number(row['temp_max']),
  }));
  const found = pests.blightOfDays(days, 47.45);
  expect(found).toHaveLength(1461);
  expect(new Set(found.map((one) => `${one.verdict} ${one.why}`))).toEqual(new Set(['cannot-say no-humidity-record']));
});

test('the rules stand in the table with the figures used here', () => {
  for (const rule of pests.blightRules) expect(reference.pestModels.get(rule)?.ruleType).toBe('humidity_rule');
  expect(pests.ruleRow('hutton')).toEqual({ minTempC: 10, rhMinPct: 90, rhHours: 6 });
});
