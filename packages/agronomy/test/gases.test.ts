import { nitrogenModels } from '@leywright/agronomy';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const { ammonia, denitrification, fixationFall } = nitrogenModels;

describe('nitrogen to and from the air', () => {
  test('drained ground loses next to nothing, full pores the whole potential (Hénault & Germon 2000)', () => {
    const lost = (filledPoreShare: number) =>
      denitrification.denitrifiedKgHa(1e9, { filledPoreShare, soilC: 20 }, denitrification.potentialKgHaDay.typ);
    expect(lost(0.6)).toBe(0);
    expect(lost(1)).toBeCloseTo(1, 6);
    expect(lost(0.8)).toBeGreaterThan(lost(0.7));
  });

  test('the two branches of warmth meet at 11 °C within a thousandth and never leap', () => {
    const factor = denitrification.denitrificationWarmthFactor;
    expect(Math.abs(factor(11 - 1e-9) - factor(11))).toBeLessThan(1e-3);
    expect(factor(60)).toBe(2);
  });

  test('rich mulch carried in thick layers loses most, and the band always runs upward', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 6, noNaN: true }), fc.constantFrom(...ammonia.mulchWays), (nPct, way) => {
        const loss = ammonia.mulchAmmoniaKgHa(100, nPct, way);
        expect(loss.low).toBeLessThanOrEqual(loss.typ);
        expect(loss.typ).toBeLessThanOrEqual(loss.high);
        expect(loss.high).toBeLessThanOrEqual(ammonia.mulchAmmoniaKgHa(100, 4, 'carried').high);
      }),
    );
  });

  test('half of the ammonia has gone after ten days', () => {
    expect((1 - ammonia.ammoniaPerDay) ** 10).toBeCloseTo(0.5, 9);
  });

  test('legumes take less from the air the richer the soil, and never less than nothing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        (n, more) => {
          const [poor, rich] = [fixationFall.shareFromAir(0.8, n), fixationFall.shareFromAir(0.8, n + more)];
          expect(rich).toBeLessThanOrEqual(poor);
          expect(rich).toBeGreaterThanOrEqual(0);
          expect(poor).toBeLessThanOrEqual(0.8);
        },
      ),
    );
    // Common practice: mulching costs a ley 10 to 30 % of it.
    expect(fixationFall.mulchedShareFactor).toBeGreaterThanOrEqual(0.7);
    expect(fixationFall.mulchedShareFactor).toBeLessThanOrEqual(0.9);
  });
});
