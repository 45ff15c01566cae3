/** The fast way through a drawn year against the plan's own way of filling boxes. */
import { sampleFarm, sampleToday } from '@leywright/farm-kit';
import { describe, expect, test } from 'vitest';
import { counted, oddsOfSeason } from '../../src/odds/count-odds.ts';
import { drawYear } from '../../src/odds/draw-year.ts';
import { farmOdds, runOfFarm } from '../../src/odds/odds-of-farm.ts';
import { runSeason } from '../../src/odds/run-season.ts';
import type { Season, SeasonDraw } from '../../src/odds/season-lot.ts';
import { seasonOfRun } from '../../src/odds/season-of-run.ts';
import type { SupplyRun } from '../../src/supply/supply-run.ts';

const asUsual = (season: Season): SeasonDraw => ({
  warmerC: new Float64Array(season.weeks),
  yieldFactor: () => 1,
  keepScore: () => 0,
});

/** Largest difference of a slot's missing share in any week. */
function furthestOff(run: SupplyRun): number {
  const season = seasonOfRun(run);
  const missing = runSeason(season, asUsual(season));
  let off = 0;
  run.typ.weeks.slice(0, season.weeks).forEach((slots, week) => {
    for (const slot of slots) {
      const at = season.slots.findIndex((one) => one.id === slot.ask.slot.id);
      off = Math.max(off, Math.abs((missing[at]?.[week] ?? 0) - slot.missingShare));
    }
  });
  return off;
}

const sampleRun = runOfFarm(sampleFarm(), { today: sampleToday });
const sampleSeason = seasonOfRun(sampleRun);

describe('a year as usual', () => {
  test('fills the sample farm as the plan does, slot by slot and week by week', () => {
    expect(furthestOff(sampleRun)).toBeLessThan(1e-9);
  });

  test('fills farms with other promises as the plan does', () => {
    const farm = sampleFarm();
    const { promise } = farm;
    if (promise === null) throw new Error('The sample farm promises boxes.');
    const others = [2, 5, 11].map((nth) => ({
      ...promise,
      sizes: promise.sizes.map((size) => ({ ...size, households: size.households * (nth / 5) })),
      slots: promise.slots
        .filter((_, at) => at % nth !== 1)
        .map((slot, at) => ({ ...slot, everyWeeks: 1 + (at % 2), crops: slot.crops.toReversed() })),
    }));
    for (const other of others)
      expect(furthestOff(runOfFarm({ ...farm, promise: other }, { today: sampleToday }))).toBeLessThan(1e-9);
  }, 60_000);
});

describe('drawn years', () => {
  test('the same seed gives the same answer, another seed another', () => {
    const wish = { seed: 5, samples: 60 };
    expect(oddsOfSeason(sampleSeason, wish)).toEqual(oddsOfSeason(sampleSeason, wish));
    expect(oddsOfSeason(sampleSeason, { ...wish, seed: 6 })).not.toEqual(oddsOfSeason(sampleSeason, wish));
  });

  test('yields keep their mean and have the spread that was asked for, and crops of a year go together', () => {
    const crops = sampleSeason.crops.filter((crop) => crop.lots.length > 0);
    const [first, second] = [crops[0], crops[1]];
    const [lot, other] = [first?.lots[0], second?.lots[0]];
    if (first === undefined || second === undefined || lot === undefined || other === undefined)
      throw new Error('no lots');
    const years = Array.from({ length: 8000 }, (_, at) => drawYear(sampleSeason, 3, at));
    const factors = years.map((year) => year.yieldFactor(first, lot));
    const mean = factors.reduce((sum, one) => sum + one, 0) / factors.length;
    expect(mean).toBeGreaterThan(0.97);
    expect(mean).toBeLessThan(1.03);
    const logs = factors.map(Math.log);
    expect(deviation(logs)).toBeCloseTo(lot.yieldSd, 1);
    const together = correlation(
      logs,
      years.map((year) => Math.log(year.yieldFactor(second, other))),
    );
    // 0.12^2 of 0.12^2 + 0.15^2 + 0.20^2 is shared by all crops of a year.
    expect(together).toBeGreaterThan(0.187 - 0.05);
    expect(together).toBeLessThan(0.187 + 0.05);
  });

  test('standard errors are what repeated counting shows', () => {
    const samples = 50;
    const repeats = Array.from({ length: 24 }, (_, seed) => oddsOfSeason(sampleSeason, { seed: 1000 + seed, samples }));
    const weeks = repeats[0]?.weeks.length ?? 0;
    let seen = 0;
    let said = 0;
    for (let week = 0; week < weeks; week += 1) {
      seen += deviation(repeats.map((one) => one.weeks[week]?.keptShare ?? 0)) ** 2;
      said += repeats.reduce((sum, one) => sum + (one.weeks[week]?.standardErrorShare ?? 0) ** 2, 0) / repeats.length;
    }
    expect(Math.sqrt(seen / said)).toBeGreaterThan(0.75);
    expect(Math.sqrt(seen / said)).toBeLessThan(1.3);
  }, 60_000);

  test('weeks missed are counted year by year: bad weeks come together', () => {
    const odds = farmOdds(sampleFarm(), { today: sampleToday }, { seed: 9, samples: 200 });
    if (odds === null) throw new Error('The sample farm promises boxes.');
    const multiplied = odds.weeks.reduce((all, week) => all * week.keptShare, 1);
    expect(odds.allKept.keptShare).toBeGreaterThanOrEqual(multiplied);
    expect(odds.missedWeeks.yearsShare.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9);
    expect(odds.missedWeeks.mean).toBeCloseTo(
      odds.weeks.reduce((sum, week) => sum + 1 - week.keptShare, 0),
      9,
    );
  }, 30_000);

  test("Wilson's interval of 10 of 10 and of 5 of 10 (Wilson 1927; worked by hand)", () => {
    // z = 1.96: centre (p + z2/2n) / (1 + z2/n), half width z / (1 + z2/n) sqrt(p (1 - p) / n + z2 / 4n2).
    expect(counted(10, 10).lowShare).toBeCloseTo(0.7225, 3);
    expect(counted(10, 10).highShare).toBeCloseTo(1, 9);
    expect(counted(5, 10).lowShare).toBeCloseTo(0.2366, 3);
    expect(counted(5, 10).highShare).toBeCloseTo(0.7634, 3);
  });
});

function deviation(list: readonly number[]): number {
  const mean = list.reduce((sum, one) => sum + one, 0) / list.length;
  return Math.sqrt(list.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (list.length - 1));
}

function correlation(a: readonly number[], b: readonly number[]): number {
  const [meanA, meanB] = [a, b].map((list) => list.reduce((sum, one) => sum + one, 0) / list.length);
  const both = a.reduce((sum, one, at) => sum + (one - (meanA ?? 0)) * ((b[at] ?? 0) - (meanB ?? 0)), 0);
  return both / (a.length - 1) / deviation(a) / deviation(b);
}
