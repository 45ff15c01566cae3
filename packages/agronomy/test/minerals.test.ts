import { minerals, type SoilSample } from '@leywright/agronomy';
import { asDay, intervals } from '@leywright/measures';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectPrinted } from './expect-printed.ts';

const { lime, offtake, oxides, smallNutrients, soilIndex, soilTrend } = minerals;

describe('oxides and elements', () => {
  test('there and back is the same figure', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 1000, noNaN: true }),
        (p, k) => {
          const back = oxides.asElements(oxides.asOxides({ pKgHa: p, kKgHa: k }));
          expect(back.pKgHa).toBeCloseTo(p, 9);
          expect(back.kKgHa).toBeCloseTo(k, 9);
        },
      ),
      { seed: 1 },
    );
  });

  test('the two kinds cannot be handed over for one another', () => {
    const elements = { pKgHa: 10, kKgHa: 50 };
    // @ts-expect-error elements are not oxides
    expect(oxides.addOxides([elements]).p2o5KgHa).toBeNaN();
  });

  test('22 t/ha of potatoes take 22 kg of phosphate and 127.6 kg of potash: 9.6 kg of phosphorus and 105.9 of potassium (worked case C07)', () => {
    const taken = offtake.offtakeKgHa(offtake.offtakeRate('Potato tubers') ?? { p2o5KgT: 0, k2oKgT: 0 }, 22);
    expect(taken).toEqual({ p2o5KgHa: 22, k2oKgHa: 127.6 });
    expectPrinted(oxides.asElements(taken).pKgHa, '9.6');
    expectPrinted(oxides.asElements(taken).kKgHa, '105.9');
    expect(oxides.magnesiumKg(150)).toBeCloseTo(90.45, 2);
  });
});

describe('off-take', () => {
  test('a recalled figure is more doubtful than one that was read', () => {
    const spread = (id: string) => {
      const { k2oKgHa } = offtake.offtakeOfCropKgHa(id, intervals.exactly(20));
      return (k2oKgHa.high - k2oKgHa.low) / k2oKgHa.typ;
    };
    expect(spread('leek-late')).toBeGreaterThan(spread('potato-maincrop'));
    expect(() => offtake.offtakeOfCropKgHa('banana', intervals.exactly(1))).toThrow(/banana/);
  });
});

describe('index of a sample', () => {
  test('more in the sample is never a lower index', () => {
    const order = ['0', '1', '2', '2-', '2+', '3', '4', '5', '6', '7', '8', '9'];
    for (const [nutrient, method] of [
      ['phosphorus', 'olsen'],
      ['potassium', 'ammonium-nitrate'],
      ['magnesium', 'ammonium-nitrate'],
    ] as const) {
      let last = -1;
      for (let mgL = 0; mgL < 4000; mgL += 0.5) {
        const found = soilIndex.soilIndex(nutrient, method, mgL);
        const rank = found.kind === 'index' ? order.indexOf(found.index) : -1;
        expect(rank).toBeGreaterThanOrEqual(last);
        last = rank;
      }
      expect(last).toBe(11);
    }
  });

  test('a figure by another method has no index, and says so', () => {
    expect(soilIndex.soilIndex('phosphorus', 'mehlich-3', 60)).toEqual({
      kind: 'no-index',
      why: 'no-index-for-this-method',
    });
  });

  test('index 2 of phosphorus begins at 16 mg/l and of potassium at 121 (RB209)', () => {
    expect(soilIndex.indexBeginsMgL('phosphorus', '2-')).toBe(16);
    expect(soilIndex.indexBeginsMgL('potassium', '2-')).toBe(121);
    expect(soilIndex.indexBeginsMgL('magnesium', '9')).toBe(1501);
    expect(soilIndex.indexBeginsMgL('magnesium', '2+')).toBeNull();
  });
});

const olsen = (day: string, amountMgL: number) =>
  ({ sampledOn: asDay(day), nutrient: 'phosphorus', method: 'olsen', amountMgL }) as const;

