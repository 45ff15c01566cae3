/**
 * Are the odds right? Years are made by another generator than the one that forecasts: gamma yields instead of lognormal ones, other spreads and another
 * split of them, warmth as really measured in Seattle 2012 to 2015 (vega-datasets, seattle-weather.csv, from NOAA). What was forecast is held against what
 * happened in those years.
 */
import { readFileSync } from 'node:fs';
import { sampleFarm, sampleToday } from '@leywright/farm-kit';
import { expect, test } from 'vitest';
import { boxWeeksOf, isKept, oddsOfSeason, outcomeOf } from '../../src/odds/count-odds.ts';
import { runOfFarm } from '../../src/odds/odds-of-farm.ts';
import type { Season, SeasonDraw } from '../../src/odds/season-lot.ts';
import { seasonOfRun } from '../../src/odds/season-of-run.ts';

const truthYears = 240;
/** The truth's spread is narrower than what the forecast believes, and shared out otherwise. */
const narrower = 0.85;
const parts = { year: 0.2, crop: 0.3, sowing: 0.5 };

/** Weeks warmer or colder than the four years' mean of that week, by year. */
function measuredWarmth(): readonly (readonly number[])[] {
  const file = new URL('../../../../node_modules/vega-datasets/data/seattle-weather.csv', import.meta.url);
  const rows = readFileSync(file, 'utf8').trim().split('\n').slice(1);
  const sums = new Map<number, { sum: number; days: number }[]>();
  for (const row of rows) {
    const [date = '', , most, least] = row.split(',');
    const day = new Date(date.replaceAll('/', '-'));
    const first = Date.UTC(day.getUTCFullYear(), 0, 1);
    const week = Math.min(51, Math.floor((day.getTime() - first) / (7 * 86_400_000)));
    const year = sums.get(day.getUTCFullYear()) ?? Array.from({ length: 52 }, () => ({ sum: 0, days: 0 }));
    const at = year[week];
    if (at !== undefined) {
      at.sum += (Number(most) + Number(least)) / 2;
      at.days += 1;
    }
    sums.set(day.getUTCFullYear(), year);
  }
  const years = [...sums.values()].map((year) => year.map((week) => week.sum / week.days));
  const usual = Array.from(
    { length: 52 },
    (_, week) => years.reduce((sum, year) => sum + (year[week] ?? 0), 0) / years.length,
  );
  return years.map((year) => year.map((meanC, week) => meanC - (usual[week] ?? 0)));
}

/** Uniform draws (Park and Miller 1988), gamma draws (Marsaglia and Tsang 2000). */
function otherChance(seed: number) {
  let state = seed;
  const uniform = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  const gamma = (shape: number): number => {
    const d = shape - 1 / 3;
    for (;;) {
      const x = normal();
      const v = (1 + x / Math.sqrt(9 * d)) ** 3;
      if (v > 0 && Math.log(uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return (d * v) / shape;
    }
  };
  return { uniform, normal, gamma };
}

function truth(
  season: Season,
  chance: ReturnType<typeof otherChance>,
  warmth: readonly (readonly number[])[],
): SeasonDraw {
  const lots = season.crops.flatMap((crop) => crop.lots);
  const varianceOf = (list: typeof lots) => narrower * mean(list.map((lot) => lot.yieldSd ** 2));
  const yearFactor = chance.gamma(1 / (parts.year * varianceOf(lots)));
  const byCrop = new Map(
    season.crops
      .filter((crop) => crop.lots.length > 0)
      .map((crop) => [crop, chance.gamma(1 / (parts.crop * varianceOf(crop.lots as typeof lots)))]),
  );
  const byLot = new Map(lots.map((lot) => [lot, chance.gamma(1 / (parts.sowing * varianceOf([lot])))]));
  const year = warmth[Math.floor(chance.uniform() * warmth.length)] ?? [];
  const keeps = new Map(season.crops.map((crop) => [crop, chance.normal()]));
  return {
    warmerC: Float64Array.from({ length: season.weeks }, (_, week) =>
      week < season.openWeek ? 0 : (year[week % 52] ?? 0),
    ),
    yieldFactor: (crop, lot) => yearFactor * (byCrop.get(crop) ?? 1) * (byLot.get(lot) ?? 1),
    keepScore: (crop) => keeps.get(crop) ?? 0,
  };
}

test('weeks of which so many in a hundred were to be kept, were kept about so often; and far better than a constant forecast', () => {
  const season = seasonOfRun(runOfFarm(sampleFarm(), { today: sampleToday }));
  const weeks = boxWeeksOf(season);
  const forecast = oddsOfSeason(season, { seed: 20_270_101, samples: 400 }).weeks.map((week) => week.keptShare);
  const chance = otherChance(1913);
  const warmth = measuredWarmth();
  expect(warmth).toHaveLength(4);
  const happened = Array.from({ length: truthYears }, () =>
    outcomeOf(season, truth(season, chance, warmth), weeks).servedShare.map((share) => (isKept(share) ? 1 : 0)),
  );
  const cells = happened.flatMap((year) => year.map((kept, at) => ({ kept, said: forecast[at] ?? 0 })));
  const baseShare = mean(cells.map((cell) => cell.kept));
  const brier = mean(cells.map((cell) => (cell.said - cell.kept) ** 2));
  const brierOfConstant = mean(cells.map((cell) => (baseShare - cell.kept) ** 2));
  const deciles = Array.from({ length: 10 }, (_, at) =>
    cells.filter((cell) => Math.min(9, Math.floor(cell.said * 10)) === at),
  );
  const table = deciles.map((own, at) => ({
    decile: at,
    weeks: own.length / truthYears,
    said: mean(own.map((cell) => cell.said)),
    kept: mean(own.map((cell) => cell.kept)),
  }));
  const off =
    table.reduce((sum, one) => sum + (one.weeks > 0 ? one.weeks * Math.abs(one.said - one.kept) : 0), 0) / weeks.length;
  if (process.env['LEYWRIGHT_SHOW'] !== undefined) console.log({ brier, brierOfConstant, off, table });
  expect(brier).toBeLessThan(0.6 * brierOfConstant);
  expect(off).toBeLessThan(0.08);
  for (const one of table) if (one.weeks >= 2) expect(Math.abs(one.said - one.kept)).toBeLessThan(0.15);
}, 120_000);

function mean(list: readonly number[]): number {
  return list.length === 0 ? 0 : list.reduce((sum, one) => sum + one, 0) / list.length;
}
