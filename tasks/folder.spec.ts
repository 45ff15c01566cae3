// A farm folder with twelve mistakes: all are told at once, each in its place; nothing is kept until all are mended.
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { task } from './browser.ts';
import { folderWithMistakes, type Mistake, mistakes } from './mistakes.ts';
import { farmCount, headline, jsonFrom } from './page-words.ts';

const nothing = { today: '2027-06-08' } as const;

/** Where a mistake is written over. */
function writing(page: Page, { file, line, column }: Mistake) {
  const place = [file, line === null ? null : `line ${line}`, column].filter((part) => part !== null).join(', ');
  return page.getByLabel(`What should stand at ${place}`, { exact: true });
}

task('a folder with twelve mistakes is mended on the page and taken in', nothing, async ({ page, app }) => {
  const { folder, takeAway } = folderWithMistakes();
  try {
    await headline(page);
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Choose a folder' }).click(),
    ]);
    await chooser.setFiles(folder);
    await page.getByRole('heading', { name: /^12 things to mend/ }).waitFor();
    for (const mistake of mistakes) expect(await writing(page, mistake).inputValue()).toBe(mistake.wrong);
    const told = (await page.locator('.mend-line.stops').allTextContents()).join('\n');
    expect(told).toContain('north-field');
    await page.getByRole('button', { name: 'north-field', exact: true }).click();
    const [last, ...others] = [...mistakes].reverse();
    for (const mistake of others) await writing(page, mistake).fill(mistake.right);
    await page.getByRole('button', { name: 'Check again' }).click();
    await page.getByRole('heading', { name: /^One thing to mend/ }).waitFor();
    expect(await farmCount(app)).toBe(0);
    if (last !== undefined) await writing(page, last).fill(last.right);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Oddlethorpe Growers can be taken in.' }).waitFor();
    expect(await farmCount(app)).toBe(0);
    await page.getByRole('button', { name: 'Take it in' }).click();
    await page.getByRole('heading', { name: 'The box', exact: true }).waitFor();
    expect(await farmCount(app)).toBe(1);
    const plan = await jsonFrom<{ ground: { area: { grossM2: number } }[] }>(app, '/plan');
    expect(plan.ground[0]?.area.grossM2).toBe(10840);
  } finally {
    takeAway();
  }
});
