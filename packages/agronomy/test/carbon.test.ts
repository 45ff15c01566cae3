import { carbon as ground, reference } from '@leywright/agronomy';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readCarbonFile } from '../src/carbon/rothc-file.ts';
import { drynessFactor, greatestDeficitMm, nextDeficitMm, panFromReferenceMm } from '../src/carbon/rothc-rates.ts';
import { expectPrinted } from './expect-printed.ts';

const { rothc: carbon, start: carbonStart, humusBalance } = ground;

const soil = { clayPct: 20, depthCm: 25 };
const month = fc.record({
  tMeanC: fc.double({ min: -20, max: 35, noNaN: true }),
  rainMm: fc.double({ min: 0, max: 250, noNaN: true }),
  panMm: fc.double({ min: 0, max: 250, noNaN: true }),
  covered: fc.boolean(),
  plantTHa: fc.double({ min: 0, max: 5, noNaN: true }),
  easyToResistantRatio: fc.double({ min: 0.25, max: 1.44, noNaN: true }),
  rottedTHa: fc.double({ min: 0, max: 3, noNaN: true }),
});

/** A year of a plain arable field on a cool, wet coast; invented. */
const plainYear = [3, 4, 6, 9, 12, 15, 17, 17, 14, 10, 6, 4].map((tMeanC, at) => ({
  tMeanC,
  rainMm: 60,
  panMm: [10, 15, 35, 60, 95, 110, 115, 100, 65, 35, 15, 10][at] ?? 0,
  covered: at > 2 && at < 9,
  plantTHa: at === 7 ? 2.5 : 0,
  easyToResistantRatio: 1.44,
  rottedTHa: 0,
}));

