// Two phones in the field: records with no signal, a browser that is killed, the same harvest recorded twice, and a record corrected later.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { browserReason, openBrowser, openPhone, type RunningApp, startApp } from './browser.ts';
import { jsonFrom } from './page-words.ts';

const farm = { farm: 'sample', today: '2027-06-08' } as const;
const phoneSize = { viewport: { width: 390, height: 844 }, hasTouch: true };

interface BookEntry {
  readonly id: string;
  readonly amends: string | null;
  readonly reason: string | null;
  readonly body: { readonly kind: string; readonly what?: string; readonly count?: number; readonly grossKg?: number };
}

/** Entries that came in after the sample farm was opened. */
async function entriesSince(app: RunningApp, seq: number): Promise<readonly BookEntry[]> {
  return (await jsonFrom<{ entries: readonly BookEntry[] }>(app, `/entries?after=${seq}`)).entries;
}

async function lastSeq(app: RunningApp): Promise<number> {
  return (await jsonFrom<{ lastSeq: number }>(app, '/entries?after=0')).lastSeq;
}

async function openDay(page: Page, app: RunningApp): Promise<void> {
  await page.goto(`${app.address}/day`);
  await page.locator('.job').first().waitFor();
}

/** In the page, so that the worker's own requests go out of reach too. */
const swEnabled = 'navigator.serviceWorker.ready.then(() => true)';

async function sayISaw(page: Page, what: string, plants: readonly number[]): Promise<void> {
  await page.getByRole('link', { name: 'I saw…' }).click();
  await page.getByRole('textbox', { name: 'What it was' }).fill(what);
  if (plants.length === 0) await page.getByRole('button', { name: 'None of the ten' }).click();
  for (const plant of plants) await page.getByRole('button', { name: `Plant ${plant} has it` }).click();
  await page.getByRole('button', { name: 'Record it' }).click();
  await page.getByRole('heading', { name: 'Recorded', exact: true }).waitFor();
}

function phoneTask(name: string, steps: (app: RunningApp, folder: string) => Promise<void>): void {
  test(name, async (context) => {
    if (browserReason !== null) {
      if (process.env['CI'] === 'true') throw new Error(browserReason);
      context.skip(browserReason);
    }
    const app = await startApp(farm);
    const folder = mkdtempSync(join(tmpdir(), 'leywright-phone-'));
    try {
      await steps(app, folder);
    } finally {
      await app.stop();
      rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    }
  }, 180_000);
}

