import { expect, test } from 'vitest';
import { browserReason, openBrowser } from './browser.ts';

test('the browser starts and draws letters, each with its own width', async (context) => {
  if (browserReason !== null) {
    if (process.env['CI'] === 'true') throw new Error(browserReason);
    context.skip(browserReason);
  }
  const browser = await openBrowser();
  try {
    const page = await browser.newPage();
    await page.setContent('<h1>Leys and covers</h1><p><span id="wide">WWWW</span> <span id="narrow">iiii</span></p>');
    const widthsPx = await page.evaluate(() =>
      ['wide', 'narrow'].map((id) => (globalThis as never as BrowserWindow).document.getElementById(id).offsetWidth),
    );
    expect(await page.textContent('h1')).toBe('Leys and covers');
    expect(widthsPx[1]).toBeGreaterThan(0); // without any font a letter has no width
    expect(widthsPx[0]).toBeGreaterThan((widthsPx[1] ?? 0) * 1.5);
    expect((await page.screenshot()).length).toBeGreaterThan(2000);
  } finally {
    await browser.close();
  }
});

/** The little of the browser's own world this file needs; the tests are typed for Node. */
interface BrowserWindow {
  readonly document: { readonly getElementById: (id: string) => { readonly offsetWidth: number } };
}
