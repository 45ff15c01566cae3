// What the tasks read off a page, and ask the server beside it.
import type { Page } from 'playwright-core';
import type { RunningApp } from './browser.ts';

/** The page's first sentence, once the farm is open and the plan is worked out. */
export async function headline(page: Page): Promise<string> {
  await page.locator('h1:not(:has-text("Opening the farm"))').waitFor();
  return (await page.textContent('h1')) ?? '';
}

/** What the server answers of its newest farm. */
export async function jsonFrom<T>(app: RunningApp, path: string): Promise<T> {
  const { farms } = (await (await fetch(`${app.address}/api/farms`)).json()) as { farms: { id: string }[] };
  const answer = await fetch(`${app.address}/api/farms/${encodeURIComponent(farms[0]?.id ?? '')}${path}`);
  return (await answer.json()) as T;
}

export async function farmCount(app: RunningApp): Promise<number> {
  const { farms } = (await (await fetch(`${app.address}/api/farms`)).json()) as { farms: unknown[] };
  return farms.length;
}
