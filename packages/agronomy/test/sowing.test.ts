import { areaNeeded, population, reference, seedOrder } from '@leywright/agronomy';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectPrinted } from './expect-printed.ts';

describe('carrots for the winter box: 120 boxes of 1 kg for 20 weeks, worked by hand', () => {
  const demandKg = 120 * 20;
  const kept = areaNeeded.keptFraction([0.03, 0.12, 0.18]);
  const lift = areaNeeded.liftKg(demandKg, kept);
  const areaM2 = areaNeeded.areaForMassM2(lift, 38);
  const rowM = population.rowMetres(areaM2, 3, 1.8);
  const order = seedOrder.seedForRows({
    rowM,
    plantsPerRowM: 40,
    germinationFraction: 0.85,
    fieldFactor: 0.7,
    thousandSeedG: 1.25,
    marginFraction: 0.1,
    packSeeds: 100_000,
  });

  test('losses chain by division: 3428.8 kg to lift from 902.3 m2', () => {
    expect(kept).toBeCloseTo(0.97 * 0.88 * 0.82, 12);
    expectPrinted(lift, '3428.8');
    expectPrinted(areaM2, '902.3');
    expectPrinted(rowM, '1503.9');
  });

  test('101 100 seeds within half a per cent, 0.126 kg, two packs', () => {
    expectPrinted(order.seedsPerRowM, '67.23');
    expect(Math.abs(order.seeds / 101_100 - 1)).toBeLessThan(0.005);
    expectPrinted(order.seedKg, '0.126');
    expect(order.packs).toBe(2);
  });
});

describe('ground and demand', () => {
  test('an area feeds exactly the demand that asks for it, by mass and by count', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.double({ min: 1, max: 80, noNaN: true }),
        (massKg, yieldTHa) => {
          expect(areaNeeded.massFromAreaKg(areaNeeded.areaForMassM2(massKg, yieldTHa), yieldTHa) / massKg).toBeCloseTo(
            1,
            12,
          );
          expect(
            areaNeeded.unitsFromArea(areaNeeded.areaForUnitsM2(massKg, 50_000, 0.8), 50_000, 0.8) / massKg,
          ).toBeCloseTo(1, 12);
        },
      ),
    );
  });

  test('crops sold by count give the same mass by stations and share cut as by yield, for every row of the table', () => {
    for (const crop of reference.crops.values()) {
      if (crop.unitsPerStationTyp === null) continue;
      const exact = (crop.yieldTypTHa * 1000) / (crop.unitKg * crop.stationsPerHaTyp);
      // Printed to two decimals.
      expect(Math.abs(crop.unitsPerStationTyp - exact), crop.id).toBeLessThanOrEqual(0.0051);
    }
  });

  test('no share can be lost whole, and nothing comes up of dead seed', () => {
    expect(() => areaNeeded.keptFraction([1])).toThrow(/lost share/);
    expect(() => areaNeeded.keptFraction([-0.1])).toThrow(/lost share/);
    expect(() => seedOrder.seedsPerPlant(0, 0.7)).toThrow(/share of seeds/);
  });

  test('packs bought hold the seed with its margin, and not a pack more than needed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e7, noNaN: true }),
        fc.integer({ min: 10, max: 250_000 }),
        (seeds, packSeeds) => {
          const { packs, seedsWithMargin } = seedOrder.orderOf(seeds, {
            thousandSeedG: 1,
            marginFraction: 0.1,
            packSeeds,
          });
          expect((packs ?? 0) * packSeeds).toBeGreaterThanOrEqual(seedsWithMargin - packSeeds * 1e-4 - 1e-6);
          expect(((packs ?? 0) - 1) * packSeeds).toBeLessThan(seedsWithMargin);
        },
      ),
    );
    expect(seedOrder.orderOf(100_000, { thousandSeedG: 1, marginFraction: 0, packSeeds: null }).packs).toBeNull();
  });
});
