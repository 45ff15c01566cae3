import { emergence, reference, stages } from '@leywright/agronomy';
import { describe, expect, test } from 'vitest';

describe('stages of a crop', () => {
  test('of every crop with a thermal time run upward and say what they rest on', () => {
    const without: string[] = [];
    for (const id of reference.crops.keys()) {
      const sums = stages.stagesOfCrop(id);
      if (sums === null) without.push(id);
      else
        expect(
          0 < sums.initialCd &&
            sums.initialCd < sums.developmentCd &&
            sums.developmentCd <= sums.midCd &&
            sums.midCd <= sums.lateCd,
          id,
        ).toBe(true);
    }
    expect(without).toEqual(['rhubarb', 'asparagus']);
  });

  test('of maincrop potatoes keep the proportions FAO-56 Table 11 prints (30, 35, 50, 30 days of 145)', () => {
    const sums = stages.stagesOfCrop('potato-maincrop');
    expect(sums).toMatchObject({ total: 'derived', lateCd: 1400 });
    const early = stages.stagesOfCrop('potato-first-early');
    expect(early?.proportions).toBe('published');
    expect((early?.initialCd ?? 0) / (early?.lateCd ?? 1)).toBeCloseTo(30 / 145, 12);
    expect((early?.midCd ?? 0) / (early?.lateCd ?? 1)).toBeCloseTo(115 / 145, 12);
  });

  test('of cabbage are those of the nearest crop with a row, and say whose', () => {
    expect(stages.stagesOfCrop('cabbage-autumn')).toMatchObject({ proportions: 'like', likeCropId: 'radish' });
    expect(stages.stagesOfCrop('pea')).toMatchObject({ total: 'published', baseC: 4.4, lateCd: 797 });
  });

  test('move by a quarter of what one recorded date shows, and nearly all the way after many', () => {
    const sums = stages.stagesOfCrop('carrot-maincrop');
    if (sums === null) throw new Error('carrots have stages');
    const once = stages.rescaleStages(sums, { foundCd: 1200, expectedCd: 1000, dates: 1 });
    expect(once.lateCd / sums.lateCd).toBeCloseTo(1.05, 12);
    expect(stages.rescaleStages(sums, { foundCd: 1200, expectedCd: 1000, dates: 27 }).lateCd / sums.lateCd).toBeCloseTo(
      1.18,
      12,
    );
  });
});

describe('emergence', () => {
  test('of every crop and cover has a sum, or was raised before', () => {
    for (const crop of reference.crops.values()) {
      const sum = emergence.emergenceOfCrop(crop.id, crop.establishment === 'drill');
      if (sum.kind === 'planted')
        expect(['module', 'bare-root', 'set', 'crown'], crop.id).toContain(crop.establishment);
      else expect(sum.sumCd, crop.id).toBeGreaterThan(0);
    }
    for (const id of reference.covers.keys()) expect(emergence.emergenceOfCover(id).sumCd).toBeGreaterThan(0);
  });

  test('warmer soil up to 20 °C never brings a vegetable of the table up later', () => {
    for (const name of emergence.emergenceTableCrops()) {
      let before: number | null = null;
      for (let soilC = 0; soilC <= 20; soilC += 0.5) {
        const days = emergence.emergenceDays(name, soilC);
        if (days !== null && before !== null) expect(days, `${name} at ${soilC}`).toBeLessThanOrEqual(before);
        before = days ?? before;
      }
    }
    expect(emergence.emergenceDays('onion', 12.5)).toBeCloseTo(10, 9);
    expect(emergence.emergenceDays('pepper', 10)).toBeNull();
    expect(emergence.emergenceDays('celery', 30)).toBeNull();
    expect(emergence.emergenceDays('marrow', 15)).toBeNull();
  });
});
