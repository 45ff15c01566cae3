// The year's work against the hands there are: what is over, what slips when a job waits, the same as a table and on a phone.
import { expect } from 'vitest';
import { task } from './browser.ts';
import { headline } from './page-words.ts';

const spring = { farm: 'sample', today: '2027-04-07' } as const;

task('where hands are lacking, and what slips when the onions wait a week', spring, async ({ page }) => {
  await headline(page);
  await page.getByRole('navigation', { name: 'Places' }).first().getByRole('link', { name: 'Work' }).click();
  await page.getByRole('img', { name: /^Days of work week by week in 2027/ }).waitFor();
  expect(await headline(page)).toMatch(/nobody to do/);
  const waits = page.getByRole('button', { name: /^If it waits a week: Plant out onions from sets/ }).first();
  await waits.click();
  const slips = page.locator('.slips');
  await slips
    .getByText(/^Hoe onions from sets: .* becomes /)
    .first()
    .waitFor();
  expect(await waits.getAttribute('aria-expanded')).toBe('true');
  await waits.click();
  await expect.poll(() => slips.count()).toBe(0);
});

task('the same as a table, by keyboard', spring, async ({ page, app }) => {
  await page.goto(`${app.address}/work`);
  await headline(page);
  await page.keyboard.press('t');
  await page.getByRole('table', { name: /^Days of work week by week/ }).waitFor();
  expect(await page.getByRole('rowheader', { name: '14', exact: true }).count()).toBeGreaterThan(0);
});

task(
  'on a phone nothing runs off the side but the picture, which scrolls by itself',
  { ...spring, context: { viewport: { width: 390, height: 844 } } },
  async ({ page, app }) => {
    await page.goto(`${app.address}/work`);
    await page.locator('.skyline').waitFor();
    const over = await page.evaluate(() => {
      const { document } = globalThis as never as {
        document: { documentElement: { scrollWidth: number; clientWidth: number } };
      };
      return document.documentElement.scrollWidth - document.documentElement.clientWidth;
    });
    expect(over).toBeLessThanOrEqual(0);
  },
);
