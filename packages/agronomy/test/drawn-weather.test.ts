import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { climate, drawnWeather, radiation, type WeatherGenerator, weather } from '@leywright/agronomy';
import { asDay, dayAt, dayNumber, dayOfYear } from '@leywright/measures';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';

const station = (name: string) => {
  const found = climate.climateStations().find((one) => one.name.startsWith(name));
  if (found === undefined) throw new Error(name);
  return found;
};
const stations = ['Rothamsted', 'De Bilt', 'Burnie', 'Burlington'];
const first = dayNumber(asDay('2001-01-01'));
const drawYears = (generator: WeatherGenerator, from: number, years: number, seed = 7) =>
  drawnWeather.prepareGenerator(generator, seed)(0, drawnWeather.emptyWeather(from, Math.round(years * 365.25)));
const asRecord = (drawn: ReturnType<typeof drawYears>) =>
  Array.from({ length: drawn.dayCount }, (_, at) => ({
    day: dayAt(drawn.startDayNumber + at),
    tMaxC: drawn.tMaxC[at] ?? 0,
    tMinC: drawn.tMinC[at] ?? 0,
    rainMm: drawn.rainMm[at] ?? 0,
    solarMjM2: drawn.solarMjM2[at] ?? 0,
  }));

describe('a thousand drawn years', () => {
  test.each(stations)('of %s come to its normals: means, spreads, wet days, runs of days', (name) => {
    const figures = drawnWeather.drawnFigures(drawnWeather.generatorFromStation(station(name)), 1000, 20_260_101);
    expect(figures).toHaveLength(12 * 11 + 18);
    expect(drawnWeather.drawnFiguresHold(figures)).toBe(true);
    const within = figures.filter((one) => Math.abs(one.drawnValue - one.impliedValue) <= 2 * one.sdOfMean);
    expect(within.length / figures.length).toBeGreaterThan(0.9);
  });

  test('what the normals imply is the normals themselves', () => {
    const of = station('De Bilt');
    const generator = drawnWeather.generatorFromStation(of);
    for (const [at, month] of generator.months.entries()) {
      const implied = drawnWeather.impliedMonth(month, at === 1 ? 28.25 : 31 - ((at % 7) % 2));
      expect(implied.tMaxC.mean).toBeCloseTo(of.tMaxC[at] ?? 0, 9);
      expect(implied.tMinC.mean).toBeCloseTo(of.tMinC[at] ?? 0, 9);
      expect(implied.rainMm).toBeCloseTo(of.rainMm[at] ?? 0, 9);
    }
  });

  test('a fault is told from chance: a generator held against another’s figures fails', () => {
    const figures = drawnWeather.drawnFigures(drawnWeather.generatorFromStation(station('De Bilt')), 1000, 3);
    const warmer = figures.map((one) =>
      one.name.endsWith('tMaxC') ? { ...one, impliedValue: one.impliedValue + 0.5 } : one,
    );
    const wetter = figures.map((one) =>
      one.name.endsWith('wetDays') ? { ...one, impliedValue: one.impliedValue + 1 } : one,
    );
    const stiffer = figures.map((one) =>
      one.name.startsWith('lag') ? { ...one, impliedValue: one.impliedValue + 0.05 } : one,
    );
    for (const wrong of [warmer, wetter, stiffer]) expect(drawnWeather.drawnFiguresHold(wrong)).toBe(false);
  });
});

