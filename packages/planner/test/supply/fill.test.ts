import type { Farm } from '@leywright/book';
import {
  boxPromise,
  boxSize,
  day,
  farmWith,
  plot,
  randomFarm,
  slot,
  span,
  stand,
  storePlace,
} from '@leywright/farm-kit';
import { asId, type CropId } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planSupply } from '../../src/supply/plan-supply.ts';
import { type SupplyRun, supplyRun } from '../../src/supply/supply-run.ts';
import { inputOf } from './inputs.ts';

/** A farm of a few plots, crops, stores and places in the box, drawn by fast-check; invented. */
const anyBoxFarm = fc
  .record({
    crops: fc.uniqueArray(
      fc.constantFrom(
        'carrot-maincrop',
        'kale-curly',
        'leek-mid',
        'potato-maincrop',
        'lettuce-head',
        'courgette',
        'onion-set',
        'beetroot-maincrop',
      ),
      { minLength: 1, maxLength: 6 },
    ),
    stores: fc.uniqueArray(fc.constantFrom('cold', 'ambient_frost_free', 'clamp', 'field'), { maxLength: 3 }),
    households: fc.integer({ min: 1, max: 400 }),
    portion: fc.integer({ min: 1, max: 20 }),
    everyWeeks: fc.integer({ min: 1, max: 3 }),
    closed: fc.array(fc.integer({ min: 1, max: 53 }), { maxLength: 6 }),
    ownLoss: fc.boolean(),
  })
  .map((drawn): Farm => {
    const width = 1 / drawn.crops.length;
    const stands = [2025, 2026, 2027].flatMap((year) =>
      drawn.crops.map((crop, at) =>
        stand('a', crop, [`${year}-05-20`, at % 2 === 0 ? `${year}-11-20` : `${year + 1}-02-20`], {
          id: `${crop}-${year}`,
          span: span(at * width, (at + 1) * width),
        }),
      ),
    );
    return farmWith({
      plots: [plot('A', { grossM2: 4000 })],
      stands,
      stores: drawn.stores.map((kind) => storePlace(kind, kind, [])),
      storeLosses: drawn.ownLoss ? [{ crop: asId<CropId>('carrot-maincrop'), from: null, lossShareWeek: 0.01 }] : [],
      promise: boxPromise({
        sizes: [boxSize('box', drawn.households)],
        closedEveryYear: drawn.closed,
        slots: [
          slot(drawn.crops, { id: 'first', portions: { box: drawn.portion / 10 }, everyWeeks: drawn.everyWeeks }),
          slot([...drawn.crops].reverse(), { id: 'second', portions: { box: drawn.portion / 20 } }),
        ],
      }),
    });
  });

describe('kilos', () => {
  test('in = kilos out + loss + what is left, for every crop and every week in store', () => {
    fc.assert(
      fc.property(anyBoxFarm, (farm) => {
        for (const stock of stocksOf(supplyRun(inputOf(farm, '2026-03-01', 2026)))) {
          for (const row of stock.weeks)
            expect(row.openKg + row.inKg - row.lossKg - row.outKg).toBeCloseTo(row.closeKg, 6);
          stock.weeks.forEach((row, at) => {
            const before = stock.weeks[at - 1];
            if (before !== undefined && before.week === row.week - 1) expect(row.openKg).toBeCloseTo(before.closeKg, 6);
          });
        }
      }),
      { numRuns: 25 },
    );
  });

  test('of a crop are boxed fresh, put in store, or left uncut: none is lost on the way and none is boxed twice', () => {
    fc.assert(
      fc.property(anyBoxFarm, (farm) => {
        const run = supplyRun(inputOf(farm, '2026-03-01', 2026));
        for (const flow of run.typ.flows.values()) {
          const whole = flow.lots.filter(({ lot }) => lot.aliveFromWeek >= 0 && lot.aliveToWeek < run.axis.weeks);
          expect(whole.length).toBeGreaterThan(0);
          const cutKg = whole.reduce((sum, lot) => sum + [...lot.cut.values()].reduce((kg, one) => kg + one, 0), 0);
          const readyKg = whole.reduce((sum, { lot }) => sum + lot.kg.typ, 0);
          expect(cutKg + whole.reduce((sum, lot) => sum + lot.uncutKg, 0)).toBeCloseTo(readyKg, 4);
          if (whole.length < flow.lots.length) continue;
          const takes = run.typ.weeks
            .flatMap((slots) => slots.flatMap((one) => one.takes))
            .filter((take) => take.crop.id === flow.crop.id);
          const freshKg = takes.filter((take) => take.from !== 'store').reduce((sum, take) => sum + take.kg, 0);
          const storedKg = flow.stocks.flatMap((stock) => stock.weeks).reduce((sum, row) => sum + row.inKg, 0);
          expect(freshKg + storedKg).toBeCloseTo(cutKg, 4);
          const outKg = flow.stocks.flatMap((stock) => stock.weeks).reduce((sum, row) => sum + row.outKg, 0);
          expect(takes.filter((take) => take.from === 'store').reduce((sum, take) => sum + take.kg, 0)).toBeCloseTo(
            outKg,
            4,
          );
        }
      }),
      { numRuns: 25 },
    );
  });

  test('in the boxes of a week never make more than the whole of what was asked, and closed weeks have none', () => {
    fc.assert(
      fc.property(anyBoxFarm, (farm) => {
        const supply = planSupply(inputOf(farm, '2026-03-01', 2026));
        for (const box of supply?.boxes ?? []) {
          if (box.closed !== null) expect([box.items.length, box.missing.length, box.boxes]).toEqual([0, 0, 0]);
          for (const place of ['first', 'second']) {
            const filled = box.items
              .filter((item) => item.slot === place)
              .reduce((sum, item) => sum + item.boxesShare, 0);
            expect(filled).toBeLessThanOrEqual(1 + 1e-9);
          }
          expect(box.low).toBeLessThanOrEqual(box.high + 1e-9);
        }
      }),
      { numRuns: 15 },
    );
  });
});

