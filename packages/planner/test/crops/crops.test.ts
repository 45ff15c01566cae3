import { aboutWith, day, monthDay, ownCrop } from '@leywright/farm-kit';
import { describe, expect, test } from 'vitest';
import { cropBookOf } from '../../src/crops/crop-book.ts';
import { cropLook, plantOf, standLook } from '../../src/crops/plant.ts';
import { distanceTo, seasonShiftDays, windowAround } from '../../src/crops/season.ts';
import { knownNames } from '../../src/index.ts';
import { horizonOf } from '../../src/season/horizon.ts';

describe('crops as the farm grows them', () => {
  const about = aboutWith();
  const book = cropBookOf({
    about,
    crops: [
      ownCrop('red-onion', { basedOn: 'onion-set', name: 'Red onion', yieldMarketableTHa: 17 }),
      ownCrop('skirret', { name: 'Skirret', family: 'Apiaceae' }),
      ownCrop('carrot-maincrop', { yieldGrossTHa: 38, gradingLossShare: 0.18 }),
      ownCrop('a', { basedOn: 'b' }),
      ownCrop('b', { basedOn: 'a' }),
    ],
  });

  test('an own figure goes before the table’s, and says where it stands', () => {
    expect(book.cropOf('red-onion')?.yieldMarketableTHa).toMatchObject({ value: 17, origin: 'own', howKnown: 'own' });
    expect(book.cropOf('onion-set')?.yieldMarketableTHa).toMatchObject({ origin: 'reference' });
  });
  test('what is not given follows the crop it is based on', () => {
    expect(book.cropOf('red-onion')).toMatchObject({ name: 'Red onion', family: 'Amaryllidaceae', unit: 'kg' });
    expect(book.idsOf('red-onion')).toEqual(['red-onion', 'onion-set']);
  });
  test('a yield given gross leaves no marketable one from the table beside it', () => {
    expect(book.cropOf('carrot-maincrop')).toMatchObject({
      yieldMarketableTHa: null,
      yieldGrossTHa: { value: 38 },
      gradingLossShare: { value: 0.18, origin: 'own' },
    });
  });
  test('a crop only the farm knows has its family and no figures, and one nobody knows is none', () => {
    expect(book.cropOf('skirret')).toMatchObject({ family: 'Apiaceae', reference: null, yieldMarketableTHa: null });
    expect(book.cropOf('nothing')).toBeNull();
  });
  test('crops based on one another in a ring are read once each', () => {
    expect(book.idsOf('a')).toEqual(['a', 'b']);
  });
  test('loss in packing is the farm’s convention unless the crop says otherwise', () => {
    expect(book.cropOf('red-onion')?.packingLossShare).toMatchObject({ value: 0.03, origin: 'convention' });
  });
});

describe('plants', () => {
  test('a mixture counts under all its parts', () => {
    expect(plantOf('mix-rye-vetch')).toMatchObject({
      family: null,
      families: ['Poaceae', 'Fabaceae'],
      ids: ['mix-rye-vetch', 'grazing-rye', 'winter-vetch'],
    });
  });
  test('pictures draw swedes with the brassicas and parsnips with the roots', () => {
    expect([
      cropLook(plantOf('swede', cropBookOf({ about: aboutWith(), crops: [] }))),
      cropLook(plantOf('parsnip', cropBookOf({ about: aboutWith(), crops: [] }))),
    ]).toEqual(['brassica', 'root']);
    expect(standLook(plantOf('trefoil'), 'cover', true)).toBe('undersown');
  });
});

describe('seasons at the farm’s place', () => {
  const lowland = { latDeg: 52, elevationM: 100 };
  test('at 52° N below 150 m they are the tables’', () => {
    expect(seasonShiftDays(lowland)).toBe(0);
    const window = windowAround([monthDay('04-05'), monthDay('05-05')], day('2027-04-20'), lowland);
    expect([distanceTo(window, window.fromDay), window.toDay - window.fromDay]).toEqual([0, 30]);
  });
  test('two degrees north, or 150 m up, spring comes 7 to 10 days later (reference/README.md)', () => {
    expect(seasonShiftDays({ latDeg: 54, elevationM: 0 })).toBeGreaterThanOrEqual(7);
    expect(seasonShiftDays({ latDeg: 54, elevationM: 0 })).toBeLessThanOrEqual(10);
    expect(seasonShiftDays({ latDeg: 52, elevationM: 300 })).toBeGreaterThanOrEqual(7);
    expect(seasonShiftDays({ latDeg: 52, elevationM: 300 })).toBeLessThanOrEqual(10);
  });
  test('a window over new year is met from either side', () => {
    const window = (on: string) => windowAround([monthDay('11-01'), monthDay('03-15')], day(on), lowland);
    expect(window('2027-01-10')).toEqual(window('2026-11-20'));
  });
});

describe('the years of a plan', () => {
  test('are five back and four on; from October the year in focus is the next', () => {
    expect(horizonOf({ today: day('2027-01-14') })).toMatchObject({
      year: 2027,
      horizon: { fromYear: 2022, toYear: 2031, firstMonday: '2021-12-27', weeks: 523 },
    });
    expect(horizonOf({ today: day('2026-10-01') }).year).toBe(2027);
    expect(horizonOf({ today: day('2026-09-30') }).year).toBe(2026);
  });
  test('stretch to a year asked for outside them', () => {
    expect(horizonOf({ today: day('2027-01-14'), year: 2040 }).horizon.toYear).toBe(2040);
  });
});

test('known names hold every crop, cover and organism of the tables, and no family called mixed', () => {
  const known = knownNames();
  expect([known.crops.size, known.covers.size]).toEqual([75, 30]);
  expect(known.organisms.get('clubroot')).toBe('Plasmodiophora brassicae');
  expect(known.families).toContain('Brassicaceae');
  expect(known.families).not.toContain('mixed');
  expect(known.storeKinds).toContain('clamp');
});
