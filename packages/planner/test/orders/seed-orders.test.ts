/** Plants to raise and seed to order, against counts made by hand. */
import { cover, farmWith, ownCrop, plot, randomFarm, sampleFarm, sampleToday, stand } from '@leywright/farm-kit';
import { asDay, yearOf } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assignHands } from '../../src/hands/assign.ts';
import { lotWorth } from '../../src/orders/lots-in-hand.ts';
import { orderSheet, seedAddedUpKg, seedBy } from '../../src/orders/order-sheet.ts';
import { seedOrders } from '../../src/orders/seed-orders.ts';
import { planFarm } from '../../src/plan/planner.ts';
import { plantsRaised, sownOnDay } from '../../src/plants/plants-raised.ts';

type FarmOf = ReturnType<typeof farmWith>;
const planOf = (farm: FarmOf, today = '2027-01-14') => planFarm(farm, { today: asDay(today), year: 2027 });

describe('plants raised', () => {
  /** 5000 lettuces on 909 m2 at a known spacing: rows and plants a metre are the farm's own, so the count is by hand. */
  const farm = farmWith({
    plots: [plot('A', { grossM2: 1000, headlandShare: 0 })],
    crops: [
      ownCrop('lettuce-head', {
        bedCentresM: 2,
        rowsPerBed: 4,
        plantsPerRowM: 2.5,
        germinationShare: 0.88,
        fieldFactorShare: 1,
      }),
    ],
    stands: [
      stand('a', 'lettuce-head', ['2027-05-10', '2027-07-05'], {
        id: 'l',
        sownOn: '2027-04-12',
        plantedOn: '2027-05-10',
      }),
    ],
  });
  const raised = plantsRaised(farm, planOf(farm));
  const line = raised.lines[0];

  test('1000 m² with four rows on two-metre beds are 2000 m of row, 5000 plants; at 88 % out of each seed 5682 cells in 19 trays of 308', () => {
    // 5000 / 0.88 = 5681.8; / 308 = 18.4: nineteen trays (crops.csv tray-count-lettuce).
    expect(line).toMatchObject({
      plants: 5000,
      cells: 5682,
      cellsPerTray: 308,
      trays: 19,
      spareCells: 19 * 308 - 5682,
    });
  });

  test('19 trays of 308 cells of 17 ml with a tenth spilt take 110.5 litres of mix', () => {
    expect(line?.mixL).toBeCloseTo((19 * 308 * 17) / 1000 / 0.9, 9);
    expect(line?.mixL).toBeCloseTo(110.5, 1);
  });

  test('they stand on the bench from the week of sowing to that of planting: 19 trays of 0.24 m² with a twentieth lost are 4.8 m²', () => {
    expect(raised.bench.map((one) => one.week)).toEqual(['2027-w15', '2027-w16', '2027-w17', '2027-w18', '2027-w19']);
    for (const week of raised.bench) expect(week.benchM2).toBeCloseTo((19 * 0.24) / 0.95, 9);
    expect(raised.fullest?.trays).toBe(19);
  });

  test('in cells of 308 they hold ten days past their planting day', () => expect(line?.holdsTo).toBe('2027-05-20'));

  test('what is sown today is sown on its day and on no other', () => {
    expect(sownOnDay(raised, asDay('2027-04-12')).map((one) => one.stand)).toEqual(['l']);
    expect(sownOnDay(raised, asDay('2027-04-13'))).toEqual([]);
  });

  test('late leeks are raised in a seedbed: a metre of row for sixty plants, no trays', () => {
    const leeks = farmWith({
      plots: [plot('A', { grossM2: 1000, headlandShare: 0 })],
      stands: [
        stand('a', 'leek-late', ['2027-06-20', '2028-03-10'], { plantedOn: '2027-06-20', sownOn: '2027-03-28' }),
      ],
    });
    const found = plantsRaised(leeks, planOf(leeks)).lines[0];
    expect(found).toMatchObject({ trays: null, mixL: null });
    expect(found?.seedbedM).toBeCloseTo((found?.plants ?? 0) / 60, 9);
  });

  test('on any farm trays hold the cells, cells the plants that are to stand, and the bench every tray of its week', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), (seed) => {
        const any = randomFarm({ seed, plots: 2, years: 3, crops: 16, firstYear: 2026 });
        const found = plantsRaised(any, planOf(any));
        for (const one of found.lines) {
          if (one.trays === null) continue;
          expect(one.trays * (one.cellsPerTray ?? 0)).toBeGreaterThanOrEqual(one.cells ?? 0);
          expect(one.spareCells).toBeGreaterThanOrEqual(0);
          expect(yearOf(one.sownOn)).toBe(2027);
        }
        for (const week of found.bench) expect(week.benchM2).toBeGreaterThanOrEqual(week.trays * 0.24);
      }),
      { numRuns: 8 },
    );
  });
});

