// Runs once before the browser tests: unpacks the browser, or says why there is none.
import { findBrowser } from './find-browser.ts';

export async function setup(): Promise<void> {
  const browser = await findBrowser();
  if (browser.kind === 'found') return;
  // The tests themselves fail on the build machine and are skipped at a desk; stopping here would hide all other results.
  const what = process.env['CI'] === 'true' ? 'fail' : 'are skipped';
  console.warn(`\n${browser.reason}\nThe browser tests ${what}.\n`);
}