describe('on a phone in the field', () => {
  phoneTask(
    'what is recorded with no signal outlives a killed browser, and is on a second device once there is signal',
    async (app, folder) => {
      const before = await lastSeq(app);
      const phone = await openPhone(folder);
      await openDay(phone.page, app);
      await phone.page.evaluate(swEnabled);
      await phone.page.context().setOffline(true);
      await sayISaw(phone.page, 'mealy aphid', [2, 5, 9]);
      await phone.page.getByText('kept here, not sent yet').waitFor();
      await phone.kill();

      const again = await openPhone(folder);
      await again.page.context().setOffline(true);
      await openDay(again.page, app); // from cold, with no signal
      await again.page.getByText('Saw mealy aphid on 3 of 10 plants').waitFor();
      await sayISaw(again.page, 'flea beetle', []);
      expect(await entriesSince(app, before)).toEqual([]);

      const browser = await openBrowser();
      const other = await browser.newPage(phoneSize);
      await openDay(other, app);
      await again.page.context().setOffline(false);
      await other.getByText('Saw flea beetle on 0 of 10 plants').waitFor({ timeout: 30_000 });
      const came = await entriesSince(app, before);
      expect(came.map(({ body }) => [body.what, body.count])).toEqual([
        ['mealy aphid', 3],
        ['flea beetle', 0],
      ]);
      await browser.close();
      await again.close();
    },
  );

  phoneTask(
    'a planned job is recorded in two taps, another phone sees it within two seconds, and undo strikes it out',
    async (app) => {
      const browser = await openBrowser();
      const [one, other] = [await browser.newPage(phoneSize), await browser.newPage(phoneSize)];
      await openDay(one, app);
      await openDay(other, app);
      await other.evaluate('new Promise((done) => setTimeout(done, 1500))'); // its wait for news has begun
      const before = await lastSeq(app);
      await one
        .getByRole('link', { name: /^Record as done: (Cut|Lift)/ })
        .first()
        .click();
      await one.getByRole('button', { name: 'Record it' }).click();
      await one.getByRole('button', { name: /^Undo/ }).waitFor();
      const recordedMs = Date.now();
      await other.locator('.record-list li').first().getByText('sent').waitFor();
      const seenAfterMs = Date.now() - recordedMs;
      console.log(`seen on the other phone after ${seenAfterMs} ms`);
      const made = await entriesSince(app, before);
      expect(made.map(({ body }) => body.kind).sort()).toEqual(['harvest', 'job-done']);
      await one.getByRole('button', { name: /^Undo/ }).click();
      await one.getByRole('heading', { name: 'Taken back' }).waitFor();
      await expect.poll(async () => (await entriesSince(app, before)).length).toBe(4);
      const strikes = (await entriesSince(app, before)).slice(2);
      expect(strikes.map(({ body, amends }) => [body.kind, amends])).toEqual(made.map(({ id }) => ['struck-out', id]));
      expect(seenAfterMs).toBeLessThan(2000);
      await browser.close();
    },
  );

  phoneTask('a record is corrected later by an amendment with its reason, and both stay in the book', async (app) => {
    const browser = await openBrowser();
    const page = await browser.newPage(phoneSize);
    await openDay(page, app);
    const before = await lastSeq(app);
    await page
      .getByRole('link', { name: /^Record as done: (Cut|Lift)/ })
      .first()
      .click();
    await page.getByRole('textbox', { name: 'Kilos' }).fill('46.5');
    await page.getByRole('button', { name: 'Record it' }).click();
    await page.getByRole('link', { name: 'Correct it' }).click({ timeout: 20_000 }); // the ten seconds are over
    await page.getByRole('button', { name: 'Record it' }).click();
    await page.getByText('Say why').waitFor();
    await page.getByRole('textbox', { name: 'Kilos' }).fill('40');
    await page.getByRole('textbox', { name: 'Because' }).fill('the crate was weighed with its lid');
    await page.getByRole('button', { name: 'Record it' }).click();
    await page.getByText('corrected: the crate was weighed with its lid').first().waitFor();
    await expect.poll(async () => (await entriesSince(app, before)).length).toBe(3);
    const kept = await entriesSince(app, before);
    const harvests = kept.filter(({ body }) => body.kind === 'harvest');
    expect(harvests.map(({ body, reason }) => [body.grossKg, reason])).toEqual([
      [46.5, null],
      [40, 'the crate was weighed with its lid'],
    ]);
    expect(harvests[1]?.amends).toBe(harvests[0]?.id);
    await browser.close();
  });

  phoneTask('two phones with no signal record the same harvest: both are kept, and it is asked about', async (app) => {
    const browser = await openBrowser();
    const contexts = [await browser.newContext(phoneSize), await browser.newContext(phoneSize)];
    const before = await lastSeq(app);
    for (const [at, context] of contexts.entries()) {
      const page = await context.newPage();
      await openDay(page, app);
      await context.setOffline(true);
      await page.getByRole('link', { name: 'I did…' }).click();
      await page.getByRole('combobox', { name: 'What was done' }).selectOption('lifted');
      await page.getByRole('combobox', { name: 'Crop' }).selectOption({ index: 1 });
      await page.getByRole('textbox', { name: 'Kilos' }).fill(at === 0 ? '40' : '41,5');
      await page.getByRole('button', { name: 'Record it' }).click();
      await page.getByText('kept here, not sent yet').waitFor();
    }
    for (const context of contexts) await context.setOffline(false);
    await expect.poll(async () => (await entriesSince(app, before)).length, { timeout: 30_000 }).toBe(2);
    expect((await entriesSince(app, before)).map(({ body }) => body.grossKg).sort()).toEqual([40, 41.5]);
    const { findings } = await jsonFrom<{ findings: readonly { code: string; sentence: string }[] }>(app, '/findings');
    const asked = findings.filter(({ code }) => code === 'harvest-perhaps-twice');
    expect(asked).toHaveLength(1);
    expect(asked[0]?.sentence).toContain('Both are counted');
    await browser.close();
  });

  phoneTask(
    'the browser offers to install it: a manifest, its pictures, and an app that starts with no signal',
    async (app, folder) => {
      const phone = await openPhone(folder);
      await openDay(phone.page, app);
      await phone.page.evaluate(swEnabled);
      const session = await phone.page.context().newCDPSession(phone.page);
      const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
      expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito')).toEqual([]);
      const { errors } = await session.send('Page.getAppManifest');
      expect(errors).toEqual([]);
      await phone.close();
    },
  );
});
