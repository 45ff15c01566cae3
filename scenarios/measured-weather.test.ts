/**
 * Measured days through the importer to the plan: Seattle-Tacoma 2012-2015, daily, as the npm package vega-datasets carries them from NOAA
 * (temperatures °C, precipitation mm, wind m/s). The two expected temperatures and the rain are rows of that file, read by eye.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { readFarmFolder } from '@leywright/book';
import { asDay } from '@leywright/measures';
import { knownNames, planFarm } from '@leywright/planner';
import { expect, test } from 'vitest';

// The package exports its program only; its data stand beside it.
const file = join(dirname(createRequire(import.meta.url).resolve('vega-datasets')), '../data/seattle-weather.csv');
const station = readFileSync(file, 'utf8');
const ourHeading = 'day,rain_mm,t_max_c,t_min_c,wind_m_s';
const rows = station
  .split('\n')
  .slice(1)
  .filter((line) => line !== '');
const weather = [ourHeading, ...rows.map((line) => line.split(',').slice(0, 5).join(','))].join('\n');

function folderWith(weatherText: string) {
  return readFarmFolder(
    new Map([
      [
        'farm.json',
        JSON.stringify({
          name: 'By the Sound',
          place: {
            lat_deg: 47.45,
            lon_deg: -122.31,
            elevation_m: 132,
            jurisdiction: 'USA',
            time_zone: 'America/Los_Angeles',
          },
        }),
      ],
      ['plots.csv', 'plot,name,gross_ha\na,Home Field,1'],
      ['agreed.csv', 'plot,what,sown,to\na,carrot-maincrop,2013-05-20,2013-10-30'],
      ['weather.csv', weatherText],
    ]),
    knownNames(),
  );
}

test('a station’s own headings are not guessed at: what each may have meant is said', () => {
  const { farm, problems } = folderWith(station);
  expect(farm).toBeNull();
  expect(problems.filter((one) => one.file === 'weather.csv' && one.gravity === 'stops').length).toBeGreaterThan(0);
});

test('four years of measured days are read, every one', () => {
  const { farm, problems } = folderWith(weather);
  expect(problems.filter((one) => one.gravity === 'stops')).toEqual([]);
  expect(farm?.weather).toHaveLength(1461);
  expect(farm?.weather[0]).toMatchObject({
    day: '2012-01-01',
    rainMm: 0,
    tMaxC: 12.8,
    tMinC: 5,
    windMS: 4.7,
    sunH: null,
  });
});

test('the plan counts thermal time on the measured days, and says how many it used', () => {
  const { farm } = folderWith(weather);
  if (farm === null) throw new Error('The folder was refused.');
  const plan = planFarm(farm, { today: asDay('2013-06-01'), year: 2013, fromYear: 2012, toYear: 2015 });
  expect(plan.climate).toMatchObject({ recordedDays: 1461, recordedFrom: '2012-01-01', recordedTo: '2015-12-31' });
  expect(plan.ground[0]?.stands[0]?.coverShare.some((share) => share > 0.5)).toBe(true);
});
