import { area, decimalSigns, length, mass, money, readNumber } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

describe('areas, masses and lengths', () => {
  test('an acre is 4046.8564224 m2: 160 square rods, 4840 square yards, 43 560 square feet', () => {
    expect(area.toM2(1, 'acre')).toBe(4046.8564224);
    expect(area.toM2(160, 'square-rod')).toBeCloseTo(4046.8564224, 9);
    expect(area.toM2(4840, 'square-yard')).toBeCloseTo(4046.8564224, 9);
    expect(area.toM2(43_560, 'square-foot')).toBeCloseTo(4046.8564224, 9);
    expect(area.toM2(0.42, 'ha')).toBe(4200);
  });

  test('a pound is 0.45359237 kg, 16 ounces; 112 make a hundredweight', () => {
    expect(mass.toKg(1, 'lb')).toBe(0.45359237);
    expect(mass.toKg(16, 'oz')).toBeCloseTo(0.45359237, 12);
    expect(mass.toKg(1, 'cwt')).toBeCloseTo(mass.toKg(112, 'lb'), 12);
    expect(mass.toKg(10, 'lb') / (area.toM2(1, 'acre') / 10_000)).toBeCloseTo(11.2, 1); // red clover, 10 lb an acre
  });

  test('an inch is 25.4 mm, a foot 12 of them', () => {
    expect(length.toM(1, 'inch')).toBe(0.0254);
    expect(length.toM(1, 'foot')).toBeCloseTo(length.toM(12, 'inch'), 12);
  });

  test('there and back in any unit is the same area, mass or length', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (amount) => {
        for (const unit of area.areaUnits)
          expect(area.fromM2(area.toM2(amount, unit), unit) / amount).toBeCloseTo(1, 12);
        for (const unit of mass.massUnits)
          expect(mass.fromKg(mass.toKg(amount, unit), unit) / amount).toBeCloseTo(1, 12);
        for (const unit of length.lengthUnits)
          expect(length.fromM(length.toM(amount, unit), unit) / amount).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('a number as people write it', () => {
  test.each([
    ['1.5', 1.5],
    ['1,5', 1.5],
    ['0,42', 0.42],
    ['1.234', 1.234],
    ['1.234,5', 1234.5],
    ['1,234.5', 1234.5],
    ['1.234.567', 1_234_567],
    ['1,234,567', 1_234_567],
    ['12 345,6', 12_345.6],
    ['12’345.6', 12_345.6],
    ['−3', -3],
    [' 7 ', 7],
    ['.5', 0.5],
    [',5', 0.5],
    ['0,123', 0.123],
    ['1234,567', 1234.567],
    ['1e-7', 1e-7],
    ['5.', 5],
  ])('%s is %d', (text, value) => {
    expect(readNumber(text)).toEqual({ kind: 'number', value });
  });

  test('1,234 is refused with both readings unless the file says which sign it uses', () => {
    expect(readNumber('1,234')).toEqual({ kind: 'ambiguous', readings: [1.234, 1234] });
    expect(readNumber('1,234', 'comma')).toEqual({ kind: 'number', value: 1.234 });
    expect(readNumber('1,234', 'point')).toEqual({ kind: 'number', value: 1234 });
    expect(readNumber('1.234', 'comma')).toEqual({ kind: 'number', value: 1234 });
  });

  test('what is no number, or goes against the sign of its file, is not guessed at', () => {
    for (const text of ['', 'ten', '3 kg', '1.2.3', '1,23,4', '12,34.5.6', '5%', '--3', '1e999', 'NaN', '1 2', '.']) {
      expect(readNumber(text).kind, text).toBe('not-a-number');
    }
    expect(readNumber('1.5', 'comma').kind).toBe('not-a-number');
    expect(readNumber('1,5', 'point').kind).toBe('not-a-number');
  });

  test('any number printed with a point or a comma is read back as itself', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), fc.constantFrom(...decimalSigns), (value, sign) => {
        const text = value.toFixed(4).replace('.', sign === 'comma' ? ',' : '.');
        expect(readNumber(text, sign)).toEqual({ kind: 'number', value: Number(value.toFixed(4)) });
      }),
    );
  });
});

describe('money', () => {
  test('is read and added in whole coins, and never across currencies', () => {
    const price = money.readMoney('12,50', 'EUR');
    expect(price).toEqual({ minor: 1250, currency: 'EUR' });
    expect(money.readMoney('12.505', 'EUR')).toBeNull();
    expect(money.readMoney('1200', 'JPY')).toEqual({ minor: 1200, currency: 'JPY' });
    expect(money.addMoney(money.money(10, 'EUR'), money.money(20, 'EUR'))).toEqual({ minor: 30, currency: 'EUR' });
    expect(() => money.addMoney(money.money(10, 'EUR'), money.money(20, 'GBP'))).toThrow(/cannot be added/);
    expect(() => money.money(0.5, 'EUR')).toThrow(/whole coins/);
  });

  test('halves go away from nought, whichever side they are on', () => {
    expect(money.scaleMoney(money.money(5, 'GBP'), 0.5).minor).toBe(3);
    expect(money.scaleMoney(money.money(-5, 'GBP'), 0.5).minor).toBe(-3);
  });

  test('shared out by weight, every coin is somewhere', () => {
    expect(money.shareMoney(money.money(100, 'EUR'), [1, 1, 1]).map((share) => share.minor)).toEqual([34, 33, 33]);
    fc.assert(
      fc.property(
        fc.integer({ min: -1e9, max: 1e9 }),
        fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 1, maxLength: 20 }),
        (minor, weights) => {
          const shares = money.shareMoney(money.money(minor, 'EUR'), weights);
          expect(shares.reduce((sum, share) => sum + share.minor, 0)).toBe(minor);
        },
      ),
    );
  });

  test('is written in the reader’s own way', () => {
    expect(money.formatMoney(money.money(1250, 'GBP'), 'en-GB')).toBe('£12.50');
  });
});
