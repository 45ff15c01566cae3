import { nitrogenModels } from '@leywright/agronomy';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const { residue, release } = nitrogenModels;
const freedShare = (cnRatio: number, days: number) => {
  const state = residue.residueAfter(1000, { cnRatio, rates: residue.residueRates(cnRatio) }, days);
  return state.mineralNKgHa / (1000 / cnRatio);
};

describe('nitrogen out of residues', () => {
  test('half a warm year frees about two fifths of the nitrogen at C:N 12 and about none at C:N 25 (Nicolardot et al. 2001)', () => {
    expect(freedShare(12, 168)).toBeGreaterThan(0.38);
    expect(freedShare(12, 168)).toBeLessThan(0.45);
    expect(Math.abs(freedShare(25, 168))).toBeLessThan(0.08);
  });

  test('straw-like residue locks up nitrogen for a season and more', () => {
    expect(freedShare(40, 28)).toBeLessThan(-0.5);
    expect(freedShare(40, 365)).toBeLessThan(0);
  });

  test('carbon and nitrogen close every day, whatever the residue and the weather', () => {
    const speeds = fc.array(fc.double({ min: 0, max: 2.4, noNaN: true }), { maxLength: 300 });
    fc.assert(
      fc.property(fc.double({ min: 8, max: 90, noNaN: true }), speeds, (cnRatio, factors) => {
        const rates = residue.residueRates(cnRatio);
        let state = residue.freshResidue(1000);
        for (const factor of factors) {
          state = residue.stepResidue(state, { cnRatio, rates }, factor);
          const carbon = state.residueCKgHa + state.microbeCKgHa + state.humusCKgHa + state.co2CKgHa;
          const nitrogen =
            state.residueCKgHa / cnRatio +
            state.microbeCKgHa / rates.microbeCnRatio +
            state.humusCKgHa / residue.humusCnRatio +
            state.mineralNKgHa;
          expect(Math.abs(carbon - 1000)).toBeLessThan(1e-6);
          expect(Math.abs(nitrogen - 1000 / cnRatio)).toBeLessThan(1e-6);
          expect(
            Math.min(state.residueCKgHa, state.microbeCKgHa, state.humusCKgHa, state.co2CKgHa),
          ).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  test('winter at 5 °C runs at about a third of the speed of 15 °C, frozen ground not at all', () => {
    const winter = release.residueWarmthFactor(5) / release.residueWarmthFactor(15);
    expect(winter).toBeGreaterThan(0.31);
    expect(winter).toBeLessThan(0.38);
    expect([release.residueWarmthFactor(-1), release.humusWarmthFactor(0)]).toEqual([0, 0]);
  });

  test('clay and lime hold humus back', () => {
    expect(release.humusRatePerDay(35, 0)).toBeLessThan(release.humusRatePerDay(10, 0));
    expect(release.humusRatePerDay(20, 10)).toBeLessThan(release.humusRatePerDay(20, 0));
  });
});
