import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { describeFolder, folderFiles } from '../src/index.ts';
import { tables } from '../src/rows/tables.ts';

const page = readFileSync(new URL('../../../docs/farm-folder.md', import.meta.url), 'utf8');

test('the page of the farm folder has the tables that the program reads and writes', () => {
  expect(page.endsWith(`\n${describeFolder()}`), 'write them anew: npx tsx scripts/write-farm-folder-page.ts').toBe(
    true,
  );
});

test('every file of the folder is on its page, and every key and column says what it means', () => {
  for (const file of folderFiles) expect(page).toContain(file);
  expect(describeFolder()).not.toMatch(/\|\s+\|$/m);
});

test('no heading stands for two columns of one table', () => {
  for (const { file, columns } of tables) {
    const headings = Object.values(columns).flatMap((column) => [
      ...column.headings.map((one) => one.name),
      ...column.alsoCalled,
    ]);
    expect(
      headings.filter((one, at) => headings.indexOf(one) !== at),
      file,
    ).toEqual([]);
  }
});
