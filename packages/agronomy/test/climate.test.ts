import { climate, dailyNormals, weather } from '@leywright/agronomy';
import { addDays, asDay, dayAt, dayNumber } from '@leywright/measures';
import { describe, expect, test } from 'vitest';

const monthDays = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

function monthMeans(values: Float64Array): number[] {
  let day = 0;
  return monthDays.map((length) => {
    let sum = 0;
    for (let at = 0; at < length; at++) sum += values[day++] ?? Number.NaN;
    return sum / length;
  });
}

function expectClose(found: readonly number[], wanted: readonly number[], decimals: number): void {
  expect(found).toHaveLength(wanted.length);
  for (const [month, value] of wanted.entries()) expect(found[month]).toBeCloseTo(value, decimals);
}

describe('climate of a place', () => {
  test('is that of the nearest station, and says how far to trust it', () => {
    const near = climate.climateNear(52.2, 0.15);
    expect(near.station.name).toBe('Cambridge (NIAB)');
    expect(near.doubt).toBe('near');
    expect(near.distanceKm).toBeLessThan(10);
    expect(climate.climateNear(-43, 172).station.name).toBe('Christchurch');
    expect(climate.climateNear(0, 0).doubt).toBe('another-climate');
  });

  test('counts height where it is known: a lowland farm is not given an upland station', () => {
    const lowland = climate.climateNear(55.0, -3.4, 10);
    expect(lowland.station.name).not.toBe('Eskdalemuir (upland)');
    expect(climate.climateNear(55.3, -3.2, 240).station.name).toBe('Eskdalemuir (upland)');
  });

  test('moved 100 m up is 0.65 °C colder, its rain unchanged', () => {
    const station = climate.climateNear(52.2, 0.15).station;
    const up = climate.forElevation(station, station.elevationM + 100);
    expectClose(
      up.tMaxC,
      station.tMaxC.map((t) => t - 0.65),
      9,
    );
    expect(up.rainMm).toEqual(station.rainMm);
  });
});

describe('daily normals', () => {
  test.each(climate.climateStations())(
    'of $name keep the mean of every month, of temperatures, rain and radiation',
    (station) => {
      const daily = dailyNormals.dailyNormals(station);
      expectClose(monthMeans(daily.tMaxC), station.tMaxC, 9);
      expectClose(monthMeans(daily.tMinC), station.tMinC, 9);
      expectClose(
        monthMeans(daily.rainMm).map((mm, month) => mm * (monthDays[month] ?? 0)),
        station.rainMm,
        6,
      );
      if (station.solarMjM2 !== null) expectClose(monthMeans(daily.solarMjM2), station.solarMjM2, 6);
      expect(Math.min(...daily.solarMjM2, ...daily.rainMm)).toBeGreaterThanOrEqual(0);
    },
  );

  test.each(climate.climateStations())('of $name run smoothly over the months and over new year', (station) => {
    const { tMaxC, tMinC } = dailyNormals.dailyNormals(station);
    for (let day = 0; day < 366; day++) {
      expect(Math.abs((tMaxC[(day + 1) % 366] ?? 0) - (tMaxC[day] ?? 0))).toBeLessThan(0.35);
      expect(tMinC[day]).toBeLessThan(tMaxC[day] ?? 0);
    }
  });

  test('say what their radiation rests on', () => {
    const from = (name: string) =>
      climate
        .climateStations()
        .filter((station) => station.name.startsWith(name))
        .map((station) => dailyNormals.dailyNormals(station).solarFrom)[0];
    expect(from('De Bilt')).toBe('measured');
    expect(from('Rothamsted')).toBe('sunshine');
    expect(from('Burlington')).toBe('temperature-range');
  });

  test('reckoned from sunshine, radiation at De Bilt agrees with what was measured there (KNMI 1990-2019) to 12 % in the growing months', () => {
    const station = climate.climateStations().find(({ name }) => name === 'De Bilt');
    if (station === undefined) throw new Error('De Bilt is gone');
    const fromSun = monthMeans(dailyNormals.dailyNormals({ ...station, solarMjM2: null }).solarMjM2);
    // Angstrom's 0.25 and 0.50 are world means; one station may stand a tenth off them.
    for (let month = 3; month <= 8; month++)
      expect(
        Math.abs((fromSun[month] ?? 0) / (station.solarMjM2?.[month] ?? 1) - 1),
        `month ${month + 1}`,
      ).toBeLessThan(0.12);
  });

  test('in the south January is the warm month', () => {
    const { tMaxC } = dailyNormals.dailyNormals(climate.climateNear(-43.5, 172.5).station);
    expect(tMaxC[15]).toBeGreaterThan((tMaxC[196] ?? 0) + 8);
  });

  test('pass over 29 February in a common year', () => {
    expect(dailyNormals.normalIndex(asDay('2027-02-28'))).toBe(58);
    expect(dailyNormals.normalIndex(asDay('2027-03-01'))).toBe(60);
    expect(dailyNormals.normalIndex(asDay('2028-02-29'))).toBe(59);
    expect(dailyNormals.normalIndex(asDay('2027-12-31'))).toBe(365);
  });
});

describe('weather of a span', () => {
  const normals = dailyNormals.dailyNormals(climate.climateNear(52, 0).station);
  const from = asDay('2027-02-20');

  test('takes recorded days first and the climate for the rest, each day marked', () => {
    const recorded = [
      { day: asDay('2027-02-21'), tMaxC: 11, tMinC: 3, rainMm: 0 },
      { day: asDay('2027-02-22'), tMaxC: 12, tMinC: null, rainMm: null },
      { day: asDay('2026-01-01'), tMaxC: -40, tMinC: -50, rainMm: 99 },
    ];
    const series = weather.weatherFor({ from, to: addDays(from, 3) }, recorded, normals);
    expect(series.dayCount).toBe(4);
    expect([0, 1, 2, 3].map((at) => weather.originOf(series, at))).toEqual([
      'climate',
      'recorded',
      'partly-recorded',
      'climate',
    ]);
    expect([series.tMaxC[1], series.tMinC[1], series.rainMm[1], series.tMaxC[2]]).toEqual([11, 3, 0, 12]);
    expect(series.tMinC[2]).toBe(normals.tMinC[dailyNormals.normalIndex(asDay('2027-02-22'))]);
  });

  test('gives every day of ten years its own day of the normals, leap years too', () => {
    const series = weather.weatherFor({ from, to: asDay('2037-02-19') }, [], normals);
    for (let at = 0; at < series.dayCount; at++) {
      expect(series.tMaxC[at]).toBe(normals.tMaxC[dailyNormals.normalIndex(dayAt(dayNumber(from) + at))]);
    }
  });

  test('of no days is empty', () => {
    expect(weather.weatherFor({ from, to: addDays(from, -5) }, [], normals).dayCount).toBe(0);
  });
});
