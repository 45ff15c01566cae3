import type { Farm, Stand } from '@leywright/book';
import { cover, day, farmWith, plot, span, stand } from '@leywright/farm-kit';
import { describe, expect, test } from 'vitest';
import { planFarm } from '../../src/index.ts';

const today = day('2027-01-14');
const yearOf = (stands: readonly Stand[], year: number, rest: Partial<Farm> = {}) =>
  planFarm(farmWith({ plots: [plot('A')], stands, ...rest }), { today }).nitrogen.find((one) => one.year === year);

describe('nitrogen of a year', () => {
  test('the balance is in - off-take - lost: low inputs with high losses, high inputs with low losses', () => {
    const one = yearOf([stand('a', 'cabbage-autumn', ['2027-06-10', '2027-11-01'])], 2027);
    expect(one?.leftKgHa.low).toBeCloseTo(
      (one?.fixedKgHa.low ?? 0) +
        (one?.otherInKgHa.low ?? 0) -
        (one?.offtakeKgHa.high ?? 0) -
        (one?.lostKgHa.high ?? 0),
      9,
    );
    expect(one?.leftKgHa.high).toBeCloseTo(
      (one?.fixedKgHa.high ?? 0) +
        (one?.otherInKgHa.high ?? 0) -
        (one?.offtakeKgHa.low ?? 0) -
        (one?.lostKgHa.low ?? 0),
      9,
    );
  });

  test('a ley’s second, whole year fixes what covers.csv says for it: 240-420 kg/ha in the stand, 55-75 % from the air', () => {
    const one = yearOf([cover('a', 'mix-ley-clover-grass', ['2026-04-10', '2028-06-01'], { kind: 'ley' })], 2027);
    expect(one?.fixedKgHa.low).toBeCloseTo(240 * 0.55, 6);
    expect(one?.fixedKgHa.high).toBeCloseTo(420 * 0.75, 6);
    expect(one?.offtakeKgHa).toEqual({ low: 0, high: 0 });
  });

  test('turned in in spring it has fixed a part of that', () => {
    const fixed = (to: string) =>
      yearOf([cover('a', 'mix-ley-clover-grass', ['2025-04-10', to], { kind: 'ley' })], 2027)?.fixedKgHa.high ?? 0;
    expect(fixed('2027-04-10')).toBeLessThan(0.15 * fixed('2028-01-10'));
    expect(fixed('2027-06-10')).toBeLessThan(fixed('2027-08-10'));
  });

  test('half of it that took fixes half, on half the plot a quarter', () => {
    const ley = (establishedShare: number, to = 1) =>
      yearOf(
        [
          cover('a', 'mix-ley-clover-grass', ['2026-04-10', '2028-06-01'], {
            kind: 'ley',
            establishedShare,
            span: span(0, to),
          }),
        ],
        2027,
      )?.fixedKgHa.high ?? 0;
    expect(ley(0.5)).toBeCloseTo(ley(1) / 2, 9);
    expect(ley(0.5, 0.5)).toBeCloseTo(ley(1) / 4, 9);
  });

  test('kilos recorded replace the yield expected: 20 t/ha of cabbage at 2.2 to 3.5 kg/t would carry off what they carry', () => {
    const cabbage = stand('a', 'cabbage-autumn', ['2026-06-10', '2026-11-01'], { id: 'c', state: 'recorded' });
    const harvest = {
      entry: 'e',
      crop: 'cabbage-autumn' as never,
      plot: 'a' as never,
      stand: 'c',
      on: day('2026-10-20'),
      grossKg: 20_000,
      count: null,
      unit: 'kg' as const,
      gradedOutShare: 0,
      into: 'box' as const,
      store: null,
    };
    const expected = yearOf([cabbage], 2026);
    const recorded = yearOf([cabbage], 2026, { harvests: [harvest] });
    expect(expected?.doubt).toContain('yields-expected');
    expect(recorded?.doubt).not.toContain('yields-expected');
    expect((recorded?.offtakeKgHa.high ?? 0) - (recorded?.offtakeKgHa.low ?? 0)).toBeLessThan(
      (expected?.offtakeKgHa.high ?? 0) - (expected?.offtakeKgHa.low ?? 0),
    );
  });

  test('a winter bare loses more than a winter under rye', () => {
    const carrots = stand('a', 'carrot-maincrop', ['2026-05-10', '2026-09-20'], { state: 'recorded' });
    const onions = stand('a', 'onion-set', ['2027-03-20', '2027-08-20']);
    const lost = (stands: readonly Stand[]) => yearOf(stands, 2026)?.lostKgHa ?? { low: 0, high: 0 };
    const [bare, rye] = [
      lost([carrots, onions]),
      lost([carrots, cover('a', 'grazing-rye', ['2026-09-22', '2027-02-20']), onions]),
    ];
    expect(bare.low).toBeGreaterThan(rye.low);
    expect(bare.high).toBeGreaterThan(rye.high);
  });

  test('a year about which nothing is known has no balance', () => {
    expect(yearOf([stand('a', 'swede', ['2027-05-10', '2027-11-01'])], 2024)).toBeUndefined();
  });

  test('a plot cropped without legumes draws down, and the finding says by how much', () => {
    const finding = planFarm(
      farmWith({ plots: [plot('A')], stands: [stand('a', 'cabbage-storage-white', ['2027-05-20', '2027-11-20'])] }),
      { today },
    ).findings.find((one) => one.code === 'nitrogen-drawn-down');
    expect(finding).toMatchObject({ gravity: 'look', place: { plot: 'a', year: 2027 }, why: 'nitrogen/a/2027' });
    expect(finding?.figures['highKgHa']).toBeLessThan(0);
  });
});
