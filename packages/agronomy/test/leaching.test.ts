import { nitrogenModels } from '@leywright/agronomy';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const { leaching } = nitrogenModels;

function columnOf(layerCount: number, fieldCapacityMm: number, saturationMm = Number.POSITIVE_INFINITY) {
  const filled = (value: number) => new Float64Array(layerCount).fill(value);
  return {
    waterMm: filled(fieldCapacityMm),
    nitrateKgHa: filled(0),
    fieldCapacityMm: filled(fieldCapacityMm),
    saturationMm: filled(saturationMm),
    belowMm: filled(0),
    belowNKgHa: filled(0),
  };
}

describe('nitrate on its way down', () => {
  test('layers of 1 cm and one event are Burns’ equation (Burns 1975)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        fc.double({ min: 8, max: 45, noNaN: true }),
        fc.integer({ min: 1, max: 120 }),
        (drainageCm, fieldCapacityPct, depthCm) => {
          const column = columnOf(depthCm, fieldCapacityPct / 10);
          column.nitrateKgHa[0] = 1;
          leaching.tipThroughLayers(column, drainageCm * 10, 1);
          const burns = leaching.burnsLeachedShare(drainageCm, fieldCapacityPct, depthCm);
          expect(Math.abs((column.belowNKgHa[depthCm - 1] ?? 0) - burns)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  test('neither water nor nitrate is made or lost, also where the ground drains slowly', () => {
    const events = fc.array(fc.double({ min: 0, max: 80, noNaN: true }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(events, fc.double({ min: 0.1, max: 1, noNaN: true }), (rains, drains) => {
        const column = columnOf(25, 28, 43);
        column.nitrateKgHa.fill(4);
        const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);
        for (const rainMm of rains) {
          const [waterMm, nitrateKgHa] = [sum(column.waterMm), sum(column.nitrateKgHa)];
          leaching.tipThroughLayers(column, rainMm, drains);
          const baseMm = column.belowMm[24] ?? 0;
          expect(Math.abs(waterMm + rainMm - baseMm - sum(column.waterMm))).toBeLessThan(1e-6);
          expect(Math.abs(nitrateKgHa - (column.belowNKgHa[24] ?? 0) - sum(column.nitrateKgHa))).toBeLessThan(1e-6);
          expect(Math.max(...column.waterMm)).toBeLessThanOrEqual(43 + 1e-9);
        }
      }),
    );
  });

  test('nitrate mixed through a depth leaches more than nitrate on the surface', () => {
    expect(leaching.burnsLeachedMixedShare(10, 30, 60)).toBeGreaterThan(leaching.burnsLeachedShare(10, 30, 60));
  });
});
