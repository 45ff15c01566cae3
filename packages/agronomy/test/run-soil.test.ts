import {
  nitrogenModels,
  type SoilPart,
  type SoilRun,
  type SoilStand,
  type SoilWeather,
  soilAccount,
} from '@leywright/agronomy';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberOf, partOf, roughWeather, seededNumbers, standOf, sumOver, valueOn } from './soil-samples.ts';

const { runSoil } = soilAccount;
const daily = { stepDays: 1 };

const plants = [
  ['mix-ley-clover-grass', 700],
  ['lucerne', 500],
  ['potato-maincrop', 150],
  ['cabbage-autumn', 140],
  ['pea', 90],
  ['carrot-maincrop', 150],
  ['grazing-rye', 200],
  ['winter-vetch', 220],
  ['phacelia', 60],
  ['leek-mid', 230],
  ['squash-maxima', 120],
] as const;
const endings = ['sold', 'sold-residue-worked-in', 'turned-in', 'left', 'failed'] as const;

/** A part by chance: any texture, stands one after another and one under another, cuts, compost, water given, a tunnel now and then. */
function drawnPart(seed: number, weather: SoilWeather): SoilPart {
  const random = seededNumbers(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const stands: SoilStand[] = [];
  let day = weather.startDayNumber + Math.floor(random() * 60);
  while (day < weather.startDayNumber + weather.dayCount) {
    const [plant, days] = pick(plants);
    const base = standOf(plant, ['2026-01-01', '2026-01-02']);
    const cuts = [70, 130, 200].map((after) => ({
      dayNumber: day + after,
      use: random() < 0.5 ? ('left' as const) : ('taken' as const),
    }));
    stands.push({
      ...base,
      id: `${plant}-${stands.length}`,
      startDayNumber: day,
      endDayNumber: day + Math.floor(days * (0.5 + random())),
      ending: pick(endings),
      establishedShare: random() < 0.3 ? random() : 1,
      seedNKgHa: random() * 8,
      cuts: plant === 'lucerne' || plant.startsWith('mix') ? cuts : [],
      groundWorked: random() < 0.7,
    });
    day += Math.floor(days * (0.3 + random()));
  }
  return partOf(stands.slice(0, 40), {
    profile: {
      ...soilAccount.profiles.profileOfTexture(pick(soilAccount.profiles.textures)),
      depthCm: pick([30, 100, 250]),
      drainingFraction: pick([0.3, 1]),
      curveNumber: pick([null, 80]),
    },
    brought: [{ dayNumber: weather.startDayNumber + 100, nKgHa: 80, carbonKgHa: 1500, way: 'worked in' }],
    irrigation: pick([
      { kind: 'none' } as const,
      { kind: 'rule', roomForRainMm: 10, mostADayMm: 25 } as const,
      { kind: 'dated', amounts: [{ dayNumber: weather.startDayNumber + 150, waterMm: 25 }] } as const,
    ]),
    tunnel: random() < 0.15,
    startMineralNKgHa: random() * 150,
    startAvailableShare: random(),
  });
}

/** The greatest miss of any day (first day left out: its start is the part's, checked apart). */
function greatestMiss(run: SoilRun, stocks: readonly string[], flows: Readonly<Record<string, 1 | -1>>): number {
  const columns = new Map(soilAccount.soilColumns.map((name) => [name as string, run.column(name)]));
  const at = (name: string, step: number) => columns.get(name)?.[step] ?? Number.NaN;
  let worst = 0;
  for (let step = 1; step < run.steps; step++) {
    let miss = 0;
    for (const stock of stocks) miss += at(stock, step) - at(stock, step - 1);
    for (const [flow, sign] of Object.entries(flows)) miss -= sign * at(flow, step);
    worst = Math.max(worst, Number.isNaN(miss) ? Number.POSITIVE_INFINITY : Math.abs(miss));
  }
  return worst;
}

const waterFlows = {
  rainMm: 1,
  irrigationMm: 1,
  runoffMm: -1,
  evaporationMm: -1,
  transpirationMm: -1,
  drainedMm: -1,
} as const;
const nitrogenStocks = ['mineralNKgHa', 'plantNKgHa', 'residueNKgHa', 'humusNKgHa'];
const nitrogenFlows = {
  depositedNKgHa: 1,
  broughtNKgHa: 1,
  fixedNKgHa: 1,
  leachedNKgHa: -1,
  denitrifiedNKgHa: -1,
  ammoniaNKgHa: -1,
  soldNKgHa: -1,
  movedNKgHa: -1,
} as const;

describe('the ground’s account closes every day, whatever grows and whatever the weather', () => {
  test('water, nitrogen and carbon of the residues in is out plus change, to 1e-6', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), fc.constantFrom(0.4, 1, 2.5), (seed, rainFactor) => {
        const weather = roughWeather('2026-01-01', '2028-12-31', seed, rainFactor);
        const run = runSoil(drawnPart(seed, weather), weather, daily);
        expect(greatestMiss(run, ['waterMm'], waterFlows)).toBeLessThan(1e-6);
        expect(greatestMiss(run, nitrogenStocks, nitrogenFlows)).toBeLessThan(1e-6);
        const carbonFlows = { residueInCKgHa: 1, carbonDioxideCKgHa: -1 } as const;
        expect(greatestMiss(run, ['residueCKgHa', 'humusCKgHa'], carbonFlows)).toBeLessThan(1e-6);
      }),
      { numRuns: 40 },
    );
  });

  test('no stock is ever below nought, the layers hold between half their wilting point and their pores', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), (seed) => {
        const weather = roughWeather('2026-01-01', '2027-12-31', seed, 1.5);
        const part = drawnPart(seed, weather);
        const run = runSoil(part, weather, daily);
        for (const name of [...nitrogenStocks, 'topMineralNKgHa', 'residueCKgHa'])
          expect(Math.min(...run.column(name as (typeof soilAccount.soilColumns)[number]))).toBeGreaterThanOrEqual(
            -1e-9,
          );
        const layers = part.profile.depthCm / 10;
        const poresMm = layers * 100 * soilAccount.profiles.saturationShare(part.profile.bulkDensityKgPerL);
        const least = 100 * part.profile.wiltingPointShare * (layers - 0.5);
        // What starts between is held between.
        expect(Math.max(...run.column('waterMm'))).toBeLessThanOrEqual(poresMm + 1e-9);
        expect(Math.min(...run.column('waterMm'))).toBeGreaterThanOrEqual(least - 1e-6);
      }),
      { numRuns: 20 },
    );
  });

  test('rows of seven days are the sums and ends of the days', () => {
    const weather = roughWeather('2026-01-01', '2027-12-31', 7);
    const part = drawnPart(7, weather);
    const [days, weeks] = [runSoil(part, weather, daily), runSoil(part, weather, { stepDays: 7 })];
    const sum = (run: SoilRun) => [...run.column('leachedNKgHa')].reduce((total, one) => total + one, 0);
    expect(sum(weeks)).toBeCloseTo(sum(days), 9);
    expect(weeks.column('mineralNKgHa')[10]).toBe(days.column('mineralNKgHa')[76]);
    expect(weeks.outcomes).toEqual(days.outcomes);
  });
});