describe('carbon of the topsoil', () => {
  test('what comes in is what stays and what is breathed out, every month, on any soil in any weather', () => {
    fc.assert(
      fc.property(
        fc.array(month, { minLength: 1, maxLength: 60 }),
        fc.double({ min: 1, max: 70, noNaN: true }),
        (months, clayPct) => {
          let before = carbon.noCarbon;
          carbon.runCarbon(before, months, { clayPct, depthCm: 25 }).forEach((after, at) => {
            const came = (months[at]?.plantTHa ?? 0) + (months[at]?.rottedTHa ?? 0);
            const kept = carbon.activeCarbonTHa(after) - carbon.activeCarbonTHa(before);
            expect(Math.abs(came - kept - (after.breathedTHa - before.breathedTHa))).toBeLessThan(1e-9);
            for (const pool of [after.easyPlantTHa, after.resistantPlantTHa, after.microbesTHa, after.humusTHa])
              expect(pool).toBeGreaterThanOrEqual(0);
            before = after;
          });
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });

  test('a deficit never leaves nought to the greatest of its depth while the ground is covered, and dryness stays within 0.2 and 1', () => {
    fc.assert(
      fc.property(
        fc.array(month, { maxLength: 40 }),
        fc.double({ min: 1, max: 65, noNaN: true }),
        (months, clayPct) => {
          const greatestMm = greatestDeficitMm({ clayPct, depthCm: 23 });
          let deficitMm = 0;
          for (const one of months) {
            deficitMm = nextDeficitMm(deficitMm, one, greatestMm);
            expect(deficitMm).toBeLessThanOrEqual(0);
            expect(deficitMm).toBeGreaterThanOrEqual(greatestMm - 1e-9);
            expect(drynessFactor(deficitMm, greatestMm)).toBeGreaterThanOrEqual(0.2 - 1e-12);
            expect(drynessFactor(deficitMm, greatestMm)).toBeLessThanOrEqual(1);
          }
        },
      ),
      { seed: 2 },
    );
  });

  test('bare ground dries no further than its crust lets it, and does not wet itself by being bare', () => {
    const greatestMm = greatestDeficitMm(soil);
    const drought = { rainMm: 0, panMm: 200, covered: false };
    expect(nextDeficitMm(0, drought, greatestMm)).toBeCloseTo(0.556 * greatestMm, 9);
    expect(nextDeficitMm(greatestMm, drought, greatestMm)).toBe(greatestMm);
  });

  test('a run cut in two is the same run', () => {
    const whole = carbon.runCarbon(carbon.noCarbon, [...plainYear, ...plainYear], soil);
    const half = carbon.runCarbon(carbon.noCarbon, plainYear, soil);
    const rest = carbon.runCarbon(half.at(-1) ?? carbon.noCarbon, plainYear, soil);
    expect(rest.at(-1)).toEqual(whole.at(-1));
  });

  test('evaporation of the reference crop is turned into that of an open pan before it is used', () => {
    expect(panFromReferenceMm(75)).toBe(100);
  });

  test('ground under plants all year keeps more carbon than the same ground left bare', () => {
    const rest = (covered: boolean) =>
      carbon.activeCarbonTHa(
        carbon.spinUpCarbon(
          plainYear.map((one) => ({ ...one, covered })),
          soil,
        ).state,
      );
    expect(rest(true)).toBeGreaterThan(rest(false));
  });
});

describe('where a carbon run starts', () => {
  test('the input found for a stock keeps that stock', () => {
    const inputTHa = carbonStart.inputThatKeepsTHa(55, plainYear, soil) ?? 0;
    const kept = carbon.spinUpCarbon(
      plainYear.map((one) => ({ ...one, plantTHa: (one.plantTHa / 2.5) * inputTHa })),
      soil,
    );
    expect(kept.settled).toBe(true);
    expect(carbon.activeCarbonTHa(kept.state) + carbonStart.inertCarbonTHa(55)).toBeCloseTo(55, 2);
    expect(
      carbonStart.inputThatKeepsTHa(
        55,
        plainYear.map((one) => ({ ...one, plantTHa: 0 })),
        soil,
      ),
    ).toBeNull();
  });

  test('start pools and inert carbon sum to the stock', () => {
    const pools = carbonStart.poolsFromStock(60, 20);
    expect(carbon.activeCarbonTHa(pools) + pools.inertTHa).toBeCloseTo(60, 9);
  });

  test('a sample of 1.5 % carbon at 1.35 t/m³ to 25 cm is 50.6 t/ha, and a fifth less with a fifth of stones', () => {
    const sample = { carbonPct: 1.5, bulkDensityTPerM3: 1.35, depthCm: 25 };
    expectPrinted(carbonStart.stockFromSampleTHa(sample), '50.6');
    expect(carbonStart.stockFromSampleTHa({ ...sample, stonesShare: 0.2 })).toBeCloseTo(50.625 * 0.8, 9);
    expect(carbonStart.carbonFromOrganicMatterPct(3.44)).toBeCloseTo(2, 9);
  });
});

describe('a run in the authors’ form', () => {
  const head = [
    'a run',
    'what it is',
    ' (%) (cm)',
    'clay depth iom nsteps',
    '13.0 25.0 3.0 12',
    '(-)',
    'year month modern Tmp',
  ];
  const row = '1 1 100 3.73 52.2 6.6 0 0 1 1.44';

  test('is read with every month', () => {
    const read = readCarbonFile([...head, ...Array.from({ length: 12 }, () => row)].join('\r\n'));
    if (read.kind !== 'run') throw new Error(read.found);
    expect(read.run).toMatchObject({ soil: { clayPct: 13, depthCm: 25 }, inertTHa: 3 });
    expect(read.run.months).toHaveLength(12);
    expect(read.run.months[0]).toMatchObject({ tMeanC: 3.73, rainMm: 52.2, panMm: 6.6, covered: true });
  });

  test('is refused with the line when a month is broken, missing, or nothing is there', () => {
    expect(readCarbonFile([...head, ...Array.from({ length: 11 }, () => row), '1 2 wet'].join('\n'))).toMatchObject({
      kind: 'bad',
      lineNumber: 19,
    });
    expect(readCarbonFile([...head, row].join('\n'))).toMatchObject({ kind: 'bad', found: '12 months said, 1 there' });
    expect(readCarbonFile('')).toMatchObject({ kind: 'bad' });
  });
});

describe('humus balance', () => {
  test('each vegetable of the crops table has a use, asparagus and mixed leaves of perennials aside', () => {
    const without = [...reference.crops.keys()].filter((id) => humusBalance.humusUseOfCrop(id) === null);
    expect(without).toEqual(['asparagus']);
  });

  test.each([
    ['potatoes', -760],
    ['carrots', -560],
    ['beetroot', -280],
    ['grain legumes', 160],
    ['winter catch crop', 120],
    ['undersowing', 200],
    ['veg group 2', -560],
    ['Brussels sprouts', -760],
    ['ley (grass, legume, legume-grass) per main year; group 4', 600],
  ])('%s counts %d kg of humus carbon', (word, kgCHa) => {
    expect(humusBalance.humusUse(word)?.kgCHa).toBe(kgCHa);
  });

  test('a word that is no use has none, and a compost without its dryness is several', () => {
    expect(humusBalance.humusUse('bananas')).toBeNull();
    expect(humusBalance.humusMaterialsNamed('finished compost')).toHaveLength(3);
    expect(humusBalance.humusMaterialsNamed('finished compost 50% DM')).toMatchObject([{ carbonKgT: 58 }]);
  });

  test('more compost never makes the balance of a rotation worse', () => {
    const balance = (suppliedKgCHa: number) =>
      humusBalance.rotationBalanceKgCHa({ usesKgCHa: [600, -760, -280, -560], extrasKgCHa: [200], suppliedKgCHa });
    expect(balance(0)).toBe(-200);
    expect(balance(140)).toBeGreaterThan(balance(70));
  });
});
