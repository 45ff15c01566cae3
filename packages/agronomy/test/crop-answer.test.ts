import { nitrogenModels } from '@leywright/agronomy';
import { describe, expect, test } from 'vitest';

const { critical } = nitrogenModels;

describe('the nitrogen a crop must hold', () => {
  test.each(Object.entries(critical.dilutionCurves))('of %s rises with its mass while its share falls', (_, curve) => {
    for (let mass = 0.2; mass < 15; mass += 0.2) {
      expect(critical.criticalNKgHa(curve, mass + 0.2)).toBeGreaterThan(critical.criticalNKgHa(curve, mass));
      expect(critical.criticalNPct(curve, mass + 0.2)).toBeLessThanOrEqual(critical.criticalNPct(curve, mass) + 1e-9);
    }
  });

  test('a curve moved to a table’s uptake meets it at the final mass and keeps its shape', () => {
    const moved = critical.dilutionFor(critical.dilutionCurves.cabbage, 8, 180);
    expect(critical.criticalNKgHa(moved, 8)).toBeCloseTo(180, 9);
    const ratio = (mass: number) =>
      critical.criticalNPct(moved, mass) / critical.criticalNPct(critical.dilutionCurves.cabbage, mass);
    expect(ratio(1)).toBeCloseTo(ratio(6), 9);
  });
});
