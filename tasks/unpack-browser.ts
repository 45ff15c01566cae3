// Runs once before the browser tests: unpacks the browser, and stops the run where it must not go on without one.
import { findBrowser } from './find-browser.ts';

export async function setup(): Promise<void> {
  const browser = await findBrowser();
  if (browser.kind === 'found') return;
  // On the build machine a missing browser is a fault. At a desk the tests are reported as skipped, with the reason.
  if (process.env['CI'] === 'true') throw new Error(browser.reason);
  console.warn(`\n${browser.reason}\nThe browser tests are skipped.\n`);
}