describe('a generator from the farm’s own record', () => {
  const truth = drawnWeather.generatorFromStation(station('Rothamsted'));
  const forty = asRecord(drawYears(truth, first, 40));

  test('of forty years is its own by month, and a thousand years drawn from it come to the record’s means', () => {
    const own = drawnWeather.generatorFor(station('Burlington'), forty);
    expect(own).toMatchObject({ origin: 'record-by-month', recordYears: 40 });
    expect(own.residuals.name).toMatch(/own record/);
    const figures = drawnWeather.drawnFigures(own, 1000, 11);
    expect(drawnWeather.drawnFiguresHold(figures)).toBe(true);
    const july = forty.filter(({ day }) => day.slice(5, 7) === '07');
    const meanC = july.reduce((sum, day) => sum + day.tMaxC, 0) / july.length;
    const wetShare = july.filter((day) => day.rainMm >= 0.3).length / july.length;
    const drawn = (name: string) => figures.find((one) => one.name === `7 ${name}`) ?? { drawnValue: 0, sdOfMean: 0 };
    expect(Math.abs(drawn('tMaxC').drawnValue - meanC)).toBeLessThan(2 * drawn('tMaxC').sdOfMean + 0.02);
    expect(Math.abs(drawn('wetDays').drawnValue / 31 - wetShare)).toBeLessThan(0.01);
  });

  test('of forty years gives back the chain, the rain and the correlations it was drawn with, within their error', () => {
    const own = drawnWeather.generatorFor(station('Burlington'), forty);
    const wanted = drawnWeather.dayAfterSpread(truth.residuals);
    const got = drawnWeather.dayAfterSpread(own.residuals);
    // Radiation held within its limits goes a little less with the rest than it was drawn.
    for (const [row, wantedRow] of wanted.entries())
      for (const [column, value] of wantedRow.entries())
        expect(Math.abs((got[row]?.[column] ?? 0) - value), `${row} ${column}`).toBeLessThan(0.04);
    for (const [at, month] of own.months.entries()) {
      const true_ = truth.months[at] ?? month;
      expect(Math.abs(month.wetAfterWetProbability - true_.wetAfterWetProbability)).toBeLessThan(0.08);
      expect(Math.abs(month.rain.shapeFactor - true_.rain.shapeFactor)).toBeLessThan(0.3);
    }
  });

  test('the shorter the record, the more is lent, and it says so', () => {
    const of = (days: number) => drawnWeather.generatorFor(station('De Bilt'), forty.slice(0, days));
    expect(of(0).origin).toBe('normals');
    expect(of(3 * 366)).toMatchObject({ origin: 'normals-moved-to-record', recordYears: 3 });
    expect(of(10 * 366)).toMatchObject({ origin: 'record-by-season', recordYears: 10 });
    expect(of(10 * 366).residuals.name).toMatch(/De Bilt/);
  });

  test('four measured years (Seattle 2012-2015, NOAA) move the normals to their own means', () => {
    const file = join(dirname(createRequire(import.meta.url).resolve('vega-datasets')), '../data/seattle-weather.csv');
    const rows = parse(readFileSync(file, 'utf8'), { columns: true }) as Record<string, string>[];
    const days = rows.map((row) => ({
      day: asDay((row['date'] ?? '').slice(0, 10).replaceAll('/', '-')),
      tMaxC: Number(row['temp_max']),
      tMinC: Number(row['temp_min']),
      rainMm: Number(row['precipitation']),
    }));
    const generator = drawnWeather.generatorFor(station('De Bilt'), days);
    expect(generator.origin).toBe('normals-moved-to-record');
    const november = days.filter(({ day }) => day.slice(5, 7) === '11');
    const wet = november.filter((day) => day.rainMm >= 0.3);
    const implied = drawnWeather.impliedMonth(generator.months[10] as never, 30);
    expect(implied.wetDays).toBeCloseTo((wet.length / november.length) * 30, 6);
    expect(implied.rainMm).toBeCloseTo(wet.reduce((sum, day) => sum + day.rainMm, 0) / 4, 6);
    expect(implied.tMaxC.mean).toBeCloseTo(november.reduce((sum, day) => sum + day.tMaxC, 0) / november.length, 6);
  });
});