function stocksOf(run: SupplyRun) {
  return [...run.typ.flows.values()].flatMap((flow) => flow.stocks);
}

describe('a place in the box', () => {
  const leeks = stand('a', 'leek-mid', ['2026-06-05', '2027-01-20'], { plantedOn: '2026-06-05', span: span(0, 0.5) });
  const kale = stand('a', 'kale-curly', ['2026-06-20', '2027-03-20'], { plantedOn: '2026-06-20', span: span(0.5, 1) });
  const farm = farmWith({
    plots: [plot('A', { grossM2: 4000 })],
    stands: [leeks, kale],
    promise: boxPromise({
      sizes: [boxSize('box', 100)],
      slots: [
        slot(['kale-curly', 'leek-mid'], { id: 'one', portions: { box: 0.3 } }),
        slot(['kale-curly', 'leek-mid'], { id: 'two', portions: { box: 0.3 } }),
      ],
    }),
  });
  test('takes the first crop of its list, and the next place something else while there is any', () => {
    const box = planSupply(inputOf(farm, '2026-04-01', 2026))?.boxes.find((one) => one.week === '2026-w46');
    expect(box?.items.map((item) => [item.slot, item.crop, item.from])).toEqual([
      ['one', 'kale-curly', 'field'],
      ['two', 'leek-mid', 'field'],
    ]);
  });
});

describe('scaling the households by k', () => {
  test('scales what is wanted, and the ground and seed for it, by k', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        fc.integer({ min: 2, max: 9 }),
        fc.constantFrom('carrot-maincrop', 'leek-mid', 'lettuce-head', 'potato-maincrop', 'squash-maxima'),
        (households, k, crop) => {
          const needOf = (count: number) =>
            planSupply(
              inputOf(
                farmWith({ promise: boxPromise({ sizes: [boxSize('box', count)], slots: [slot(crop)] }) }),
                '2026-03-01',
                2026,
              ),
            )?.needs[0];
          const one = needOf(households);
          const more = needOf(households * k);
          for (const figure of ['demandKg', 'demandUnits', 'liftKg', 'needM2', 'rowM', 'stations'] as const) {
            expect((more?.[figure] ?? 0) / (one?.[figure] ?? 1)).toBeCloseTo(k, 6);
          }
          expect(more?.boxWeeks).toBe(one?.boxWeeks);
        },
      ),
      { numRuns: 20 },
    );
  });
});

describe('recorded harvests', () => {
  const bed = stand('a', 'leek-mid', ['2026-06-05', '2027-01-20'], { id: 'leeks', plantedOn: '2026-06-05' });
  const cut = (on: string, grossKg: number) => ({
    entry: on,
    crop: asId<CropId>('leek-mid'),
    plot: 'a' as never,
    stand: 'leeks',
    on: day(on),
    grossKg,
    count: null,
    unit: 'kg' as const,
    gradedOutShare: 0,
    into: 'box' as const,
    store: null,
  });
  const farm = (harvests: Farm['harvests'], ended = false) =>
    farmWith({
      plots: [plot('A', { grossM2: 1000 })],
      stands: [ended ? { ...bed, endedBy: 'lifted' } : bed],
      harvests,
      promise: boxPromise({
        sizes: [boxSize('box', 50)],
        slots: [slot('leek-mid', { from: '10-01', to: '01-31', portions: { box: 0.4 } })],
      }),
    });
  const harvestOf = (one: Farm, today: string) =>
    planSupply(inputOf(one, today, 2026))?.harvests.find((harvest) => harvest.stand === 'leeks');

  test('take the place of what was expected; the rest stays to come while the bed is open (edge 64)', () => {
    const expected = harvestOf(farm([]), '2026-09-01')?.kg.typ ?? 0;
    const partly = harvestOf(farm([cut('2026-11-05', 200), cut('2026-11-12', 150)]), '2026-11-20');
    expect(expected).toBeCloseTo(1200, 0); // 0.1 ha at the table's 12 t/ha
    expect(partly).toMatchObject({ recordedKg: 350, basis: 'recorded' });
    expect(partly?.kg.typ).toBeCloseTo(expected, 6);
    expect(partly?.kg.low).toBeGreaterThanOrEqual(350);
  });
  test('a bed that was closed gave what was recorded and no more', () => {
    expect(harvestOf(farm([cut('2026-11-05', 200)], true), '2026-11-20')?.kg).toEqual({
      low: 200,
      typ: 200,
      high: 200,
    });
  });
});

test('sixty crops over three years are reckoned in a moment', () => {
  const farm = randomFarm({ seed: 7, plots: 6, years: 5, crops: 60, firstYear: 2024 });
  const input = inputOf(farm, '2026-03-01', 2026);
  supplyRun(input);
  const times = Array.from({ length: 7 }, () => {
    const start = performance.now();
    supplyRun(input);
    return performance.now() - start;
  }).toSorted((a, b) => a - b);
  // The aim is 50 ms on a quiet machine; a busy one is given ten times that, which still catches a loop gone quadratic.
  expect(times[0]).toBeLessThan(500);
});
