// Tasks on the sample farm: read how it stands, move the year, find out why a plot is red.
import { expect } from 'vitest';
import { task } from './browser.ts';
import { headline, jsonFrom } from './page-words.ts';

const sample = { farm: 'sample', today: '2027-06-08' } as const;

task('the sample farm opens and its first sentence says what the plan says', sample, async ({ page, app }) => {
  const said = await headline(page);
  const plan = await jsonFrom<{ headline: { shortWeeks: string[]; toPutRight: number } }>(app, '/plan');
  expect(said).toContain('Far Ridding');
  expect(said).toMatch(/The box is short for .* weeks? from|The box is full/);
  expect(await page.textContent('.count')).toBe(`${plan.headline.toPutRight} to put right`);
  expect(await page.textContent('.sample-line')).toContain('invented');
  expect(await page.title()).toContain('Oddlethorpe Growers');
});

task('the year is moved, and the boxes of that year are worked out', sample, async ({ page }) => {
  await headline(page);
  await page.getByRole('slider', { name: 'Week of the year' }).focus();
  await page.keyboard.press('Shift+ArrowRight');
  await page.getByRole('heading', { name: 'Nitrogen in 2028' }).waitFor();
  await page.getByRole('listbox', { name: /week by week in 2028/ }).waitFor();
  await expect.poll(() => new URL(page.url()).searchParams.get('week')).toBe('2028-w23');
});

task('why a plot is red: from the count to the plot, its note and the sum behind it', sample, async ({ page, app }) => {
  await headline(page);
  await page.getByRole('link', { name: /to put right/ }).click();
  const note = page.locator('#to-put-right .note', { hasText: 'Ground bare in the wet season' });
  expect(await note.textContent()).toContain('Far Ridding');
  const number = await note.locator('.note-number').textContent();
  expect(await page.locator('.fault-number').allTextContents()).toContain(number);
  await note.locator('a.figure').first().click();
  const sheet = page.locator('.side-sheet');
  await sheet.getByRole('heading', { level: 2 }).waitFor();
  await expect.poll(() => sheet.textContent()).toContain('Bare days on Far Ridding');
  const { findings } = await jsonFrom<{ findings: { code: string; why: string }[] }>(app, '/findings');
  const bare = findings.find(({ code }) => code === 'bare-in-leaching-season');
  expect(decodeURIComponent(new URL(page.url()).hash)).toBe(`#why=${bare?.why}`);
  await page.keyboard.press('Escape');
  await expect.poll(() => page.locator('.side-sheet').count()).toBe(0);
});
