import type { Farm } from '@leywright/book';
import {
  boxPromise,
  boxSize,
  day,
  farmWith,
  ownCrop,
  plot,
  slot,
  span,
  stand,
  storePlace,
  yearNeed,
} from '@leywright/farm-kit';
import { describe, expect, test } from 'vitest';
import { supplyFindings } from '../../src/shortage/supply-findings.ts';
import { supplyOf } from '../../src/supply/plan-supply.ts';
import { supplyRun } from '../../src/supply/supply-run.ts';
import { inputOf } from '../supply/inputs.ts';

function found(farm: Farm, today = '2026-03-01', year = 2026) {
  const run = supplyRun(inputOf(farm, today, year));
  return supplyFindings(run, farm.promise === null ? null : supplyOf(run));
}

const carrots = (households: number, pieces: Partial<Farm> = {}) =>
  farmWith({
    plots: [plot('A', { grossM2: 4000 })],
    stands: [stand('a', 'carrot-maincrop', ['2026-05-15', '2026-10-20'], { span: span(0, 0.5) })],
    stores: [storePlace('cold', 'cold', ['carrot-maincrop'])],
    promise: boxPromise({
      from: day('2026-10-01'),
      sizes: [boxSize('box', households)],
      slots: [slot('carrot-maincrop', { from: '10-20', to: '02-28', portions: { box: 1 } })],
    }),
    ...pieces,
  });

describe('each fault is found once, with its nearest cause', () => {
  test('a farm with plenty has none', () => {
    expect(found(carrots(100))).toEqual([]);
  });
  test('too little ground is not told again as a short box or an empty store', () => {
    const faults = found(carrots(900));
    expect(faults.map((one) => [one.code, one.gravity])).toEqual([['ground-too-small', 'put-right']]);
    expect(faults[0]?.place).toEqual({ crop: 'carrot-maincrop', year: 2026, plot: 'a' });
    expect(faults[0]?.figures['haveM2']).toBe(2000);
    expect(faults[0]?.mend.map((one) => one.code)).toEqual(['more-ground-on-plot', 'fewer-households']);
    expect(faults[0]?.mend[0]?.figures).toMatchObject({ plot: 'a' });
  });
  test('as few households as the mend says are fed', () => {
    const households = found(carrots(900))[0]?.mend[1]?.figures['households'] as number;
    expect(found(carrots(Math.floor(households * 0.98)))).toEqual([]);
  });
  test('promised and not grown', () => {
    const faults = found(carrots(100, { stands: [] }));
    expect(faults.map((one) => [one.code, one.place.crop, one.place.year])).toEqual([
      ['crop-not-on-ground', 'carrot-maincrop', 2026],
    ]);
  });
  test('no store for what is promised out of one', () => {
    expect(found(carrots(100, { stores: [] })).map((one) => one.code)).toEqual(['no-store-for-crop']);
  });
  test('a store that loses too much runs out, and says when and for how long', () => {
    const lifted = {
      entry: 'e',
      crop: 'carrot-maincrop' as never,
      plot: 'a' as never,
      stand: null,
      on: '2026-10-15' as never,
      grossKg: 1200,
      count: null,
      unit: 'kg' as const,
      gradedOutShare: 0,
      into: 'store' as const,
      store: null,
    };
    const faults = found(carrots(100, { harvests: [lifted] }), '2026-10-25');
    expect(faults.map((one) => one.code)).toEqual(['store-runs-out']);
    expect(faults[0]?.figures['lastFullWeek']).toMatch(/^2026-w5|^2027-w0/);
    expect(faults[0]?.figures['gapWeeks']).toBeGreaterThan(3);
    expect(faults[0]?.mend.map((one) => one.code)).toEqual(['store-more', 'end-place-earlier', 'smaller-portion']);
  });
  test('a store too small for what is lifted', () => {
    const faults = found(carrots(100, { stores: [storePlace('cold', 'cold', ['carrot-maincrop'], 2000)] }));
    expect(faults.map((one) => [one.code, one.place.store])).toEqual([['store-over-full', 'cold']]);
  });
  test('a gap between two sowings is one finding for its run of weeks', () => {
    const lettuces = ['2026-04-10', '2026-07-20'].map((from) =>
      stand('a', 'lettuce-head', [from, `2026-${from === '2026-04-10' ? '07-01' : '10-15'}`], {
        id: from,
        plantedOn: from,
      }),
    );
    const farm = farmWith({
      plots: [plot('A', { grossM2: 4000 })],
      stands: lettuces,
      promise: boxPromise({
        sizes: [boxSize('box', 60)],
        slots: [slot('lettuce-head', { from: '06-15', to: '08-31', unit: 'head' })],
      }),
    });
    const faults = found(farm).filter((one) => one.code === 'box-short');
    expect(faults.length).toBeLessThanOrEqual(2);
    expect(Math.max(...faults.map((one) => Number(one.figures['weeks'])))).toBeGreaterThan(4);
    expect(faults[0]?.mend.length).toBeGreaterThan(0);
  });
  test('a yield ten times the table’s is asked about, and used all the same', () => {
    const farm = carrots(100, { crops: [ownCrop('carrot-maincrop', { yieldMarketableTHa: 300 })] });
    expect(found(farm).map((one) => [one.code, one.gravity])).toEqual([['yield-implausible', 'look']]);
    expect(supplyOf(supplyRun(inputOf(farm, '2026-03-01', 2026))).needs[0]?.yieldKgM2).toBe(30);
  });
  test('a crop without a yield is said to have none', () => {
    const farm = farmWith({
      crops: [ownCrop('blue-root')],
      promise: boxPromise({ needs: [yearNeed('blue-root', { kgHousehold: 3 })] }),
    });
    expect(found(farm).map((one) => one.code)).toEqual(['no-yield-known']);
  });
  test('weeks that are over are a note, not a fault', () => {
    expect(found(carrots(900), '2027-06-01', 2026).map((one) => one.gravity)).toEqual(['note']);
  });
  test('every finding offers something to do', () => {
    for (const farm of [carrots(900), carrots(100, { stands: [] }), carrots(100, { stores: [] })])
      for (const one of found(farm)) expect(one.mend.length).toBeGreaterThan(0);
  });
});
