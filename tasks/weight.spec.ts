// What a browser has to fetch before it can draw the first page, over a thin line.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';

const built = resolve(import.meta.dirname, '..', 'packages/web/dist');
const mostBytes = 250_000;

test('the first script of the pages is at most 250 kB packed; the worker comes after it', () => {
  const page = readFileSync(`${built}/index.html`, 'utf8');
  const scripts = [...page.matchAll(/(?:src|href)="\/?(assets\/[^"]+\.js)"/g)].map((match) => match[1] ?? '');
  expect(scripts.length).toBeGreaterThan(0);
  const bytes = scripts.reduce((sum, path) => sum + gzipSync(readFileSync(`${built}/${path}`)).length, 0);
  expect(bytes).toBeLessThanOrEqual(mostBytes);
  expect(page).not.toMatch(/<script(?![^>]*\ssrc=)|<style|\sstyle=/); // nothing inline: the pages' policy forbids it
});