describe('trend of samples', () => {
  test('a straight fall is found again, and its doubt is no less than a sample’s own', () => {
    const samples = [
      olsen('2014-02-01', 30),
      olsen('2018-02-01', 26),
      olsen('2022-02-01', 22),
      olsen('2026-02-01', 18),
    ];
    const [trend] = soilTrend.soilTrends('phosphorus', samples);
    expect(trend?.rests).toBe('line');
    expect(trend?.slopeMgLPerYear?.typ).toBeCloseTo(-1, 2);
    expect(trend?.slopeMgLPerYear?.high).toBeGreaterThan(-0.6);
    expect(trend?.slopeMgLPerYear?.low).toBeLessThan(-1.4);
  });

  test('samples of two methods are two trends, never one (edge 101)', () => {
    const mehlich = { ...olsen('2024-02-01', 70), method: 'mehlich-3' as const };
    const trends = soilTrend.soilTrends('phosphorus', [olsen('2020-02-01', 25), mehlich, olsen('2016-02-01', 28)]);
    expect(trends.map(({ method, samples, rests }) => [method, samples.length, rests])).toEqual([
      ['olsen', 2, 'two-samples'],
      ['mehlich-3', 1, 'one-sample'],
    ]);
    expect(trends[1]?.slopeMgLPerYear).toBeNull();
  });

  test('a figure turned to another method names its equation and makes the line more doubtful (edge 101)', () => {
    const conversion = {
      nutrient: 'phosphorus',
      from: 'mehlich-3',
      to: 'olsen',
      slopeRatio: 0.5,
      interceptMgL: -5,
      errorMgL: 9,
      source: 'an equation made up for this test',
    } as const;
    const mehlich = { ...olsen('2024-02-01', 70), method: 'mehlich-3' as const };
    const turned = soilTrend.turnedSample(mehlich, conversion);
    expect(turned).toMatchObject({ method: 'olsen', amountMgL: 30, turnedFrom: { method: 'mehlich-3', errorMgL: 9 } });
    expect(soilTrend.turnedSample(olsen('2024-02-01', 70), conversion)).toBeNull();
    expect(soilTrend.turnedSample(mehlich, { ...conversion, source: ' ' })).toBeNull();
    const width = (last: SoilSample) => {
      const slope = soilTrend.soilTrends('phosphorus', [olsen('2016-02-01', 30), last])[0]?.slopeMgLPerYear;
      return (slope?.high ?? 0) - (slope?.low ?? 0);
    };
    expect(turned === null ? 0 : width(turned)).toBeGreaterThan(width(olsen('2024-02-01', 30)));
  });

  test('two samples on one day make no trend', () => {
    const [trend] = soilTrend.soilTrends('phosphorus', [olsen('2020-02-01', 25), olsen('2020-02-01', 29)]);
    expect(trend?.slopeMgLPerYear).toBeNull();
  });
});

describe('run-down', () => {
  test('phosphorus falls from 22 to 16 mg/l in 12.0 years at -4.0 kg/ha, potassium from 165 to 121 in 8.2 (worked case C07)', () => {
    const years = (now: number, target: number, balance: number, moves: number) =>
      soilTrend.runDownYears(
        now,
        target,
        soilTrend.slopeFromBalanceMgLPerYear(intervals.exactly(balance), intervals.exactly(moves)),
      ).likelyYears;
    expectPrinted(years(22, 16, -16.78 / 4.2, 8) ?? 0, '12.0');
    expectPrinted(years(165, 121, -134.67 / 4.2, 6) ?? 0, '8.2');
  });

  test('a balance that may be either side of nought may never run down, and says so with null (edge 102)', () => {
    const slope = soilTrend.slopeFromBalanceMgLPerYear(intervals.interval(-10, -4, 2), soilTrend.kgPerMgL.phosphorus);
    const down = soilTrend.runDownYears(22, 16, slope);
    expect(down.latestYears).toBeNull();
    expect(down.soonestYears ?? 0).toBeLessThan(down.likelyYears ?? 0);
    expect(soilTrend.runDownYears(15, 16, slope)).toEqual({ soonestYears: 0, likelyYears: 0, latestYears: 0 });
  });
});

