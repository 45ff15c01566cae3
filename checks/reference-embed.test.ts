import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { embedReference } from '../scripts/embed-reference.mjs';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'leywright-embed-'));
  mkdirSync(join(folder, 'from/science'), { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

const put = (name: string, text: string) => writeFileSync(join(folder, 'from', name), text);
const embed = () => embedReference({ from: join(folder, 'from'), to: join(folder, 'to/tables.json') });
const embedded = () => JSON.parse(readFileSync(join(folder, 'to/tables.json'), 'utf8'));

describe('reference tables', () => {
  test('cells stay text as printed, quotes and commas are read, the first lines with # are the comment', async () => {
    put('crops.csv', '\uFEFFid,name\r\nleek,"Leek, ""winter"""\r\n');
    put('science/kc.csv', '# FAO-56 table 12\n# read in 2025\ncrop,kc\nbroccoli,1.050\n');
    await embed();
    const { checksum, ...tables } = embedded();
    expect(tables).toEqual({
      crops: { columns: ['id', 'name'], rows: [['leek', 'Leek, "winter"']], comment: '' },
      'science/kc': {
        columns: ['crop', 'kc'],
        rows: [['broccoli', '1.050']],
        comment: 'FAO-56 table 12\nread in 2025',
      },
    });
    expect(checksum).toMatch(/^[0-9a-f]{64}$/);
  });

  test('nothing is written when nothing changed, and everything when one cell did', async () => {
    put('crops.csv', 'id\nleek\n');
    expect((await embed()).written).toBe(true);
    expect((await embed()).written).toBe(false);
    put('crops.csv', 'id\nkale\n');
    expect((await embed()).written).toBe(true);
    expect(embedded().crops.rows).toEqual([['kale']]);
  });

  test('a row with a cell too many is refused, with the file, the row and the likely cause', async () => {
    put('crops.csv', 'id,name\nleek,Leek, winter\n');
    await expect(embed()).rejects.toThrow(/crops\.csv, row 1 \("leek"\) has 3 cells where the heading has 2.*comma/s);
  });
});
