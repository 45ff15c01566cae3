/** The inspection pack of the sample farm: fourteen parts, every line with its record, as a PDF that can be read aloud and as CSV. */
import { told } from '@leywright/api';
import { replay } from '@leywright/book';
import { sampleBook, sampleFarm, sampleToday } from '@leywright/farm-kit';
import { asDay } from '@leywright/measures';
import { planFarm } from '@leywright/planner';
import { loadPackSheets } from '@leywright/server';
import { describe, expect, test } from 'vitest';

const described = sampleFarm(sampleToday);
const entries = sampleBook(described, sampleToday);
const { farm } = replay(described, entries);
const plan = planFarm(farm, { today: sampleToday, year: 2026 });
const packOn = (knownOn = sampleToday) => told.packOf({ farm, entries, plan, year: 2026, knownOn });
const pack = packOn();
const ids = new Set<string>(entries.map((entry) => entry.id));

describe('the pack of 2026', () => {
  test('has its fourteen parts in order, each with columns that fill the page and no further', () => {
    expect(pack.parts.map((part) => part.number)).toEqual(Array.from({ length: 14 }, (_, at) => at + 1));
    for (const part of pack.parts) {
      expect(part.columns.reduce((sum, column) => sum + column.widthShare, 0)).toBeLessThanOrEqual(1.0001);
      for (const row of part.rows) expect(row.length).toBe(part.columns.length);
    }
  });

  test('every line of sowings, lots and the store ledger names a record that is in the book', () => {
    for (const number of [6, 7, 8]) {
      const rows = pack.parts[number - 1]?.rows ?? [];
      expect(rows.length).toBeGreaterThan(10);
      for (const row of rows) expect(ids.has(row.at(-1) ?? '')).toBe(true);
    }
  });

  test('the balance of carrots adds up, figure by figure', () => {
    const row = pack.parts[9]?.rows.find((cells) => cells[0] === 'Maincrop storing carrot') ?? [];
    const [openingKg = 0, inKg = 0, ...outKg] = row.slice(1, 10).map((cell) => Number(cell.replaceAll(',', '')));
    expect(inKg).toBeGreaterThan(0);
    expect(outKg.reduce((sum, kg) => sum + kg, 0)).toBeCloseTo(openingKg + inKg, 0);
  });

  test('no input recorded is told as such, not as none', () => {
    expect(pack.parts[3]?.sentence).toContain('That is not the same as none');
  });

  test('as known in May it holds only what the book had received by then', () => {
    const may = packOn(asDay('2026-05-31'));
    const days = may.parts[6]?.rows.map((row) => row[1] ?? '') ?? [];
    expect(days.length).toBeGreaterThan(0);
    expect(days.every((day) => day <= '2026-05-31')).toBe(true);
    expect(days.length).toBeLessThan(pack.parts[6]?.rows.length ?? 0);
  });

  test('the PDF is tagged, has a bookmark a part and its language, and can be made in ten seconds', async () => {
    const { packPdf } = await loadPackSheets();
    const startedMs = performance.now();
    const bytes = await packPdf(pack, '2027-01-14');
    expect(performance.now() - startedMs).toBeLessThan(10_000);
    const text = bytes.toString('latin1');
    expect(text.startsWith('%PDF-1.7')).toBe(true);
    expect(text).toContain('/StructTreeRoot');
    expect(text).toContain('/Lang (en-GB)');
    for (const part of pack.parts) expect(text).toContain(`(${part.number}  ${part.title})`);
  }, 30_000);

  test('as CSV each part is a file, and a spreadsheet takes no cell for a formula', async () => {
    const { packCsv } = await loadPackSheets();
    const files = packCsv({
      ...pack,
      parts: [
        { number: 1, title: 'Land', sentence: '', columns: [{ head: 'a', widthShare: 1 }], rows: [['=1+1'], ['-3.5']] },
      ],
    });
    expect([...files]).toEqual([['01-land.csv', "a\n'=1+1\n-3.5\n"]]);
    expect(packCsv(pack).size).toBe(14);
  });
});