describe('a change recomputes its part from the first changed day', () => {
  test('bit for bit what a run from the start gives', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), fc.constantFrom(1, 7), (seed, stepDays) => {
        const weather = roughWeather('2026-01-01', '2029-12-31', seed);
        const part = drawnPart(seed, weather);
        const before = runSoil(part, weather, { stepDays });
        const at = Math.floor(part.stands.length / 2);
        const changed = part.stands[at];
        if (changed === undefined) return;
        const days = 10;
        const moved = { ...changed, endDayNumber: changed.endDayNumber + days };
        const now = { ...part, stands: part.stands.map((one, place) => (place === at ? moved : one)) };
        const changedDayNumber = changed.endDayNumber;
        const again = runSoil(now, weather, { stepDays, after: { run: before, changedDayNumber } });
        const fresh = runSoil(now, weather, { stepDays });
        for (const name of soilAccount.soilColumns)
          expect(Buffer.compare(bytes(again, name), bytes(fresh, name)), name).toBe(0);
        expect(again.outcomes).toEqual(fresh.outcomes);
        expect(again.transfers).toEqual(fresh.transfers);
        // And what was kept serves the next change alike.
        expect(again.kept.days).toEqual(fresh.kept.days);
        expect(Buffer.compare(asBuffer(again.kept.states), asBuffer(fresh.kept.states))).toBe(0);
      }),
      { numRuns: 25 },
    );
  });
});

const asBuffer = (values: Float64Array) => Buffer.from(values.buffer, values.byteOffset, values.byteLength);
const bytes = (run: SoilRun, name: (typeof soilAccount.soilColumns)[number]) =>
  asBuffer(Float64Array.from(run.column(name)));

describe('one batch in bare, wet and warm ground', () => {
  const days = 168;
  const steady: SoilWeather = {
    startDayNumber: numberOf('2026-01-01'),
    dayCount: days + 1,
    tMaxC: new Float64Array(days + 1).fill(15),
    tMinC: new Float64Array(days + 1).fill(15),
    rainMm: new Float64Array(days + 1),
    etoMm: new Float64Array(days + 1),
    shortDayCount: new Uint8Array(days + 1),
    yearMeanC: 15,
  };

  test.each([12, 25, 40])('of C:N %i frees what the plain model does (Nicolardot, Recous & Mary 2001)', (cnRatio) => {
    const brought = {
      dayNumber: steady.startDayNumber,
      nKgHa: 4000 / cnRatio,
      carbonKgHa: 4000,
      way: 'worked in',
    } as const;
    const part = partOf([], { brought: [brought], startMineralNKgHa: 900, depositionKgHaYear: 0 });
    const run = runSoil(part, steady, daily);
    const freed = sumOver(run, 'residueReleaseNKgHa', '2026-01-01', '2026-06-18');
    const { residueAfter, residueRates } = nitrogenModels.residue;
    const plain = residueAfter(4000, { cnRatio, rates: residueRates(cnRatio) }, days).mineralNKgHa;
    // The factors are printed rounded: a day at 15 °C counts 1.001.
    expect(Math.abs(freed - plain)).toBeLessThan(0.01 * Math.abs(plain) + 0.5);
  });
});

