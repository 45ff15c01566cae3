// The same by keyboard alone: no pointer is used in this file.
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { task } from './browser.ts';
import { folderWithMistakes, mistakes } from './mistakes.ts';
import { headline } from './page-words.ts';

const mostTabs = 120;

/** What has the focus: its accessible label, or its text. */
function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const { document } = globalThis as never as { document: { activeElement: Focused | null } };
    const element = document.activeElement;
    return (element?.getAttribute('aria-label') ?? element?.textContent ?? '').trim().slice(0, 120);
  });
}

interface Focused {
  readonly textContent: string | null;
  readonly getAttribute: (name: string) => string | null;
}

/** Tabs on until something so called has the focus. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  const passed: string[] = [];
  for (let tabs = 0; tabs < mostTabs; tabs += 1) {
    await page.keyboard.press('Tab');
    const now = await focused(page);
    if (name.test(now)) return;
    passed.push(now);
  }
  throw new Error(`Nothing called ${name} is reached by Tab. Passed: ${passed.join(' | ')}`);
}

task('by keyboard: a farm is begun from one sentence', { today: '2027-02-10' }, async ({ page }) => {
  await headline(page);
  await tabTo(page, /^Number of plots$/);
  for (const text of ['6', '5.2', 'Cambridge', '7', '120', '49']) {
    await page.keyboard.type(text);
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'The box', exact: true }).waitFor();
});

task(
  'by keyboard: from the count to the finding, its sum, and back',
  { farm: 'sample', today: '2027-06-08' },
  async ({ page }) => {
    await headline(page);
    await tabTo(page, /to put right$/);
    await page.keyboard.press('Enter');
    await tabTo(page, /^0\.31 ha$/);
    await page.keyboard.press('Enter');
    await page.locator('.side-sheet').getByText('Bare days on Far Ridding').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.side-sheet').count()).toBe(0);
    expect(await focused(page)).toBe('0.31 ha');
  },
);

task('by keyboard: week, stand, table and settings', { farm: 'sample', today: '2027-06-08' }, async ({ page }) => {
  await headline(page);
  await tabTo(page, /^Week of the year$/);
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => new URL(page.url()).searchParams.get('week')).toBe('2027-w24');
  await tabTo(page, /^Undersown ley, Ash Piece/);
  const stand = await focused(page);
  await page.keyboard.press('ArrowRight');
  expect(await focused(page)).not.toBe(stand);
  await page.keyboard.press('Enter');
  await page.locator('.side-sheet').getByText('How sure').waitFor();
  await page.keyboard.press('Escape');
  await expect.poll(() => page.locator('.side-sheet').count()).toBe(0);
  await page.keyboard.press('t');
  await page.getByRole('button', { name: /Hide the table/ }).waitFor();
  await page.keyboard.press('Home');
  await tabTo(page, /^Oddlethorpe Growers$/);
  await page.keyboard.press('Enter');
  await page.getByRole('menuitem', { name: 'Settings' }).waitFor();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: /^Settings/ }).waitFor();
  await tabTo(page, /^$/); // the screen's light, a set of radio buttons
  await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => page.getByRole('radio', { name: 'acres', exact: true }).isChecked()).toBe(true);
  await page.keyboard.press('Shift+Tab');
  await tabTo(page, /^Ground$/);
  await page.keyboard.press('Enter');
  await page.getByText('2.68 acres').first().waitFor();
});

task('by keyboard: a folder is mended and taken in', { today: '2027-06-08' }, async ({ page }) => {
  const { folder, takeAway } = folderWithMistakes();
  try {
    await headline(page);
    await tabTo(page, /^Choose a folder$/);
    const chooser = page.waitForEvent('filechooser');
    await focused(page); // one turn of the page, so that the browser is listening for the chooser
    await page.keyboard.press('Enter');
    await (await chooser).setFiles(folder);
    await page.getByRole('heading', { name: /^12 things to mend/ }).waitFor();
    for (let mended = 0; mended < mistakes.length; mended += 1) {
      const label = await focused(page);
      const mistake = mistakes.find(
        ({ file, line, column }) =>
          label.includes(file) && label.endsWith(column) && (line === null || label.includes(`line ${line},`)),
      );
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type(mistake?.right ?? `no mistake at ${label}`);
      if (mended < mistakes.length - 1) await tabTo(page, /^What should stand at/);
    }
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: /^Oddlethorpe Growers can be taken in/ }).waitFor();
    await expect.poll(() => focused(page)).toBe('Take it in');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'The box', exact: true }).waitFor();
  } finally {
    takeAway();
  }
});
