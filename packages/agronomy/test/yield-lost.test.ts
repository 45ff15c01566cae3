import { soilAccount } from '@leywright/agronomy';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const { waterLossShare, nitrogenLossShare } = soilAccount.cropAnswer;
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('yield lost by want of water and of nitrogen', () => {
  test('has the form of FAO 33: loss is the response factor times the want (Doorenbos & Kassam 1979)', () => {
    expect(waterLossShare(240, 300, 1.1).typ).toBeCloseTo(1.1 * 0.2, 12);
  });

  test('is nothing where nothing was wanting', () => {
    expect(waterLossShare(300, 300, 1.1)).toEqual({ low: 0, typ: 0, high: 0 });
    expect(nitrogenLossShare(150, 150)).toEqual({ low: 0, typ: 0, high: 0 });
  });

  test('never falls as the want grows, and lies between none and all', () => {
    fc.assert(
      fc.property(share, share, fc.constantFrom(null, 0.9, 1.25), (one, other, factor) => {
        const [more, less] = one < other ? [one, other] : [other, one];
        for (const of of [
          (got: number) => waterLossShare(got, 1, factor),
          (got: number) => nitrogenLossShare(got, 1),
        ]) {
          const [worse, better] = [of(more), of(less)];
          expect(worse.typ).toBeGreaterThanOrEqual(better.typ);
          expect(worse.low).toBeGreaterThanOrEqual(0);
          expect(worse.low).toBeLessThanOrEqual(worse.typ);
          expect(worse.typ).toBeLessThanOrEqual(worse.high);
          expect(worse.high).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  test('both wants together cost less than their sum and no less than either', () => {
    const [water, nitrogen] = [waterLossShare(200, 300, 1), nitrogenLossShare(80, 120)];
    const both = soilAccount.cropAnswer.cropAnswer(water, nitrogen);
    expect(both.typ).toBeLessThan(water.typ + nitrogen.typ);
    expect(both.typ).toBeGreaterThanOrEqual(Math.max(water.typ, nitrogen.typ));
  });
});
