import { bucket, water } from '@leywright/agronomy';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const { availableWater, cropCoefficient, runoff, surface } = water;

describe('celeriac on a borehole, twelve days worked by hand', () => {
  const celeriac = {
    fieldCapacityShare: 0.28,
    wiltingPointShare: 0.14,
    rootDepthM: 0.5,
    depletionFraction: 0.35,
    kc: 1.05,
  };
  const weather = {
    startDepletionMm: 6,
    etoMm: [4.1, 4.6, 5.0, 5.2, 3.8, 4.4, 5.1, 5.4, 5.6, 4.9, 5.0, 4.2],
    rainMm: [0, 0, 0, 0, 9, 0, 0, 0, 0, 0, 0, 2],
  };
  const days = bucket.runBucket(celeriac, weather, { roomForRainMm: 10, applications: 1 });

  test('70 mm is there in all, 24.5 mm comes easily', () => {
    expect(availableWater.totalAvailableMm(0.28, 0.14, 0.5)).toBeCloseTo(70, 9);
    expect(availableWater.readilyAvailableMm(70, 0.35)).toBeCloseTo(24.5, 9);
  });

  test('the depletion at the end of each day is as reckoned by hand', () => {
    const byHand = [10.3, 15.13, 20.38, 25.84, 4.99, 9.61, 14.96, 20.64, 26.52, 31.66, 36.91, 39.32];
    // Printed to the hundredth, each from rounded parts.
    days.forEach((day, at) => {
      expect(Math.abs(day.depletionMm - (byHand[at] ?? 0))).toBeLessThanOrEqual(0.0101);
    });
  });

  test('the fourth evening triggers, 15.84 mm are given the next morning, and the ninth evening triggers again', () => {
    const triggers = days.flatMap((day, at) => (day.triggers ? [at] : []));
    expect([triggers[0], triggers.find((at) => at > 4)]).toEqual([3, 8]);
    expect(days[4]?.irrigationMm).toBeCloseTo(15.845, 6);
    expect(days.filter((day) => day.irrigationMm > 0)).toHaveLength(1);
    expect(days.reduce((sum, day) => sum + day.drainedMm, 0)).toBe(0);
  });

  test('35.65 m³ at 20 m³ in any one day take two days, 1,010 m² a day', () => {
    const drawn = bucket.waterDrawn(15.845, { areaM2: 1800, efficiencyFraction: 0.8, mostM3Day: 20 });
    expect(drawn.volumeM3).toBeCloseTo(35.65, 2);
    expect(drawn.days).toBe(2);
    expect(Math.round(drawn.areaPerDayM2)).toBe(1010);
  });

  test('from the third evening the easy water lasts one more day, and rain puts it off', () => {
    const ahead = { cropDemandMm: [5.46, 3.99], rainMm: [0, 0] };
    expect(bucket.daysUntilStress(20.38, 24.5, ahead)).toBe(1);
    expect(bucket.daysUntilStress(20.38, 24.5, { ...ahead, rainMm: [9, 0] })).toBeNull();
    expect(bucket.daysUntilStress(30, 24.5, ahead)).toBe(0);
  });
});

describe('water always', () => {
  const days = fc.array(
    fc.record({
      rainMm: fc.double({ min: 0, max: 60, noNaN: true }),
      irrigationMm: fc.double({ min: 0, max: 30, noNaN: true }),
      demandMm: fc.double({ min: 0, max: 9, noNaN: true }),
    }),
    { maxLength: 200 },
  );

  test('rain and irrigation in, use and drainage out, and the rest is change: day by day', () => {
    fc.assert(
      fc.property(days, fc.double({ min: 20, max: 200, noNaN: true }), (spell, totalMm) => {
        let depletionMm = totalMm / 2;
        for (const day of spell) {
          const usedMm = Math.min(totalMm - depletionMm, day.demandMm);
          const step = availableWater.stepRootZone(depletionMm, { ...day, usedMm }, totalMm);
          const out = usedMm + step.drainedMm + (depletionMm - step.depletionMm);
          expect(Math.abs(day.rainMm + day.irrigationMm - out)).toBeLessThan(1e-9);
          expect(step.depletionMm).toBeGreaterThanOrEqual(0);
          expect(step.depletionMm).toBeLessThanOrEqual(totalMm + 1e-9);
          depletionMm = step.depletionMm;
        }
      }),
    );
  });

  test('runoff is never more than the rain, none from the first fifth of the storage, more from wet ground', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 150, noNaN: true }),
        fc.double({ min: 40, max: 95, noNaN: true }),
        (rainMm, usual) => {
          const [dry, wet] = [0, 1].map((wetness) => runoff.runoffMm(rainMm, runoff.curveNumberFor(usual, wetness)));
          expect(dry).toBeGreaterThanOrEqual(0);
          expect(wet).toBeGreaterThanOrEqual(dry ?? 0);
          expect(wet).toBeLessThanOrEqual(rainMm);
        },
      ),
    );
    expect(runoff.runoffMm(10, 80)).toBe(0); // a fifth of 62.5 mm
  });

  test('the coefficient curve has no steps and stays between its values', () => {
    const curve = { initialKc: 0.15, midKc: 1.19, endKc: 0.35, stageEndsTotal: [25, 50, 80, 100] as const };
    for (let day = 0; day < 120; day += 0.25) {
      const [now, next] = [day, day + 0.25].map((at) => cropCoefficient.coefficientAt(curve, at));
      expect(Math.abs((next ?? 0) - (now ?? 0))).toBeLessThan(0.011);
      expect(now).toBeGreaterThanOrEqual(0.15);
      expect(now).toBeLessThanOrEqual(1.19);
    }
  });

  test('the surface never dries beyond what can evaporate, and mulch lessens what it gives', () => {
    const limits = { totalMm: 18, readilyMm: 8, greatestKc: 1.2 };
    const dryFor = (openShare: number) => {
      let depletionMm = 0;
      let evaporatedMm = 0;
      for (let day = 0; day < 30; day++) {
        const step = surface.stepSurface(
          depletionMm,
          { etoMm: 5, rainLessRunoffMm: 0, irrigationMm: 0, openShare, basalKcb: 0.15 },
          limits,
        );
        depletionMm = step.depletionMm;
        evaporatedMm += step.ke * 5;
        expect(depletionMm).toBeLessThanOrEqual(18);
      }
      return evaporatedMm;
    };
    expect(dryFor(surface.openWettedShare(0.7, 1))).toBeLessThan(0.4 * dryFor(surface.openWettedShare(0, 1)));
  });
});
