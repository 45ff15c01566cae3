/** Small random things of a farm: ids, days, texts and numbers as odd as they may be. */
import { asId, type CropId, type Day, dayAt, type Id, type IsoWeek, monthDayOf, weekOf } from '@leywright/measures';
import fc from 'fast-check';
import { type Span, wholePlot } from '../src/index.ts';
import { known } from './known.ts';

export const id = <T extends Id>(): fc.Arbitrary<T> =>
  fc.stringMatching(/^[a-zA-Zäé0-9]{1,6}(-[a-z0-9]{1,5})?$/).map((text) => asId<T>(text.normalize('NFC')));
export const odd = fc.constantFrom(
  '=1+1',
  '+44',
  '-',
  '@x',
  "'=a",
  'a "b" c',
  'a,b;c',
  'two\nlines',
  'a\r\nb',
  'a\tb',
  '5',
  '1,5',
  '2027-01-01',
  'ä',
  '日本',
  '"',
  "''",
);
export const words = fc
  .oneof(odd, fc.string({ minLength: 1, maxLength: 12 }), fc.string({ unit: 'grapheme', minLength: 1, maxLength: 6 }))
  .map((text) => text.normalize('NFC').replaceAll('\0', '').trim())
  .filter((text) => text !== '');
export const amount = (max = 1e6, min = 0) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);
export const share = amount(1);
export const day: fc.Arbitrary<Day> = fc.integer({ min: 12_000, max: 25_000 }).map(dayAt);
export const monthDay = day.map(monthDayOf);
export const week: fc.Arbitrary<IsoWeek> = day.map(weekOf);
export const orNull = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: null });
export const span: fc.Arbitrary<Span> = fc.oneof(
  fc.constant(wholePlot),
  fc
    .tuple(share, share)
    .filter(([a, b]) => a !== b)
    .map(([a, b]) => ({ fromShare: Math.min(a, b), toShare: Math.max(a, b) })),
);
export const many = <T, K>(one: fc.Arbitrary<T>, key: (value: T) => K, maxLength = 4) =>
  fc.uniqueArray(one, { selector: key, maxLength });
export const crops = [...known.crops.keys()] as CropId[];
export const crop = fc.constantFrom(...crops);
export const cropList = fc.uniqueArray(crop, { minLength: 1, maxLength: 3 });
export const plant = fc.constantFrom(...crops, ...known.covers.keys());
export const unit = fc.constantFrom('kg' as const, 'head' as const, 'bunch' as const);
export const family = fc.oneof(
  fc.constantFrom(...known.families),
  words.filter((text) => !known.families.some((one) => one.toLowerCase() === text.toLowerCase())),
);
export const rec = <T extends object>(model: { [K in keyof T]: fc.Arbitrary<T[K]> }): fc.Arbitrary<T> =>
  fc.record(model) as fc.Arbitrary<T>;
