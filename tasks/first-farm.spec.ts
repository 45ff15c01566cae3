// A farm begun from nothing: one sentence with blanks gives ten years in pencil.
import { expect } from 'vitest';
import { task } from './browser.ts';
import { farmCount, headline, jsonFrom } from './page-words.ts';

const nothing = { today: '2027-02-10' } as const;

task('a farm is begun from nothing and has a plan in pencil', nothing, async ({ page, app }) => {
  expect(await headline(page)).toContain('Ten years of bare ground.');
  await page.getByLabel('Number of plots').fill('6');
  expect(await page.locator('.plot-letter').allTextContents()).toEqual(['A', 'B', 'C', 'D', 'E', 'F']);
  await page.getByRole('button', { name: 'Pencil in ten years' }).click();
  const left = await page.locator('.problems li').allTextContents();
  expect(left).toHaveLength(5);
  expect(await farmCount(app)).toBe(0);
  await page.getByLabel('Area, ha').fill('5.2');
  await page.getByLabel('Nearest town').fill('Cambridge');
  await page.getByLabel('Items in a box').fill('7');
  await page.getByLabel('Number of households').fill('120');
  await page.getByLabel('Weeks with a box in a year').fill('49');
  await page.getByRole('button', { name: 'Pencil in ten years' }).click();
  await page.getByRole('heading', { name: 'The box', exact: true }).waitFor();
  expect(await page.textContent('.state')).toBe('In pencil');
  const plan = await jsonFrom<{ ground: unknown[]; supply: { households: number } }>(app, '/plan');
  expect(plan.ground).toHaveLength(6);
  expect(plan.supply.households).toBe(120);
});

task('a place that is not known is said, and the latitude does instead', nothing, async ({ page }) => {
  await headline(page);
  const blanks = {
    'Number of plots': '4',
    'Area, ha': '2',
    'Nearest town': 'Nowhere-under-Wold',
    'Items in a box': '6',
  };
  const more = { 'Number of households': '40', 'Weeks with a box in a year': '40' };
  for (const [label, text] of Object.entries({ ...blanks, ...more })) await page.getByLabel(label).fill(text);
  await page.keyboard.press('Enter');
  await page.getByText('No place "Nowhere-under-Wold" is known here.').waitFor();
  await page.getByLabel('Nearest town').fill('52.3');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'The box', exact: true }).waitFor();
});

task('the sample farm opens from an empty store', nothing, async ({ page }) => {
  await headline(page);
  await page.getByRole('button', { name: 'Open the sample' }).click();
  await page.getByRole('button', { name: 'Oddlethorpe Growers' }).waitFor();
  expect(await page.textContent('.sample-line')).toContain('invented');
});
