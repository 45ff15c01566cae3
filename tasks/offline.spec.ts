// The server goes out of reach while a farm is open: the farm stays in view, and what is changed goes over when it is back.
import { expect } from 'vitest';
import { task } from './browser.ts';
import { headline, jsonFrom } from './page-words.ts';

interface SettingEntry {
  readonly body: { readonly value: { readonly shows: { readonly area: string } } };
}

task(
  'a change made while the server is out of reach waits, and is sent when it is back',
  {
    farm: 'sample',
    today: '2027-06-08',
  },
  async ({ page, app }) => {
    await headline(page);
    const lookAgain = () => page.evaluate("window.dispatchEvent(new Event('online'))");
    await page.context().route('**/api/**', (route) => route.abort());
    await lookAgain();
    await page.getByText('The server is not reached').waitFor();
    await page.getByRole('button', { name: 'Oddlethorpe Growers' }).click();
    await page.getByRole('menuitem', { name: 'Settings' }).click();
    await page.getByRole('radio', { name: 'acres', exact: true }).check();
    await page.getByText('One change waits to be sent').waitFor();
    await page.getByRole('link', { name: 'Ground', exact: true }).first().click();
    await page.getByText('2.68 acres').first().waitFor();
    await page.context().unroute('**/api/**');
    await lookAgain();
    await expect.poll(() => page.getByText('The server is not reached').count()).toBe(0);
    const { lastSeq } = await jsonFrom<{ lastSeq: number }>(app, '/entries?after=0');
    const { entries } = await jsonFrom<{ entries: readonly SettingEntry[] }>(app, `/entries?after=${lastSeq - 1}`);
    expect(entries.map(({ body }) => body.value.shows.area)).toEqual(['acres']);
    await page.reload();
    await page.getByText('2.68 acres').first().waitFor();
  },
);
