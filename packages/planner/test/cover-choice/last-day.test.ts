/** Last safe sowing days by thermal time against published last dates and results. */
import { type Cover, reference } from '@leywright/agronomy';
import { sampleFarm, sampleToday } from '@leywright/farm-kit';
import { type Day, dayOf, dayOfYear } from '@leywright/measures';
import { expect, test } from 'vitest';
import { lastSafeSowing } from '../../src/cover-choice/last-day.ts';
import { climateDaysOf } from '../../src/season/climate-days.ts';
import { horizonOf } from '../../src/season/horizon.ts';

const { horizon } = horizonOf({ today: sampleToday });
const climateAt = (latDeg: number, lonDeg = 0.1) =>
  climateDaysOf({ ...sampleFarm().about.place, latDeg, lonDeg, elevationM: 50 }, [], horizon);
const atTableLat = climateAt(52);
const coverOf = (id: string): Cover => {
  const cover = reference.covers.get(id);
  if (cover === undefined) throw new Error(id);
  return cover;
};
const lastDay = (id: string, climate = atTableLat): number => {
  const day: Day | null = lastSafeSowing(coverOf(id), 2027, climate);
  return day === null ? 0 : dayOfYear(day);
};

// checks/crops.csv, late-sow-*: rosenfeld-rayns, recalled; ten days either way by season and place.
const published: readonly (readonly [id: string, dayOfYear: number, withinDays: number])[] = [
  ['grazing-rye', 288, 10],
  ['mix-rye-vetch', 268, 10],
  ['winter-vetch', 263, 10],
  ['phacelia', 244, 10],
  ['white-mustard', 248, 10],
  ['fodder-radish', 244, 10],
  ['crimson-clover', 237, 10],
  ['red-clover', 237, 10],
  ['italian-ryegrass', 253, 10],
];

test.each(published)(
  '%s: last useful sowing near day %i of the year at 52° N (rosenfeld-rayns, memory)',
  (id, day, within) => {
    expect(Math.abs(lastDay(id) - day)).toBeLessThanOrEqual(within);
  },
);

test('covers in general are sown by a scheme’s 15 September when they are not cereals (glas-2017, verified)', () => {
  for (const id of ['phacelia', 'white-mustard', 'fodder-radish', 'crimson-clover', 'red-clover'])
    expect(lastDay(id)).toBeLessThanOrEqual(dayOfYear(dayOf(2027, 9, 15)) + 3);
});

test('rye and vetch are never safe later at 57° N than in mid October, when they still come up in a kind year (fas-2023, verified)', () => {
  expect(lastDay('mix-rye-vetch', climateAt(57, -2.2))).toBeLessThanOrEqual(287);
});

test('the further north, the earlier; rye is the last of all', () => {
  const ids = published.map(([id]) => id);
  for (const id of ids) expect(lastDay(id, climateAt(57, -2.2))).toBeLessThanOrEqual(lastDay(id));
  for (const id of ids) expect(lastDay(id)).toBeLessThanOrEqual(lastDay('grazing-rye'));
});
