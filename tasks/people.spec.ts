// People come in by an invitation, and are refused what is not theirs.
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { bytesOfBase32, codeOf, stepAt } from '../packages/server/src/people/totp.ts';
import { faultsOf } from './axe-faults.ts';
import { command, task } from './browser.ts';

const farm = 'oddlethorpe-growers';
const password = 'leeks under snow';

/** The part of an invitation's link that opens it. */
const opening = (said: string) => /#\S+/.exec(said)?.[0] ?? '';
const links: Record<string, string> = {};

const invited = {
  farm: 'demo',
  today: '2027-06-08',
  words: ['--sign-in'],
  before: async (dataFolder: string) => {
    for (const [person, role] of [
      ['ruth', 'grower'],
      ['hanna', 'hand'],
    ] as const)
      links[person] = opening(await command(['people', 'invite', farm, person, '--role', role], dataFolder));
  },
};

async function takeUp(page: Page, address: string, person: string): Promise<void> {
  await page.goto(`${address}/invitation${links[person]}`);
  await page.getByLabel('A password of your own').fill(password);
  await page.getByRole('button', { name: 'Take it up' }).click();
  await page.getByText('Your password is set.').waitFor();
  expect(page.url()).not.toContain('#');
  await page.getByLabel('Name you sign in with').fill(person);
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
}

const statusOf = (page: Page, path: string) =>
  page.evaluate(async (asked) => (await fetch(asked)).status, `/api/farms/${farm}${path}`);

task('a grower comes in by an invitation and a second factor, and invites someone', invited, async ({ page, app }) => {
  await page.getByRole('heading', { name: 'Sign in to see the farm.' }).waitFor();
  expect(await faultsOf(page)).toEqual([]);
  await takeUp(page, app.address, 'ruth');
  await page.getByRole('heading', { name: 'Growers sign in with a second factor.' }).waitFor();
  await page.getByLabel('Your password').fill(password);
  await page.getByRole('button', { name: 'Begin' }).click();
  const secret = (await page.locator('.factor-key').textContent()) ?? '';
  await page.getByLabel('Six digits it shows').fill(codeOf(bytesOfBase32(secret), stepAt(Date.now())));
  await page.getByRole('button', { name: 'Turn it on' }).click();
  await page.getByRole('button', { name: 'I have written them down' }).waitFor();
  expect(await page.locator('.recovery-codes li').count()).toBe(10);
  await page.getByRole('button', { name: 'I have written them down' }).click();
  await page.getByRole('button', { name: 'Oddlethorpe Growers' }).click();
  await page.getByRole('menuitem', { name: 'People' }).click();
  await page.getByText('The second factor is on, 10 recovery codes left.').waitFor();
  await page.getByLabel('Name', { exact: true }).fill('Nils');
  await page.getByLabel('Signs in as').fill('nils');
  await page.getByRole('button', { name: 'Make a link' }).click();
  await page.locator('.invite-link code').waitFor();
  await page.getByText('Nils, hand: invited until').waitFor();
  expect(await faultsOf(page)).toEqual([]);
});

task('a hand comes in, is refused what is not theirs, and is out when their account ends', invited, async (tools) => {
  const { page, app } = tools;
  await page.getByLabel('Name you sign in with').fill('hanna');
  await page.getByLabel('Password').fill('wrong word, all wrong');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.getByText('Name or password is not right.').waitFor();
  await takeUp(page, app.address, 'hanna');
  await page.getByRole('button', { name: 'Oddlethorpe Growers' }).waitFor();
  expect(await statusOf(page, '/findings')).toBe(200);
  for (const path of ['/households', '/export', '/invitations']) expect(await statusOf(page, path), path).toBe(403);
  await page.goto(`${app.address}/people`);
  await page.getByText('hanna, hand.').waitFor();
  expect(await page.getByRole('button', { name: 'Make a link' }).count()).toBe(0);
  await command(['people', 'end', farm, 'hanna'], app.dataFolder);
  await page.reload();
  await page.getByRole('heading', { name: 'Sign in to see the farm.' }).waitFor();
});
