import type { Farm, SoilSample, Stand } from '@leywright/book';
import { cover, day, farmWith, plot, span, stand } from '@leywright/farm-kit';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planFarm, whyOf } from '../../src/index.ts';

const today = day('2027-01-14');
const wish = { today, fromYear: 2027, toYear: 2030 };
const laboratory = 'Olsen P, ammonium nitrate K and Mg';
const sample = (takenOn: string, figures: Partial<SoilSample> = {}): SoilSample => ({
  plot: 'a' as SoilSample['plot'],
  takenOn: day(takenOn),
  method: laboratory,
  ph: null,
  pMgL: null,
  kMgL: null,
  mgMgL: null,
  organicMatterPct: null,
  ...figures,
});
const farmOf = (stands: readonly Stand[], rest: Partial<Farm> = {}, soil: string | null = 'clay loam') =>
  farmWith({ plots: [plot('A', { soil })], stands, ...rest });
const fertility = (farm: Farm) => {
  const found = planFarm(farm, wish).fertility[0];
  if (found === undefined) throw new Error('no plot');
  return found;
};
const potatoes = stand('a', 'potato-maincrop', ['2027-04-20', '2027-09-20'], { yieldTHa: 30 });

describe('phosphate and potash', () => {
  // PDA 2020: 1.0 kg P2O5 and 5.8 kg K2O in a tonne of potatoes; 30 t once in four years is 7.5 and 43.5 kg a year.
  test('leave with what is sold, spread over the years of the plan', () => {
    const { phosphorus, potassium } = fertility(farmOf([potatoes]));
    expect(phosphorus.offtakeOxideKgHa.low).toBeLessThan(7.5);
    expect(phosphorus.offtakeOxideKgHa.high).toBeGreaterThan(7.5);
    expect(whyOf(farmOf([potatoes]), wish, 'phosphate/a')?.value).toBeCloseTo(7.5, 9);
    expect(whyOf(farmOf([potatoes]), wish, 'potash/a')?.value).toBeCloseTo(43.5, 9);
    expect(potassium.offtakeElementKgHa.low).toBeCloseTo(potassium.offtakeOxideKgHa.low * 0.8302, 9);
    expect(phosphorus.offtakeElementKgHa.high).toBeCloseTo(phosphorus.offtakeOxideKgHa.high * 0.4364, 9);
  });

  test('nothing leaves under a ley, and with a crop that failed', () => {
    const ley = cover('a', 'mix-ley-clover-grass', ['2026-04-10', '2030-12-01'], { kind: 'ley' });
    expect(fertility(farmOf([ley])).potassium.offtakeOxideKgHa).toEqual({ low: 0, high: 0 });
    expect(fertility(farmOf([{ ...potatoes, endedBy: 'failed' }])).potassium.offtakeOxideKgHa.high).toBe(0);
  });

  test('half a plot of potatoes takes half as much', () => {
    const half = { ...potatoes, span: span(0, 0.5) };
    expect(fertility(farmOf([half])).potassium.offtakeOxideKgHa.high).toBeCloseTo(
      fertility(farmOf([potatoes])).potassium.offtakeOxideKgHa.high / 2,
      9,
    );
  });

  test('two samples by one method give a slope with its doubt; one gives none and says so', () => {
    const two = [sample('2019-02-01', { kMgL: 200 }), sample('2026-02-01', { kMgL: 165 })];
    const { potassium } = fertility(farmOf([potatoes], { soilSamples: two }));
    expect(potassium.samples.map(({ index }) => index)).toEqual(['2+', '2-']);
    // 35 mg/l in seven years.
    const slope = potassium.slopeSampledMgLPerYear ?? { low: 0, high: 0 };
    expect((slope.low + slope.high) / 2).toBeCloseTo(-5, 1);
    expect(slope.high - slope.low).toBeGreaterThan(5);
    const one = fertility(farmOf([potatoes], { soilSamples: two.slice(1) })).potassium;
    expect(one.slopeSampledMgLPerYear).toBeNull();
    expect(one.doubt).toContain('one-soil-sample');
    expect(fertility(farmOf([potatoes])).potassium.doubt).toContain('no-soil-sample');
  });

  test('samples by another method lie in no line with them', () => {
    const mixed = [
      sample('2015-02-01', { pMgL: 60, method: 'Mehlich 3' }),
      sample('2019-02-01', { pMgL: 24 }),
      sample('2026-02-01', { pMgL: 22 }),
    ];
    const { phosphorus } = fertility(farmOf([potatoes], { soilSamples: mixed }));
    expect(phosphorus.samples).toHaveLength(2);
    expect(phosphorus).toMatchObject({ otherMethods: 1, targetIndex: '3', targetMgL: 26 });
    expect(phosphorus.doubt).toContain('samples-by-other-methods');
    const unknown = fertility(
      farmOf([potatoes], { soilSamples: [sample('2026-02-01', { pMgL: 22, method: 'by eye' })] }),
    );
    expect(unknown.phosphorus.samples[0]?.index).toBeNull();
    expect(unknown.phosphorus.untilTarget).toBeNull();
  });
});