describe('drawn days', () => {
  const generator = drawnWeather.generatorFromStation(station('Rothamsted'));

  test('are within what a day can be, and marked as drawn', () => {
    const drawn = drawYears(generator, first, 30);
    for (let at = 0; at < drawn.dayCount; at++) {
      const raMjM2 = radiation.extraterrestrialMjM2(generator.latDeg, dayOfYear(dayAt(first + at)));
      expect((drawn.tMaxC[at] ?? 0) - (drawn.tMinC[at] ?? 0)).toBeGreaterThan(0.499);
      expect(drawn.rainMm[at] === 0 || (drawn.rainMm[at] ?? 0) >= 0.3).toBe(true);
      expect(drawn.solarMjM2[at]).toBeLessThanOrEqual(0.8 * raMjM2 + 1e-9);
      expect(drawn.solarMjM2[at]).toBeGreaterThanOrEqual(0.05 * raMjM2 - 1e-9);
      expect(drawn.windMS[at]).toBeGreaterThan(0);
    }
    expect(weather.originOf(drawn, 5)).toBe('drawn');
  });

  test('are the same for the same seed and run, and others for another, whatever was drawn before', () => {
    const draw = drawnWeather.prepareGenerator(generator, 42);
    const one = draw(3, drawnWeather.emptyWeather(first, 365));
    draw(4, drawnWeather.emptyWeather(first, 365));
    const again = drawnWeather.prepareGenerator(generator, 42)(3, drawnWeather.emptyWeather(first, 365));
    expect(again).toEqual(one);
    expect(draw(4, drawnWeather.emptyWeather(first, 365)).tMaxC).not.toEqual(one.tMaxC);
  });

  test('are the same days whatever span was asked for', () => {
    const draw = drawnWeather.prepareGenerator(generator, 42);
    const long = draw(0, drawnWeather.emptyWeather(first - 400, 800));
    const short = draw(0, drawnWeather.emptyWeather(first, 365));
    for (let at = 0; at < 365; at++) {
      expect(short.rainMm[at]).toBe(long.rainMm[at + 400]);
      expect(short.tMinC[at]).toBeCloseTo(long.tMinC[at + 400] ?? 0, 6);
    }
  });

  test('are written into the arrays given: a hundred runs use the same ones', () => {
    const draw = drawnWeather.prepareGenerator(generator, 1);
    const into = drawnWeather.emptyWeather(first, 365);
    const { tMaxC } = into;
    expect(draw(0, into)).toBe(into);
    const before = tMaxC.slice();
    draw(1, into);
    expect(into.tMaxC).toBe(tMaxC);
    expect(tMaxC).not.toEqual(before);
  });

  test('give way to days that were recorded', () => {
    const drawn = drawYears(generator, first, 1);
    weather.layRecordOver(drawn, [{ day: asDay('2001-03-04'), tMaxC: 11.5, tMinC: 2, rainMm: 0 }]);
    const at = dayNumber(asDay('2001-03-04')) - first;
    expect([drawn.tMaxC[at], drawn.tMinC[at], drawn.rainMm[at]]).toEqual([11.5, 2, 0]);
    expect(weather.originOf(drawn, at)).toBe('recorded');
    expect(weather.originOf(drawn, at + 1)).toBe('drawn');
  });
});

describe('numbers by chance', () => {
  // Salmon et al. 2011: the known answers published with Philox 4×32, ten rounds.
  test.each([
    [
      [0, 0, 0, 0],
      [0, 0],
      [0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8],
    ],
    [
      [0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff],
      [0xffffffff, 0xffffffff],
      [0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd],
    ],
    [
      [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344],
      [0xa4093822, 0x299f31d0],
      [0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1],
    ],
  ])('are the published ones at %s', (place, seed, wanted) => {
    const block = new Uint32Array(4);
    drawnWeather.chanceBlock(Uint32Array.from(place), Uint32Array.from(seed), block);
    expect([...block]).toEqual(wanted);
  });

  test('rain refits to its law by Thom’s own example of a fit (check wg-03)', () => {
    const law = drawnWeather.fitRainLaw(4.47, 1.0);
    expect(law.shapeFactor).toBeCloseTo(1.1508, 4);
    expect(law.shapeFactor * law.scaleMm).toBeCloseTo(4.47, 9);
  });

  test('the donor’s table is read whole, and turned by six months south of the equator', () => {
    expect(drawnWeather.donorMonths(52)[0]).toMatchObject({
      wetAfterDryProbability: 0.325,
      tMaxC: { dry: { mean: 4.12 } },
    });
    expect(drawnWeather.donorMonths(-41)[6]).toEqual(drawnWeather.donorMonths(52)[0]);
  });
});
