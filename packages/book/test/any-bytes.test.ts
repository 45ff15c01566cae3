import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readEntry, readFarmFolder, readFarmZip, replay, writeFarmFolder, zipFolder } from '../src/index.ts';
import { farmArbitrary } from './farm-arbitrary.ts';
import { known } from './known.ts';
import { bookArbitrary, farm } from './records.ts';

const patience = 60_000;

/** A piece of a text replaced by another: letters, signs of CSV and JSON, figures out of all proportion. */
const scar = fc.record({
  file: fc.nat(),
  at: fc.nat(),
  length: fc.nat(12),
  piece: fc.oneof(
    fc.string({ maxLength: 6 }),
    fc.constantFrom(
      '"',
      ',',
      ';',
      '\n',
      '{',
      ']',
      'null',
      '-1',
      '1e999',
      '9999-12-31',
      '0000-00-00',
      '__proto__',
      '\u0000',
      '\ud800',
      '999999999999',
      'NaN',
      '2026-w99',
    ),
  ),
});

test(
  'a folder damaged anywhere is read or refused with reasons, and never breaks the reader',
  () => {
    fc.assert(
      fc.property(
        farmArbitrary,
        bookArbitrary,
        fc.array(scar, { minLength: 1, maxLength: 4 }),
        (whole, book, scars) => {
          const files = new Map(writeFarmFolder(whole, book));
          for (const { file, at, length, piece } of scars) {
            const [name, text] = [...files][file % files.size] ?? ['', ''];
            const place = at % (text.length + 1);
            files.set(name, text.slice(0, place) + piece + text.slice(place + length));
          }
          const { farm: read, entries, problems } = readFarmFolder(files, known);
          expect(read === null).toBe(problems.some((problem) => problem.gravity === 'stops'));
          if (read === null) expect(entries).toEqual([]);
          else expect(() => replay(read, entries)).not.toThrow();
        },
      ),
      { numRuns: 60, endOnFailure: true },
    );
  },
  patience,
);

test(
  'a zip damaged anywhere is read or refused with reasons',
  () => {
    const zip = zipFolder(writeFarmFolder(farm(), []));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(zip.length - 1), fc.nat(255)), { minLength: 1, maxLength: 6 }),
        (changes) => {
          const bytes = zip.slice();
          for (const [at, byte] of changes) bytes[at] = byte;
          const { farm: read, problems } = readFarmZip(bytes, known);
          expect(read === null).toBe(problems.some((problem) => problem.gravity === 'stops'));
        },
      ),
      { numRuns: 300 },
    );
  },
  patience,
);

test('JSON that is no entry comes back as problems', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (json) => {
      const problems = readEntry(json);
      expect(Array.isArray(problems) && problems.length > 0).toBe(true);
    }),
  );
});
