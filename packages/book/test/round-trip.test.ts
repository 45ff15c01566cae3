import { asDay, asId, asMonthDay } from '@leywright/measures';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  emptyFarm,
  entriesOf,
  newEntryId,
  readEntry,
  readFarmFolder,
  readFarmZip,
  replay,
  writeFarmFolder,
  zipFolder,
} from '../src/index.ts';
import { guarded, unguarded } from '../src/table/plain-kinds.ts';
import { words } from './arbitrary-pieces.ts';
import { farmArbitrary } from './farm-arbitrary.ts';
import { known } from './known.ts';

// Shrinking a whole farm takes minutes; the seed and path that are printed lead to the one that failed.
const runs = 40;
const patience = 60_000;

const stamp = (farm: string) => ({
  farm: asId<never>(farm),
  by: asId<never>('grower'),
  device: asId<never>('desk'),
  deviceSeqFrom: 1,
  doneOn: asDay('2027-01-05'),
  enteredAt: '2027-01-05T09:00:00Z',
  newId: (at: number) =>
    newEntryId(
      new Uint8Array(10).map((_, byte) => (byte === 9 ? at % 256 : byte === 8 ? Math.floor(at / 256) : 7 * at)),
      1_800_000_000_000,
    ),
});

test(
  'any farm, written as a folder and read again, is the same farm',
  () => {
    fc.assert(
      fc.property(farmArbitrary, (farm) => {
        const reading = readFarmFolder(writeFarmFolder(farm, []), known);
        expect(reading.problems.filter((problem) => problem.gravity === 'stops')).toEqual([]);
        expect(reading.farm).toEqual(farm);
      }),
      { numRuns: runs, endOnFailure: true },
    );
  },
  patience,
);

test(
  'a farm in a zip is the same farm, and the same farm gives the same bytes',
  () => {
    fc.assert(
      fc.property(farmArbitrary, (farm) => {
        const zip = zipFolder(writeFarmFolder(farm, []));
        expect(readFarmZip(zip, known).farm).toEqual(farm);
        expect(zipFolder(writeFarmFolder(farm, []))).toEqual(zip);
      }),
      { numRuns: 10, endOnFailure: true },
    );
  },
  patience,
);

test(
  'any farm, told as entries over an empty one, is the same farm, and each of its entries is read back',
  () => {
    fc.assert(
      fc.property(farmArbitrary, (farm) => {
        const entries = entriesOf(farm, stamp(farm.about.id));
        expect(replay(emptyFarm(farm.about), entries)).toEqual({ farm, findings: [] });
        for (const entry of entries) expect(readEntry(JSON.parse(JSON.stringify(entry)))).toEqual(entry);
      }),
      { numRuns: runs, endOnFailure: true },
    );
  },
  patience,
);

test('no text cell of a written folder runs as a formula in a spreadsheet, and each comes back as it was', () => {
  fc.assert(
    fc.property(
      fc.oneof(
        words,
        fc.tuple(fc.constantFrom('=', '+', '-', '@', "'", "''="), words).map((pair) => pair.join('')),
      ),
      (text) => {
        expect(guarded(text)).not.toMatch(/^[=+\-@\t\r]/);
        expect(unguarded(guarded(text))).toBe(text);
      },
    ),
  );
});

test('a name that is a trap in other programs stays a name', () => {
  const folder = new Map([
    ['plots.csv', 'id,name,gross_ha\nconstructor,__proto__,1\n'],
    ['aliases.csv', 'alias,crop\n__proto__,kale\ntoString,kale\n'],
    ['sizes.csv', 'id,households\nhasOwnProperty,3\n'],
  ]);
  const { farm, problems } = readFarmFolder(folder, known);
  expect(problems.filter((problem) => problem.gravity === 'stops')).toEqual([]);
  expect(Object.entries(farm?.aliases ?? {})).toEqual([
    ['__proto__', 'kale'],
    ['tostring', 'kale'],
  ]);
  expect(farm?.plots[0]?.name).toBe('__proto__');
  if (farm !== null)
    expect(Object.entries(readFarmFolder(writeFarmFolder(farm, []), known).farm?.aliases ?? {})).toEqual(
      Object.entries(farm.aliases),
    );
});

test('south of the equator the seasons stand half a year away, unless the farm says its own', () => {
  const at = (lat: number, more = '') =>
    readFarmFolder(
      new Map([
        ['farm.json', `{"name":"F","place":{"lat_deg":${lat},"lon_deg":20,"jurisdiction":"general"}${more}}`],
        ['plots.csv', 'id,gross_ha\na,1\n'],
      ]),
      known,
    ).farm?.about.conventions;
  expect([at(52)?.leachingFrom, at(52)?.leachingTo, at(52)?.restSeasonFrom, at(52)?.restSeasonTo]).toEqual([
    '10-01',
    '03-25',
    '03-01',
    '10-31',
  ]);
  expect([at(-33)?.leachingFrom, at(-33)?.leachingTo, at(-33)?.restSeasonFrom, at(-33)?.restSeasonTo]).toEqual([
    '04-01',
    '09-25',
    '09-01',
    '04-30',
  ]);
  expect(at(-33, ',"conventions":{"leaching_from":"05-10"}')?.leachingFrom).toBe(asMonthDay('05-10'));
});
