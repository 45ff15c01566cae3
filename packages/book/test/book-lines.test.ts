import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readFarmFolder, replay, verifyBook, writeFarmFolder } from '../src/index.ts';
import { known } from './known.ts';
import { bookArbitrary, day, farm, record, sealed, stand } from './records.ts';

const weighing = (kg: number) => ({ kind: 'weighing' as const, crop: 'kale', store: null, kg });
const read = (lines: string) =>
  readFarmFolder(new Map([...writeFarmFolder(farm(), []), ['entries.jsonl', lines]]), known);

test('a book written with its farm comes back letter for letter, with seq, receipt and hash', () => {
  fc.assert(
    fc.property(bookArbitrary, (book) => {
      const { entries, problems } = readFarmFolder(writeFarmFolder(farm(), book), known);
      expect(problems).toEqual([]);
      expect(entries).toEqual(book);
      expect(verifyBook(entries)).toMatchObject({ ok: true });
    }),
    { numRuns: 40 },
  );
});

test('a line changed by hand keeps the folder out, and the line is named', () => {
  const lines =
    [...writeFarmFolder(farm(), sealed([1, 2, 3].map((number) => record(weighing(number), number)))).entries()].find(
      ([file]) => file === 'entries.jsonl',
    )?.[1] ?? '';
  expect(read(lines.replace('"kg":2', '"kg":200'))).toMatchObject({
    farm: null,
    problems: [{ code: 'book-broken', line: 2, found: 'changed' }],
  });
  expect(read(lines.split('\n').toSpliced(1, 1).join('\n'))).toMatchObject({
    farm: null,
    problems: [{ code: 'book-broken', line: 2, found: 'missing' }],
  });
  expect(read(lines).farm).not.toBeNull();
});

test('entries written by hand, without a seal, are sealed and told', () => {
  const { entries, problems } = read(
    [record(weighing(1), 1), record(weighing(2), 2)].map((entry) => JSON.stringify(entry)).join('\n'),
  );
  expect(problems).toMatchObject([{ code: 'book-not-sealed', gravity: 'look', line: 1, figures: { entries: 2 } }]);
  expect(entries.map((entry) => entry.seq)).toEqual([1, 2]);
  expect(verifyBook(entries)).toMatchObject({ ok: true, count: 2 });
});

test('every fault of every line is told at its line, and a newer entry is refused as newer', () => {
  const good = record(weighing(1), 1);
  const lines = [
    JSON.stringify(good),
    '',
    '{"v":1',
    JSON.stringify({ ...good, v: 7 }),
    JSON.stringify({ ...good, doneOn: '2027-02-31', by: '' }),
    '[]',
  ].join('\n');
  const { farm: read1, problems } = read(lines);
  expect(read1).toBeNull();
  expect(problems.slice(0, 4).map(({ code, file, line, column }) => [code, file, line, column])).toEqual([
    ['not-json', 'entries.jsonl', 3, null],
    ['newer-version', 'entries.jsonl', 4, 'v'],
    ['not-a-day', 'entries.jsonl', 5, 'doneOn'],
    ['not-an-id', 'entries.jsonl', 5, 'by'],
  ]);
  expect(problems.some((problem) => problem.line === 6)).toBe(true);
});

test('the farm of a folder is its tables with its book replayed over them', () => {
  const base = farm({ stands: [stand('s1', { sownOn: day('2027-05-10') })] });
  const book = sealed([
    record({ kind: 'stand-ended', stand: 's1', by: 'lifted', why: null }, 1, { doneOn: day('2027-09-30') }),
  ]);
  const reading = readFarmFolder(writeFarmFolder(base, book), known);
  expect(reading.farm).toEqual(base);
  if (reading.farm !== null)
    expect(replay(reading.farm, reading.entries).farm.stands).toMatchObject([
      { to: '2027-09-30', endedBy: 'lifted', plannedTo: '2027-10-20' },
    ]);
});
