// Faults of accessibility on a page, as axe-core finds them.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeWindow {
  readonly document: object;
  readonly axe: {
    readonly run: (where: object, how: object) => Promise<{ readonly violations: readonly Violation[] }>;
  };
}
interface Violation {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** Faults in words: what, and the first places of it. Runs beside the page's own policy, which lets no foreign script in. */
export async function faultsOf(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe);
  const { violations } = await page.evaluate(() => {
    const { axe, document } = globalThis as never as AxeWindow;
    return axe.run(document, { resultTypes: ['violations'] });
  });
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.slice(0, 3).map((node) => `${id}: ${help}\n  ${node.html.slice(0, 200)}\n  ${node.failureSummary ?? ''}`),
  );
}
