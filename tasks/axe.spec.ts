// Every place of the app is looked over for faults of accessibility, at a desk, on a phone and in the dark.
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { faultsOf as faults } from './axe-faults.ts';
import { task } from './browser.ts';
import { folderWithMistakes } from './mistakes.ts';
import { headline } from './page-words.ts';

const sample = { farm: 'sample', today: '2027-06-08' } as const;
const places = [
  '/ground',
  '/boxes',
  '/day',
  '/work',
  '/start',
  '/settings',
  '/people',
  '/nowhere',
  '/record/saw',
  '/record/did',
] as const;

async function lookOver(page: Page, address: string): Promise<void> {
  for (const place of places) {
    await page.goto(`${address}${place}`);
    await headline(page);
    await page.locator('.count').waitFor(); // the farm is open on places that do not wait for it, too
    expect(await faults(page), place).toEqual([]);
  }
}

task('each place at a desk', sample, async ({ page, app }) => lookOver(page, app.address));

task(
  'each place on a phone',
  { ...sample, context: { viewport: { width: 390, height: 844 } } },
  async ({ page, app }) => lookOver(page, app.address),
);

task('each place in the dark', { ...sample, context: { colorScheme: 'dark' } }, async ({ page, app }) =>
  lookOver(page, app.address),
);

task('a sum beside the tables, and a stand over the ground', sample, async ({ page, app }) => {
  await page.goto(`${app.address}/boxes#why=bare%2Ff%2F2029`);
  await page.locator('.side-sheet').getByText('Bare days on Far Ridding').waitFor();
  await page.keyboard.press('t');
  await page.getByRole('button', { name: /Hide the table/ }).waitFor();
  expect(await faults(page), 'a sum beside the tables').toEqual([]);
  await page.goto(`${app.address}/ground`);
  await page.locator('.stand-cell').first().focus();
  await page.keyboard.press('Enter');
  await page.locator('.side-sheet').getByText('How sure').waitFor();
  expect(await faults(page), 'a stand').toEqual([]);
});

task('a folder that is being mended', { today: '2027-06-08' }, async ({ page }) => {
  const { folder, takeAway } = folderWithMistakes();
  try {
    await headline(page);
    await page.locator('input[type=file]').first().setInputFiles(folder);
    await page.getByRole('heading', { name: /things to mend/ }).waitFor();
    expect(await faults(page)).toEqual([]);
  } finally {
    takeAway();
  }
});
