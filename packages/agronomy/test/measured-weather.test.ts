/** Real days: Seattle-Tacoma 2012-2015, daily, as the npm package vega-datasets carries them from NOAA (temperatures °C, precipitation mm, wind m/s). */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import {
  climate,
  dailyNormals,
  degreeDays,
  evapotranspiration,
  radiation,
  thermal,
  weather,
} from '@leywright/agronomy';
import { asDay, dayNumber, dayOfYear, yearOf } from '@leywright/measures';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';

// The package exports its program only; its data stand beside it.
const file = join(dirname(createRequire(import.meta.url).resolve('vega-datasets')), '../data/seattle-weather.csv');
const rows = parse(readFileSync(file, 'utf8'), { columns: true }) as Record<string, string>[];
const days = rows.map((row) => ({
  day: asDay((row['date'] ?? '').slice(0, 10).replaceAll('/', '-')),
  tMaxC: Number(row['temp_max']),
  tMinC: Number(row['temp_min']),
  rainMm: Number(row['precipitation']),
  windMS: Number(row['wind']),
}));
const place = { latDeg: 47.45, elevationM: 132, coast: true };
const normals = dailyNormals.dailyNormals(climate.climateNear(47.45, -122.31).station);
const series = weather.weatherFor({ from: asDay('2012-01-01'), to: asDay('2015-12-31') }, days, normals);

const yearSums = (value: (day: (typeof days)[number]) => number) =>
  [2012, 2013, 2014, 2015].map((year) =>
    days.filter(({ day }) => yearOf(day) === year).reduce((sum, day) => sum + value(day), 0),
  );
const penman = (day: (typeof days)[number], withWind = true) =>
  evapotranspiration.referenceEvapotranspiration(
    {
      dayOfYear: dayOfYear(day.day),
      tMaxC: day.tMaxC,
      tMinC: day.tMinC,
      windMS: withWind ? day.windMS : null,
      windHeightM: 10,
    },
    place,
  );
const hargreaves = (day: (typeof days)[number]) =>
  evapotranspiration.hargreavesMm(day.tMaxC, day.tMinC, {
    raMjM2: radiation.extraterrestrialMjM2(place.latDeg, dayOfYear(day.day)),
  });

describe('four years of measured days', () => {
  test('are all there, all taken as recorded, none changed', () => {
    expect(days).toHaveLength(1461);
    expect(series.dayCount).toBe(1461);
    days.forEach((day, at) => {
      expect(weather.originOf(series, at)).toBe('recorded');
      expect([series.tMaxC[at], series.tMinC[at], series.rainMm[at]]).toEqual([day.tMaxC, day.tMinC, day.rainMm]);
    });
  });

  test('were up to 2 °C warmer than the station’s normals of 1991-2020, 2015 being the warmest year of the record there', () => {
    const means = yearSums((day) => (day.tMaxC + day.tMinC) / 2).map((sum, at) => sum / (at === 0 ? 366 : 365));
    const normal = [...normals.tMaxC].reduce((sum, t, at) => sum + (t + (normals.tMinC[at] ?? 0)) / 2, 0) / 366;
    for (const mean of means) expect(Math.abs(mean - normal)).toBeLessThan(2);
    expect(Math.max(...means)).toBe(means[3]);
  });

  test('give a reference evapotranspiration of 600-1100 mm a year from temperature and wind, by both methods, July above January tenfold or nearly', () => {
    // Temperate ground at 47° north gives off some 600 to 1000 mm (FAO-56 Table 2: temperate humid, 1-2 mm/d cool to 4-7 mm/d warm).
    for (const total of [...yearSums((day) => penman(day).etoMm), ...yearSums(hargreaves)]) {
      expect(total).toBeGreaterThan(600);
      expect(total).toBeLessThan(1100);
    }
    const mean = (month: string) => {
      const some = days.filter(({ day }) => day.slice(5, 7) === month);
      return some.reduce((sum, day) => sum + penman(day).etoMm, 0) / some.length;
    };
    expect(mean('07')).toBeGreaterThan(4);
    expect(mean('07')).toBeLessThan(7); // FAO-56 Table 2
    expect(mean('01')).toBeLessThan(1.2);
    expect(mean('01')).toBeGreaterThan(0.2);
  });

  test('each day says which rungs it stood on: no humidity, no radiation, wind measured', () => {
    for (const day of days)
      expect(penman(day)).toMatchObject({
        humidityRung: 'night-minimum',
        radiationRung: 'temperature-range',
        windRung: 'measured',
      });
    expect(penman(days[0] ?? ({} as never), false).windRung).toBe('world-mean');
  });

  test('no day gives less than nothing or more than its radiation and wind can carry', () => {
    for (const day of days) {
      const { etoMm } = penman(day);
      expect(etoMm).toBeGreaterThanOrEqual(0);
      expect(etoMm).toBeLessThan(12);
    }
  });

  test('run through thermal time: the sum of four years is what adding each day gives, by the mean and never more than by the sine', () => {
    const sums = thermal.thermalSums(series, { baseC: 4 });
    const [from, to] = [dayNumber(asDay('2012-01-01')), dayNumber(asDay('2016-01-01'))];
    const byMean = days.reduce((sum, day) => sum + degreeDays.degreeDaysByMean((day.tMaxC + day.tMinC) / 2, 4), 0);
    const bySine = days.reduce(
      (sum, day) => sum + degreeDays.degreeDaysBySine({ tMax: day.tMaxC, tMin: day.tMinC }, 4),
      0,
    );
    expect(thermal.thermalTimeBetween(sums, from, to)).toBeCloseTo(byMean, 6);
    expect(bySine).toBeGreaterThanOrEqual(byMean);
    // A place with a mean of 11-13 °C collects some 2700-3700 °C d above 4 °C a year.
    expect(byMean / 4).toBeGreaterThan(2500);
    expect(byMean / 4).toBeLessThan(3800);
  });

  test('maincrop potatoes planted on 15 April reach their 1400 °C d between late July and mid September in each year', () => {
    const sums = thermal.thermalSums(series, { baseC: 4 });
    for (const year of [2012, 2013, 2014, 2015]) {
      const reached = thermal.dayWhenReached(sums, dayNumber(asDay(`${year}-04-15`)), 1400) ?? 0;
      expect(reached).toBeGreaterThan(dayNumber(asDay(`${year}-07-20`)));
      expect(reached).toBeLessThan(dayNumber(asDay(`${year}-09-15`)));
    }
  });
});