describe('acidity', () => {
  // RB209: (6.7 - 6.2) × 8 t on clay loam = 4 t/ha.
  test('the need is the printed table’s, with the doubt of a pH', () => {
    const { lime } = fertility(farmOf([potatoes], { soilSamples: [sample('2026-02-01', { ph: 6.2 })] }));
    expect(lime?.needTHa?.typ).toBeCloseTo(4, 9);
    expect(lime?.needTHa?.low).toBeCloseTo(2.4, 9);
    expect(lime?.needTHa?.high).toBeCloseTo(5.6, 9);
    expect(lime?.cautions).toContain('not-before-potatoes');
    expect(whyOf(farmOf([], { soilSamples: [sample('2026-02-01', { ph: 6.2 })] }), wish, 'lime/a')?.sum).toContain(
      '× 8',
    );
  });

  test('without a sample nothing is said, without a soil no amount', () => {
    expect(fertility(farmOf([])).lime).toBeNull();
    const unknown = fertility(farmOf([], { soilSamples: [sample('2026-02-01', { ph: 5.5 })] }, null)).lime;
    expect(unknown).toMatchObject({ needTHa: null });
    expect(unknown?.doubt).toContain('soil-not-known');
  });

  test('beetroot on limed sand is warned of for boron, on clay loam not', () => {
    const beet = stand('a', 'beetroot-maincrop', ['2027-05-10', '2027-10-10']);
    const limed = { soilSamples: [sample('2026-02-01', { ph: 6.9 })] };
    expect(fertility(farmOf([beet], limed, 'loamy sand')).cautions.map(({ risk }) => risk)).toContain('boron');
    expect(fertility(farmOf([beet], limed)).cautions).toEqual([]);
  });
});

describe('humus and carbon', () => {
  const ley = cover('a', 'mix-ley-clover-grass', ['2027-04-10', '2030-12-31'], { kind: 'ley' });

  // Ordinance of 2004: ley sown bare in spring 400, each main year 600; potatoes -760.
  test('the index is the ordinance’s figures over the years', () => {
    expect(fertility(farmOf([ley])).humus?.balanceKgCHa).toBeCloseTo((400 + 600 * 3) / 4, 9);
    expect(fertility(farmOf([potatoes])).humus?.balanceKgCHa).toBeCloseTo(-760 / 4, 9);
  });

  test('four years of ley leave more carbon than four of potatoes, and bare ground least', () => {
    const sampled = { soilSamples: [sample('2026-12-01', { organicMatterPct: 4 })] };
    const end = (stands: readonly Stand[]) =>
      fertility(farmOf(stands, sampled)).carbon?.years.at(-1)?.stockTHa.typ ?? 0;
    const crops = [2027, 2028, 2029, 2030].map((year) =>
      stand('a', 'potato-maincrop', [`${year}-04-20`, `${year}-09-20`], { id: `p${year}` as Stand['id'] }),
    );
    expect(end([ley])).toBeGreaterThan(end(crops));
    expect(end(crops)).toBeGreaterThan(end([]));
  });

  test('the stock begins at the sample: 4 % organic matter in 23 cm of 1.3 t/m3 is 69.5 t carbon', () => {
    const { carbon } = fertility(farmOf([ley], { soilSamples: [sample('2026-12-01', { organicMatterPct: 4 })] }));
    expect(carbon?.stockTHa).toBeCloseTo((4 / 1.72) * 1.3 * 23, 9);
    expect(carbon?.years.map(({ year }) => year)).toEqual([2027, 2028, 2029, 2030]);
    for (const { stockTHa } of carbon?.years ?? []) {
      expect(stockTHa.low).toBeLessThanOrEqual(stockTHa.typ);
      expect(stockTHa.typ).toBeLessThanOrEqual(stockTHa.high);
    }
    expect(
      fertility(farmOf([ley], { soilSamples: [sample('2026-12-01', { organicMatterPct: 4 })] }, 'deep peat')).carbon,
    ).toBeNull();
  });
});

test('every figure the plan names opens to the same figure', () => {
  const farm = farmOf([potatoes], {
    soilSamples: [sample('2026-02-01', { ph: 6.2, pMgL: 20, kMgL: 150, organicMatterPct: 4 })],
  });
  const found = fertility(farm);
  const opened = (id: string | undefined) => whyOf(farm, wish, id ?? '');
  expect(opened(found.phosphorus.why)?.low).toBe(found.phosphorus.offtakeOxideKgHa.low);
  expect(opened(found.potassium.why)?.high).toBe(found.potassium.offtakeOxideKgHa.high);
  expect(opened(found.lime?.why)?.value).toBe(found.lime?.needTHa?.typ);
  expect(opened(found.humus?.why)?.value).toBe(found.humus?.balanceKgCHa);
  expect(opened(found.carbon?.why)?.value).toBe(found.carbon?.years.at(-1)?.stockTHa.typ);
});

test('more taken never lowers the off-take, whatever the yields', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }), (a, b) => {
      const high = (yieldTHa: number) => fertility(farmOf([{ ...potatoes, yieldTHa }])).potassium.offtakeOxideKgHa.high;
      const [less, more] = [Math.min(a, b), Math.max(a, b)];
      expect(high(less)).toBeLessThanOrEqual(high(more));
    }),
    { numRuns: 12 },
  );
});