describe('what the ground is told', () => {
  const weather = roughWeather('2026-01-01', '2028-12-31', 11);

  test('a tunnel has no rain', () => {
    const run = runSoil(
      partOf([standOf('tomato-tunnel', ['2026-05-01', '2026-10-10'])], { tunnel: true }),
      weather,
      daily,
    );
    expect(sumOver(run, 'rainMm', '2026-01-01', '2028-12-31')).toBe(0);
    expect(sumOver(run, 'depositedNKgHa', '2026-01-01', '2028-12-31')).toBe(0);
  });

  test('mulch lying on bare ground keeps water in it', () => {
    const mulch = { dayNumber: numberOf('2026-06-01'), nKgHa: 60, carbonKgHa: 2500, way: 'carried' } as const;
    const [bare, mulched] = [[], [mulch]].map((brought) => runSoil(partOf([], { brought }), weather, daily));
    if (bare === undefined || mulched === undefined) throw new Error('Two runs were asked for.');
    const lost = (run: SoilRun) => sumOver(run, 'evaporationMm', '2026-06-02', '2026-08-01');
    expect(lost(mulched)).toBeLessThan(0.9 * lost(bare));
  });

  test('what is undersown drinks beside its host, and less than alone', () => {
    const host = standOf('squash-maxima', ['2026-06-01', '2026-09-20']);
    const under = standOf('mix-undersow-ley', ['2026-07-01', '2027-04-01'], { groundWorked: false });
    const used = (stands: readonly SoilStand[]) =>
      sumOver(runSoil(partOf(stands), weather, daily), 'transpirationWantedMm', '2026-07-01', '2026-09-20');
    const both = used([host, under]);
    expect(both).toBeGreaterThan(used([host]));
    expect(both).toBeLessThan(used([host]) + used([under]));
  });

  test('a legume fixes less where the soil is rich in mineral nitrogen', () => {
    const stands = [standOf('red-clover', ['2026-04-15', '2026-10-15'])];
    const fixed = (startMineralNKgHa: number) =>
      runSoil(partOf(stands, { startMineralNKgHa }), weather, daily).outcomes[0]?.fixedNKgHa ?? 0;
    expect(fixed(400)).toBeLessThan(0.8 * fixed(30));
    expect(fixed(30)).toBeGreaterThan(50);
  });

  test('a ley’s cut taken away is told as a transfer and counted out; left, it stays in the ground', () => {
    const ley = (use: 'left' | 'taken') =>
      standOf('mix-ley-clover-grass', ['2026-04-15', '2027-10-15'], {
        cuts: [{ dayNumber: numberOf('2027-06-01'), use }],
      });
    const taken = runSoil(partOf([ley('taken')]), weather, daily);
    const moved = taken.transfers[0];
    expect(moved?.nKgHa).toBeGreaterThan(40);
    expect(sumOver(taken, 'movedNKgHa', '2026-01-01', '2028-12-31')).toBeCloseTo(moved?.nKgHa ?? 0, 9);
    const left = runSoil(partOf([ley('left')]), weather, daily);
    expect(left.transfers).toEqual([]);
    expect(valueOn(left, 'residueNKgHa', '2027-06-02')).toBeGreaterThan(
      valueOn(taken, 'residueNKgHa', '2027-06-02') + 0.8 * (moved?.nKgHa ?? 0),
    );
  });

  test('mustard dies of the first hard frost and lies where it stood', () => {
    const cold = { ...weather, tMinC: Float64Array.from(weather.tMinC) };
    const frostDay = numberOf('2026-12-10');
    cold.tMinC[frostDay - weather.startDayNumber] = -12;
    const run = runSoil(partOf([standOf('white-mustard', ['2026-08-20', '2027-03-01'])]), cold, daily);
    expect(run.outcomes.map((one) => [one.endedBy, one.endDayNumber])).toEqual([['frost', frostDay]]);
  });

  test('the same input gives the same numbers', () => {
    const part = drawnPart(3, weather);
    expect(Buffer.compare(asBuffer(runSoil(part, weather).kept.rows), asBuffer(runSoil(part, weather).kept.rows))).toBe(
      0,
    );
  });
});
