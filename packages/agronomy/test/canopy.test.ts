import {
  canopyChoice,
  canopyCurve,
  climate,
  dailyNormals,
  emergence,
  groundCover,
  reference,
  stages,
  thermal,
  weather,
} from '@leywright/agronomy';
import { asDay, dayInYear, dayNumber } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const ids = [...reference.crops.keys(), ...reference.covers.keys()];
const normals = dailyNormals.dailyNormals(climate.climateNear(52.25, 0.1).station);
const series = weather.weatherFor({ from: asDay('2027-01-01'), to: asDay('2036-12-31') }, [], normals);

describe('a canopy', () => {
  test('is there for each of the 75 crops and 30 covers, and says what it rests on', () => {
    const bases = ids.map((id) => canopyChoice.canopyFor(id).basis);
    expect(bases).toHaveLength(105);
    expect(canopyChoice.canopyFor('potato-maincrop')).toMatchObject({
      basis: 'published',
      from: 'potato',
      checkDays: 0,
    });
    expect(canopyChoice.canopyFor('cabbage-autumn')).toMatchObject({ basis: 'common-practice', checkDays: 7 });
    expect(canopyChoice.canopyFor('jerusalem-artichoke')).toMatchObject({ basis: 'derived', from: 'stages of potato' });
    expect(canopyChoice.canopyFor('grazing-rye')).toMatchObject({
      from: 'covers: grazing-rye',
      curve: { baseC: 1, tFullCd: 320 },
    });
    expect(() => canopyChoice.canopyFor('carot')).toThrow(/neither a crop nor a cover/);
  });

  test.each(ids)(
    'of %s rises to 98 %% of its greatest at full cover, stays within bounds and does not fall before its decline',
    (id) => {
      const { curve } = canopyChoice.canopyFor(id);
      expect(canopyCurve.canopyCover({ ...curve, declineFromCd: null }, curve.tFullCd)).toBeCloseTo(
        0.98 * curve.fullCoverShare,
        9,
      );
      let before = 0;
      for (let t = 0; t <= 3 * curve.tFullCd; t += 5) {
        const cover = canopyCurve.canopyCover(curve, t);
        expect(cover).toBeGreaterThanOrEqual(0);
        expect(cover).toBeLessThanOrEqual(curve.fullCoverShare);
        if (curve.declineFromCd === null || t <= curve.declineFromCd) expect(cover).toBeGreaterThanOrEqual(before);
        before = cover;
      }
      if (curve.declineFromCd !== null && curve.declineOverCd !== null) {
        expect(curve.declineFromCd).toBeGreaterThan(curve.tFullCd);
        expect(canopyCurve.canopyCover(curve, curve.declineFromCd + curve.declineOverCd)).toBeCloseTo(0, 9);
      }
    },
  );

  test('of potatoes is full at 785-947 °C d above 2 °C, as published cultivar files have it', () => {
    expect(canopyChoice.canopyFor('potato-maincrop').curve.tFullCd).toBeGreaterThanOrEqual(785);
    expect(canopyChoice.canopyFor('potato-maincrop').curve.tFullCd).toBeLessThanOrEqual(947);
  });

  test('taken from stages covers a tenth of the ground at the end of the initial stage (FAO-56 mark)', () => {
    const sums = stages.stagesOfCrop('jerusalem-artichoke');
    const { curve } = canopyChoice.canopyFor('jerusalem-artichoke');
    expect(canopyCurve.canopyCover(curve, sums?.initialCd ?? 0)).toBeCloseTo(0.1, 6);
  });

  test('turned round, gives the thermal time of a cover', () => {
    fc.assert(
      fc.property(fc.constantFrom(...ids), fc.double({ min: 0.05, max: 0.95, noNaN: true }), (id, share) => {
        const { curve } = canopyChoice.canopyFor(id);
        const wanted = curve.startCoverShare + share * (curve.fullCoverShare - curve.startCoverShare);
        const t = canopyCurve.thermalTimeAtCover({ ...curve, declineFromCd: null }, wanted);
        expect(canopyCurve.canopyCover({ ...curve, declineFromCd: null }, t ?? Number.NaN)).toBeCloseTo(wanted, 9);
      }),
    );
  });
});

