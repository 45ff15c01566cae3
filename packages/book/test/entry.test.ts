import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  canonicalJson,
  chain,
  type Entry,
  newEntryId,
  type ReceivedEntry,
  readEntry,
  readReceivedEntry,
  verifyBook,
  withdrawBody,
} from '../src/index.ts';
import { bookArbitrary, record, sealed } from './records.ts';

const golden = readFileSync(new URL('../reference/entries-v1.jsonl', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .map((text) => JSON.parse(text) as unknown);

test('the id of an entry is a UUID of version 7, as in the RFC’s example', () => {
  // RFC 9562, appendix A.6 (memory): 2022-02-22T19:22:22Z, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F.
  const random = new Uint8Array([0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f]);
  expect(newEntryId(random, 0x017f22e279b0)).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f');
});

test('ids made later sort later', () => {
  fc.assert(
    fc.property(
      fc.nat(2 ** 40),
      fc.integer({ min: 1, max: 2 ** 30 }),
      fc.uint8Array({ minLength: 10, maxLength: 10 }),
      fc.uint8Array({ minLength: 10, maxLength: 10 }),
      (at, later, a, b) => {
        expect(newEntryId(a, at) < newEntryId(b, at + later)).toBe(true);
      },
    ),
  );
});

test('JSON is written in one way only, as in the examples of RFC 8785 (memory)', () => {
  const value = {
    numbers: [Number('333333333.33333329'), 1e30, 4.5, 2e-3, 1e-27],
    string: '\u20ac$\u000f\nA\'B"\\\\"/',
    literals: [null, true, false],
  };
  expect(canonicalJson(value)).toBe(
    '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
  );
  expect(canonicalJson({ b: 1, a: 2, ö: 3, B: 4 })).toBe('{"B":4,"a":2,"b":1,"ö":3}');
});

test('entries of version 1, written when it was new, are read for ever, and their book verifies', () => {
  const entries = golden.map((json) => readReceivedEntry(json) as ReceivedEntry);
  expect(entries.map((entry) => (Array.isArray(entry) ? entry : (entry.body?.kind ?? 'no body')))).toEqual([
    'set',
    'set',
    'set',
    'sowing',
    'planting',
    'harvest',
    'stand-ended',
    'establishment',
    'weighing',
    'job-done',
    'organism-found',
    'observation',
    'rotation-agreed',
    'harvest',
    'struck-out',
    'withdrawn',
    'no body',
  ]);
  expect(verifyBook(entries)).toEqual({
    ok: true,
    count: 17,
    lastHash: '845a6183aebfa8cdefbc09f5c035701372449814caec4d0091b997a84b95ad5c',
    withdrawn: 1,
  });
});

test('an entry of a newer version is refused kindly: it is not wrong, it is newer', () => {
  expect(readEntry({ ...(golden[0] as object), v: 2, weather: 'fine' })).toMatchObject([
    { code: 'newer-version', column: 'v', found: '2', figures: { newest: 1 } },
  ]);
});

test('every fault of an entry is told at its path', () => {
  const bad = {
    ...record({ kind: 'weighing', crop: 'kale', store: null, kg: 3 }, 1),
    id: 'not an id',
    doneOn: '2027-02-31',
    body: { kind: 'weighing', crop: 'kale', store: null, kg: -3 },
    mood: 'good',
  };
  const problems = readEntry(bad, 7);
  expect(Array.isArray(problems) && problems.map(({ code, line, column }) => [code, line, column])).toEqual([
    ['not-an-id', 7, 'id'],
    ['not-a-day', 7, 'doneOn'],
    ['out-of-range', 7, 'body.kg'],
    ['unknown-key', 7, 'mood'],
  ]);
});

test('a row set under another key than its own, or of another shape, is refused', () => {
  const field = { id: 'north', name: 'North', areaM2: null, hedgesOver5Years: null };
  const set = (key: string, value: unknown) => readEntry(record({ kind: 'set', subject: 'fields', key, value }, 1));
  expect(set('north', field)).toMatchObject({ body: { value: field } });
  expect(set('south', field)).toMatchObject([{ column: 'body.key', nearest: ['north'] }]);
  expect(set('north', { ...field, areaM2: 'much' })).toMatchObject([{ column: 'body.value.areaM2' }]);
  expect(set('north', null)).toMatchObject({ body: { value: null } });
});

test('a book as it was written verifies, whole or from any entry on', () => {
  fc.assert(
    fc.property(bookArbitrary, fc.nat(), (book, cut) => {
      expect(verifyBook(book)).toMatchObject({ ok: true, count: book.length });
      const at = cut % (book.length + 1);
      const end = book[at - 1];
      expect(verifyBook(book.slice(at), end === undefined ? null : { seq: end.seq, hash: end.hash })).toMatchObject({
        ok: true,
      });
    }),
    { numRuns: 30 },
  );
});

test('any one letter changed anywhere in a book is found, at the entry where it was changed or before', () => {
  fc.assert(
    fc.property(
      bookArbitrary.filter((book) => book.length > 0),
      fc.nat(),
      fc.nat(),
      fc.integer({ min: 32, max: 126 }),
      (book, which, where, letter) => {
        const lines = book.map((entry) => JSON.stringify(entry));
        const at = which % lines.length;
        const line = lines[at] ?? '';
        const place = where % line.length;
        const changed = line.slice(0, place) + String.fromCharCode(letter) + line.slice(place + 1);
        let json: unknown;
        try {
          json = JSON.parse(changed);
        } catch {
          return; // No JSON any more: found by the reader.
        }
        if (canonicalJson(json) === canonicalJson(JSON.parse(line))) return; // The same letter, or the same number written otherwise.
        const read = readReceivedEntry(json);
        if (Array.isArray(read)) return; // No entry any more: found by the reader.
        const verified = verifyBook(book.map((entry, index) => (index === at ? (read as ReceivedEntry) : entry)));
        expect(verified.ok).toBe(false);
        if (!verified.ok) expect(verified.firstBad.at).toBeLessThanOrEqual(at + 1);
      },
    ),
    { numRuns: 400 },
  );
});

test('an entry left out, moved or repeated is found, and said to be that', () => {
  const book = sealed(
    Array.from({ length: 5 }, (_, at) => record({ kind: 'weighing', crop: 'kale', store: null, kg: at }, at + 1)),
  );
  const [a, b, c, d, e] = book as [ReceivedEntry, ReceivedEntry, ReceivedEntry, ReceivedEntry, ReceivedEntry];
  expect(verifyBook([a, c, d, e])).toMatchObject({ firstBad: { at: 1, seq: 3, how: 'missing' } });
  expect(verifyBook([a, c, b, d, e])).toMatchObject({ firstBad: { at: 1, seq: 3, how: 'moved' } });
  expect(verifyBook([a, b, b, c, d, e])).toMatchObject({ firstBad: { at: 2, seq: 2, how: 'repeated' } });
  expect(verifyBook([a, b, { ...c, doneOn: b.doneOn, reason: 'neater' }, d, e])).toMatchObject({
    firstBad: { at: 2, how: 'changed' },
  });
  expect(
    verifyBook([a, b, { ...c, body: { kind: 'weighing', crop: 'kale' as never, store: null, kg: 99 } }, d, e]),
  ).toMatchObject({ firstBad: { at: 2, how: 'changed' } });
  expect(verifyBook([a, b, { ...d, seq: 3 }, e])).toMatchObject({ ok: false, firstBad: { at: 2 } });
});

test('a body withdrawn by a recorded entry is gone, and the book still verifies; one that vanished without is found', () => {
  const first = record(
    { kind: 'observation', plot: null, what: 'a visit', count: null, of: null, words: 'Anna came by' },
    1,
  );
  const book = sealed([first, record({ kind: 'withdrawn', entry: first.id }, 2)]);
  const [kept, withdrawal] = book as [ReceivedEntry, ReceivedEntry];
  expect(JSON.stringify(withdrawBody(kept))).not.toContain('Anna');
  expect(verifyBook([withdrawBody(kept), withdrawal])).toMatchObject({ ok: true, withdrawn: 1 });
  expect(verifyBook([withdrawBody(kept)])).toMatchObject({ firstBad: { at: 0, how: 'body-missing' } });
});

test('two books that differ in one body part at that entry and stay parted', () => {
  const one = record({ kind: 'weighing', crop: 'kale', store: null, kg: 1 }, 1) as Entry;
  const a = chain(null, one, { receivedAt: one.enteredAt, seq: 1, salt: '00' });
  const b = chain(
    null,
    { ...one, body: { kind: 'weighing', crop: 'kale', store: null, kg: 2 } },
    { receivedAt: one.enteredAt, seq: 1, salt: '00' },
  );
  expect(a.hash).not.toBe(b.hash);
  expect(chain(a.hash, one, { receivedAt: one.enteredAt, seq: 2, salt: '01' }).hash).not.toBe(
    chain(b.hash, one, { receivedAt: one.enteredAt, seq: 2, salt: '01' }).hash,
  );
});
