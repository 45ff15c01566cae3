/** Degree-day rows: days of even warmth on which the event falls just on the day reckoned by hand, and a hair's less warmth makes it a day later. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type PestWeather, pests, reference } from '@leywright/agronomy';
import { asDay, dayAt, dayNumber } from '@leywright/measures';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const newYear = dayNumber(asDay('2027-01-01'));
const even = (tC: number, days = 365, firstDay = newYear): PestWeather => ({
  firstDay,
  tMinC: new Array<number>(days).fill(tC),
  tMaxC: new Array<number>(days).fill(tC),
});
const north = { latDeg: 52 };
const due = (id: string, weather: PestWeather, place: Parameters<typeof pests.pestsDue>[1] = north) =>
  pests.pestsDue(weather, place, 2027).find((one) => one.model === id);
const calendarRows = [...reference.pestModels.values()].filter(
  (row) => row.ruleType === 'degree_day' && /^\d\d-\d\d$/.test(row.biofix ?? ''),
);

describe('every row counted from a day of the calendar', () => {
  test('is one of the fifteen there are', () => expect(calendarRows).toHaveLength(15));

  // 15 °C day and night give 15 less the base each day, in air and in soil alike; no row has its limit below 20 °C.
  test.each(calendarRows.map((row) => [row.id, row] as const))('%s: just met, and just missed', (id, row) => {
    const dailyCd = 15 - (row.baseC ?? 0);
    const days = Math.ceil((row.sumLowCd ?? 0) / dailyCd - 1e-9);
    const start = dayNumber(asDay(`2027-${row.biofix}`));
    expect(due(id, even(15))?.metDay).toBe(start + days - 1);
    // Ended one day sooner the sum is not there yet.
    const short = due(id, even(15, start + days - 1 - newYear));
    expect(short?.metDay).toBeNull();
    expect(short?.state).toBe('not-yet');
    expect(short?.sumCd).toBeLessThan(row.sumLowCd ?? 0);
  });
});

describe('rows the grower starts', () => {
  test('580 °C d above 6 °C are 58 days at 16 °C (Finch 1988), counted from the eggs recorded', () => {
    const from = newYear + 100;
    const recorded = new Map([['crf-generation', from]]);
    expect(due('crf-generation', even(16), { ...north, recorded })?.metDay).toBe(from + 57);
    expect(due('crf-generation', even(15.99), { ...north, recorded })?.metDay).toBe(from + 58);
  });

  test('without a record they wait for one, and say so', () => {
    expect(due('cpb-instar4', even(16))).toMatchObject({ state: 'not-begun', why: 'record-what-it-counts-from' });
  });

  test('the next generation of carrot fly is counted from the day the first was met', () => {
    const first = due('carrot-fly-owg-soil', even(13));
    const next = due('carrot-fly-g1-soil', even(13));
    expect(next?.fromDay).toBe(first?.metDay);
    expect(next?.metDay).toBe((first?.metDay ?? 0) + Math.ceil(971 / 10) - 1);
    expect(due('carrot-fly-g1-soil', even(2))).toMatchObject({ state: 'not-begun', why: 'waits-for-another-event' });
  });

  test('a row without a published sum only names its condition', () => {
    expect(due('leek-moth-first-flight', even(16))).toMatchObject({ state: 'condition', why: 'no-sum-published' });
  });
});

describe('bounds and gaps', () => {
  test('between the lower and the upper sum an event is under way: asparagus beetle, 83 to 133 °C d above 10', () => {
    // At 20 °C ten degree-days a day: the ninth day has 90, the fourteenth 140.
    expect(due('asparagus-beetle-eggs', even(20, 8))?.state).toBe('not-yet');
    expect(due('asparagus-beetle-eggs', even(20, 9))).toMatchObject({ state: 'under-way', metDay: newYear + 8 });
    expect(due('asparagus-beetle-eggs', even(20, 13))?.state).toBe('under-way');
    expect(due('asparagus-beetle-eggs', even(20, 14))).toMatchObject({ state: 'met', doneDay: newYear + 13 });
  });

  test('warmth above 20 °C does not hasten carrot fly where its row has that limit', () => {
    expect(due('carrot-fly-g1-air', even(30))?.metDay).toBe(due('carrot-fly-g1-air', even(20))?.metDay);
  });

  test('a day that was not measured ends what can be said', () => {
    const weather = even(15);
    const tMinC = [...Array.from(weather.tMinC)];
    tMinC[40] = null;
    expect(due('crf-gen3-wi', { ...weather, tMinC })).toMatchObject({ state: 'cannot-say', why: 'weather-missing' });
  });

  test('south of the equator the season begins half a year later', () => {
    const july = dayNumber(asDay('2026-07-01'));
    const found = due('crf-gen1-wi', even(16.1, 300, july), { latDeg: -38 });
    expect(dayAt(found?.fromDay ?? 0)).toBe('2026-07-01');
    expect(found?.metDay).toBe(july + 16); // 167 at 10 a day
  });

  test('each row says how far its day may be out: the published mean error, else a week', () => {
    expect(due('carrot-fly-g1-trap', even(15))?.errorDays).toBe(1.6);
    expect(due('carrot-fly-owg-air', even(15))?.errorDays).toBe(1);
    expect(due('onion-fly-gen1', even(15))?.errorDays).toBe(7);
  });

  test('warmer weather never makes anything later', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.double({ min: 0, max: 12, noNaN: true }), fc.double({ min: 0, max: 10, noNaN: true })), {
          minLength: 365,
          maxLength: 365,
        }),
        (days) => {
          const cool = { firstDay: newYear, tMinC: days.map(([low]) => low), tMaxC: days.map(([low, up]) => low + up) };
          const warm = { ...cool, tMinC: cool.tMinC.map((t) => t + 1), tMaxC: cool.tMaxC.map((t) => t + 1) };
          const later = pests.pestsDue(warm, north, 2027);
          pests.pestsDue(cool, north, 2027).forEach((one, at) => {
            // A limit above which warmth counts no more can make a warmer day count as much, never less.
            if (one.metDay !== null) expect(later[at]?.metDay).toBeLessThanOrEqual(one.metDay);
          });
        },
      ),
      { numRuns: 20 },
    );
  });
});

describe('four measured years at Seattle', () => {
  // The package exports its program only; its data stand beside it.
  const file = join(dirname(createRequire(import.meta.url).resolve('vega-datasets')), '../data/seattle-weather.csv');
  const rows = parse(readFileSync(file, 'utf8'), { columns: true }) as Record<string, string>[];
  const weather: PestWeather = {
    firstDay: dayNumber(asDay('2012-01-01')),
    tMinC: rows.map((row) => Number(row['temp_min'])),
    tMaxC: rows.map((row) => Number(row['temp_max'])),
  };

  test.each([2012, 2013, 2014, 2015])('%i: all calendar rows come due, generations in their order', (year) => {
    const found = new Map(pests.pestsDue(weather, { latDeg: 47.45 }, year).map((one) => [one.model, one]));
    for (const { id } of calendarRows) expect(found.get(id)?.metDay, id).not.toBeNull();
    const on = (id: string) => found.get(id)?.metDay ?? 0;
    expect(on('crf-gen1-wi')).toBeLessThan(on('crf-gen2-wi'));
    expect(on('crf-gen2-wi')).toBeLessThan(on('crf-gen3-wi'));
    expect(on('onion-fly-gen1')).toBeLessThan(on('onion-fly-gen2'));
    expect(dayAt(on('carrot-fly-owg-air')).slice(0, 4)).toBe(String(year));
  });

  test('the warmest year, 2015, brought the flies before the coolest, 2012', () => {
    const first = (year: number) =>
      (pests.pestsDue(weather, { latDeg: 47.45 }, year).find((one) => one.model === 'crf-gen1-wi')?.metDay ?? 0) -
      dayNumber(asDay(`${year}-01-01`));
    expect(first(2015)).toBeLessThan(first(2012));
  });
});