describe('cover day by day', () => {
  const firstDay = series.startDayNumber;
  const write = (id: string, span: Parameters<typeof canopyCurve.writeCover>[2]['span']) => {
    const { curve } = canopyChoice.canopyFor(id);
    const sums = thermal.thermalSums(series, { baseC: curve.baseC });
    const cover = new Float64Array(series.dayCount);
    canopyCurve.writeCover(cover, firstDay, { curve, sums, span });
    return { cover, curve, sums };
  };

  test('is that of the curve at the day’s thermal time, and nought outside the stand’s days', () => {
    const span = { startDayNumber: dayNumber(asDay('2028-05-10')), endDayNumber: dayNumber(asDay('2028-09-20')) };
    for (const id of ['potato-maincrop', 'carrot-maincrop', 'grazing-rye']) {
      const { cover, curve, sums } = write(id, span);
      for (let day = firstDay; day < firstDay + series.dayCount; day++) {
        const inside = day >= span.startDayNumber && day < span.endDayNumber;
        expect(cover[day - firstDay]).toBeCloseTo(
          inside ? canopyCurve.canopyCover(curve, thermal.thermalTimeBetween(sums, span.startDayNumber, day)) : 0,
          9,
        );
      }
    }
  });

  test('of transplants stands still through their check', () => {
    const start = dayNumber(asDay('2028-06-01'));
    const { cover, curve } = write('cabbage-autumn', { startDayNumber: start, endDayNumber: start + 60, checkDays: 7 });
    for (let at = 0; at <= 7; at++) expect(cover[start - firstDay + at]).toBeCloseTo(curve.startCoverShare, 9);
    expect(cover[start - firstDay + 9]).toBeGreaterThan(curve.startCoverShare);
  });

  test('of a mown ley falls to two fifths at each cut and grows back; a cut of what is lower changes nothing', () => {
    const start = dayNumber(asDay('2028-04-15'));
    const cuts = ['2028-07-15', '2028-09-01'].map((day) => dayNumber(asDay(day)));
    const { cover } = write('mix-ley-clover-grass', {
      startDayNumber: start,
      endDayNumber: start + 400,
      mownOnDays: cuts,
    });
    for (const cut of cuts) {
      expect(cover[cut - firstDay - 1]).toBeGreaterThan(0.6);
      expect(cover[cut - firstDay]).toBeCloseTo(canopyCurve.leftByMowingShare, 6);
      expect(cover[cut - firstDay + 30]).toBeGreaterThan(0.6);
    }
    const unmown = write('mix-ley-clover-grass', { startDayNumber: start, endDayNumber: start + 400 }).cover;
    const mownAtOnce = write('mix-ley-clover-grass', {
      startDayNumber: start,
      endDayNumber: start + 400,
      mownOnDays: [start + 3],
    }).cover;
    expect(mownAtOnce).toEqual(unmown);
  });

  describe('of covers sown before winter, with short days counting three tenths (Cambridge normals)', () => {
    const coverAtNewYear = (id: string, sown: number) => {
      const emerges = emergence.emergenceOfCover(id);
      const up =
        thermal.dayWhenReached(thermal.thermalSums(series, { baseC: emerges.baseC }), sown, emerges.sumCd) ?? sown;
      const { curve } = canopyChoice.canopyFor(id);
      const sums = thermal.thermalSums(series, {
        baseC: curve.baseC,
        restInShortDaysLatDeg: 52,
        shortDayShare: thermal.hardyShortDayShare,
      });
      return canopyCurve.canopyCover(curve, thermal.thermalTimeBetween(sums, up, dayNumber(asDay('2028-12-31'))));
    };
    const lastSowings = [...reference.covers.values()].flatMap((cover) =>
      cover.latestWinterCoverSow === null
        ? []
        : [[cover.id, dayNumber(dayInYear(cover.latestWinterCoverSow, 2028))] as const],
    );

    // Winter beans are sown late for the spring: they do not cover before it, and the table does not say they do.
    test.each(lastSowings.filter(([id]) => id !== 'field-bean'))(
      '%s on its last useful day of the table protects the ground by the new year',
      (id, sown) => {
        expect(coverAtNewYear(id, sown)).toBeGreaterThan(groundCover.coverThresholds.protectedFrom);
      },
    );

    test.each(['grazing-rye', 'winter-vetch', 'mix-rye-vetch'])('%s four weeks later does not', (id) => {
      const sown = lastSowings.find(([one]) => one === id)?.[1] ?? 0;
      expect(coverAtNewYear(id, sown + 28)).toBeLessThan(groundCover.coverThresholds.protectedFrom);
    });
  });

  test('of ten years on fourteen plots is written in a few milliseconds', () => {
    const { curve } = canopyChoice.canopyFor('grazing-rye');
    const sums = thermal.thermalSums(series, { baseC: curve.baseC });
    const cover = new Float64Array(series.dayCount);
    const began = performance.now();
    for (let plot = 0; plot < 14; plot++)
      for (let year = 0; year < 10; year++) {
        canopyCurve.writeCover(cover.subarray(year * 365, year * 365 + 365), firstDay + year * 365, {
          curve,
          sums,
          span: { startDayNumber: firstDay + year * 365, endDayNumber: firstDay + year * 365 + 365 },
        });
      }
    // Measured 3 ms; twenty times that on a busy machine is still no frame lost twice.
    expect(performance.now() - began).toBeLessThan(100);
  });
});

describe('what covers the ground together', () => {
  test('is never less than the best of them nor more than all of it', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 5 }), (covers) => {
        const together = groundCover.combinedCover(covers);
        expect(together).toBeGreaterThanOrEqual(Math.max(...covers) - 1e-12);
        expect(together).toBeLessThanOrEqual(1);
      }),
    );
    expect(groundCover.combinedCover([])).toBe(0);
    expect(groundCover.combinedCover([0.5, 0.5])).toBe(0.75);
  });

  test('has its words: bare under a tenth, protected from three tenths, full from eight', () => {
    expect([0, 0.0999, 0.1, 0.3, 0.8, 1].map(groundCover.coverState)).toEqual([
      'bare',
      'bare',
      'partly-covered',
      'protected',
      'full',
      'full',
    ]);
  });

  test('residue covers more the more there is, and none covers nothing', () => {
    expect(groundCover.residueCover(0)).toBe(0);
    expect(groundCover.residueCover(2)).toBeGreaterThan(groundCover.residueCover(1));
    expect(groundCover.residueCover(-1)).toBe(0);
  });
});