describe('seed to order', () => {
  const base = farmWith({
    plots: [plot('A', { grossM2: 902.3, headlandShare: 0 }), plot('B', { grossM2: 10_000, headlandShare: 0 })],
    crops: [
      ownCrop('carrot-maincrop', {
        bedCentresM: 1.8,
        rowsPerBed: 3,
        plantsPerRowM: 40,
        germinationShare: 0.85,
        fieldFactorShare: 0.7,
        thousandSeedG: 1.25,
        seedMarginShare: 0.1,
      }),
    ],
    stands: [
      stand('a', 'carrot-maincrop', ['2027-05-25', '2027-10-30'], { id: 'c', variety: 'Roter' }),
      cover('b', 'mix-rye-vetch', ['2027-09-10', '2028-04-20'], { id: 'rv' }),
    ],
  });
  const offers = (rows: readonly Partial<FarmOf['seedOffers'][number]>[]): FarmOf => ({
    ...base,
    seedOffers: rows.map((row, at) => ({
      id: `o${at}`,
      what: 'carrot-maincrop',
      variety: 'Roter',
      supplier: 'Seeds of the hill',
      status: 'organic',
      packKg: null,
      packSeeds: 100_000,
      available: true,
      seenOn: null,
      ...row,
    })),
  });
  const lot = (row: Partial<FarmOf['seedLots'][number]>): FarmOf['seedLots'][number] => ({
    lot: 'lot-1',
    what: 'carrot-maincrop',
    variety: 'Roter',
    massKg: null,
    seeds: null,
    germinationShare: null,
    testedOn: null,
    harvestYear: null,
    status: 'organic',
    proof: null,
    ...row,
  });
  const carrots = (farm: FarmOf) => seedOrders(farm, planOf(farm)).orders.find((one) => one.what === 'carrot-maincrop');

  test('the carrots of the winter box: 101 100 seeds and a tenth more, two packs of 100 000 (worked case)', () => {
    const order = carrots(offers([{}]));
    expect(Math.abs((order?.needSeeds ?? 0) / 111_210 - 1)).toBeLessThan(0.005);
    expect(order).toMatchObject({ packs: 2, right: 'organic' });
    expect(order?.needKg).toBeCloseTo(((order?.needSeeds ?? 0) * 1.25) / 1e6, 9);
  });

  test('a mixture is ordered by its kinds: 130 kg a hectare and a tenth more, 60 % rye and 40 % vetch', () => {
    const orders = seedOrders(base, planOf(base)).orders;
    expect(orders.find((one) => one.what === 'grazing-rye')?.needKg).toBeCloseTo(130 * 1.1 * 0.6, 6);
    expect(orders.find((one) => one.what === 'winter-vetch')?.needKg).toBeCloseTo(130 * 1.1 * 0.4, 6);
  });

  test('what is in hand is taken off by what it is worth: half as good a test, half the seed (edge 37)', () => {
    const tested = lot({ seeds: 40_000, germinationShare: 0.425, testedOn: asDay('2027-01-10'), proof: 'folder 3' });
    const order = carrots({ ...offers([{}]), seedLots: [tested] });
    expect(order?.buySeeds).toBeCloseTo((order?.needSeeds ?? 0) - 20_000, 3);
    expect(order?.packs).toBe(1);
    expect(order?.inHand).toMatchObject([{ lot: 'lot-1', testAgain: false, proof: 'folder 3' }]);
  });

  test('an old lot that was never tested loses by its age and is to be tested again (edge 37)', () => {
    const on = asDay('2027-05-25');
    const plant = { germinationShare: 0.85, group: 'umbellifer', isSetOrTuber: false };
    expect(lotWorth(lot({ harvestYear: 2026 }), on, plant)).toMatchObject({ worthShare: 1, testAgain: true });
    expect(lotWorth(lot({ harvestYear: 2025 }), on, plant).worthShare).toBeCloseTo(0.75, 9);
    expect(lotWorth(lot({ harvestYear: 2025 }), on, { ...plant, group: 'brassica' }).worthShare).toBeCloseTo(0.9, 9);
    expect(lotWorth(lot({ testedOn: asDay('2025-01-01'), germinationShare: 0.8 }), on, plant).testAgain).toBe(true);
  });

  test('seed not to be had organically asks for a grant before the day of sowing, with the day to ask by (edge 35)', () => {
    const untreated = offers([{ status: 'untreated' }]);
    expect(carrots(untreated)).toMatchObject({
      right: 'ask',
      grantedBefore: '2027-05-25',
      askBy: '2027-04-27',
      sownWithout: false,
    });
    const granted = (grantedOn: string, until: string | null): FarmOf => ({
      ...untreated,
      seedAuthorisations: [
        {
          id: 'a1',
          what: 'carrot-maincrop',
          variety: 'Roter',
          askedOn: asDay('2027-02-01'),
          grantedOn: asDay(grantedOn),
          until: until === null ? null : asDay(until),
          reason: 'none listed',
          proof: 'no. 7, folder 3',
        },
      ],
    });
    expect(carrots(granted('2027-03-01', '2027-12-31'))).toMatchObject({
      right: 'granted',
      authorisation: { proof: 'no. 7, folder 3' },
    });
    expect(carrots(granted('2027-05-26', null))?.right).toBe('refused');
    expect(carrots(granted('2027-03-01', '2027-05-01'))?.right).toBe('refused');
    const sown = {
      ...untreated,
      stands: untreated.stands.map((one) => (one.id === 'c' ? { ...one, state: 'recorded' as const } : one)),
    };
    expect(carrots(sown)?.sownWithout).toBe(true);
  });

  test('sold out: another variety that can be had organically is named beside it (edge 36)', () => {
    const order = carrots(offers([{ available: false }, { variety: 'Robila' }]));
    expect(order).toMatchObject({ right: 'not-to-be-had', packs: null });
    expect(order?.instead.map((one) => one.variety)).toEqual(['Robila']);
  });

  test('own saved seed needs nobody’s leave and is used first (edge 38)', () => {
    const own = lot({
      lot: 'own-2026',
      seeds: 500_000,
      germinationShare: 0.9,
      testedOn: asDay('2027-02-01'),
      status: 'own',
    });
    expect(carrots({ ...offers([{}]), seedLots: [own] })).toMatchObject({
      right: 'nothing-to-buy',
      packs: null,
      buySeeds: 0,
    });
  });

  test('a lot is given to one order only, though two varieties would take it', () => {
    const two = {
      ...base,
      stands: [
        ...base.stands.slice(0, 1),
        stand('b', 'carrot-maincrop', ['2027-05-01', '2027-08-30'], { id: 'd', variety: 'Nantes' }),
      ],
    };
    const orders = seedOrders({ ...two, seedLots: [lot({ variety: null, seeds: 1000 })] }, planOf(two)).orders;
    expect(orders.flatMap((one) => one.inHand.map((used) => used.lot))).toEqual(['lot-1']);
  });

  test.each([
    ['England', 'authorisation'],
    ['EU', 'derogation'],
    ['USA', 'documented search'],
  ])('in %s the word is %s', (jurisdiction, term) => {
    const there = { ...base, about: { ...base.about, place: { ...base.about.place, jurisdiction } } };
    expect(seedOrders(there, planOf(there)).term).toBe(term);
  });
});

describe('seed added up', () => {
  function sameEachWay(farm: FarmOf): void {
    const plan = planOf(farm, sampleToday);
    const { lines, orders } = seedOrders(farm, plan);
    const total = lines.reduce((sum, line) => sum + (line.massKg ?? 0), 0);
    const at = { work: plan.work, hands: assignHands(plan.work, farm) };
    for (const by of seedBy)
      expect(
        [...seedAddedUpKg(lines, by, at).values()].reduce((sum, kg) => sum + kg, 0),
        by,
      ).toBeCloseTo(total, 6);
    expect(orders.reduce((sum, order) => sum + (order.needKg ?? 0), 0)).toBeCloseTo(total, 6);
    expect(orderSheet({ year: 2027, term: 'derogation', lines, orders })).toHaveLength(orders.length);
  }
  test('by crop, week, person and course is the same mass on the sample farm', () => sameEachWay(sampleFarm()));
  test('and on any farm', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), (seed) =>
        sameEachWay(randomFarm({ seed, plots: 2, years: 3, crops: 16, firstYear: 2026 })),
      ),
      { numRuns: 5 },
    );
  });
});