describe('lime', () => {
  test('is never negative, and more acid ground never needs less', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 4, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (ph, more) => {
          const need = (at: number) => lime.limeNeedTHa({ ph: at, targetPh: 6.7, factorTPh: 7 });
          expect(need(ph)).toBeGreaterThanOrEqual(0);
          expect(need(ph - more)).toBeGreaterThanOrEqual(need(ph));
        },
      ),
      { seed: 3 },
    );
  });

  test('its doubt is that of a pH of ± 0.2', () => {
    const need = lime.limeNeedWithDoubtTHa({ ph: 6, targetPh: 6.7, factorTPh: lime.limeFactorTPh['clay-loam'].arable });
    expect([need.low, need.typ, need.high].map((t) => Number(t.toFixed(2)))).toEqual([4, 5.6, 7.2]);
  });

  test('speaks up before potatoes, over pH 7 without clubroot, for a great dressing and an old sample, and for nothing when none is due', () => {
    const dressing = {
      amountTHa: 11,
      targetPh: 7.2,
      onStandingGrass: true,
      nextGroups: ['potato', 'brassica'],
      clubrootRecorded: false,
      sampleAgeYears: 6,
    };
    expect(lime.limeCautionsOf(dressing)).toEqual([...lime.limeCautions]);
    expect(lime.limeCautionsOf({ ...dressing, amountTHa: 0 })).toEqual([]);
    expect(lime.limeCautionsOf({ ...dressing, clubrootRecorded: true })).not.toContain('above-7-without-clubroot');
  });

  test('a pH left alone falls, faster or slower', () => {
    const later = lime.phAfterYears(6.5, 5);
    expect(later.high).toBeLessThan(6.5);
    expect(later.low).toBeCloseTo(5.75, 9);
  });
});

describe('small nutrients', () => {
  const ground = {
    cropId: 'beetroot-maincrop',
    ph: 6.8,
    lightOrShallow: true,
    peaty: false,
    boronMgL: null,
    magnesiumIndex: null,
  };

  test('beet on limed sand is warned of boron, and a good analysis silences it (recalled: 0.8 mg/l)', () => {
    expect(smallNutrients.smallNutrientRisksOf(ground)).toContain('boron');
    expect(smallNutrients.smallNutrientRisksOf({ ...ground, boronMgL: 1.1 })).not.toContain('boron');
    expect(smallNutrients.smallNutrientRisksOf({ ...ground, boronMgL: 0.5, ph: 6, lightOrShallow: false })).toContain(
      'boron',
    );
  });

  test.each(['beetroot-bunching', 'swede', 'celeriac'])('%s is among the crops that lack boron first', (cropId) => {
    expect(smallNutrients.smallNutrientRisksOf({ ...ground, cropId })).toContain('boron');
  });

  test('carrots are warned of nothing, and an unmeasured pH alone warns of nothing', () => {
    expect(smallNutrients.smallNutrientRisksOf({ ...ground, cropId: 'carrot-maincrop' })).toEqual([]);
    expect(smallNutrients.smallNutrientRisksOf({ ...ground, ph: null })).toEqual([]);
  });

  test('potatoes at magnesium index 1 and cauliflower on acid ground are warned of', () => {
    expect(smallNutrients.smallNutrientRisksOf({ ...ground, cropId: 'potato-maincrop', magnesiumIndex: '1' })).toEqual([
      'magnesium',
    ]);
    expect(smallNutrients.smallNutrientRisksOf({ ...ground, cropId: 'cauliflower-summer', ph: 5.6 })).toContain(
      'molybdenum',
    );
  });
});
