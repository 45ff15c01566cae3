import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { findingsPage } from '../src/findings-page.ts';
import { schemaFiles } from '../src/schema-files.ts';

const docs = join(import.meta.dirname, '..', '..', '..', 'docs');

test('docs/schema says exactly what --json prints: when a shape changes, run "npx tsx scripts/write-schema.ts"', () => {
  const files = schemaFiles();
  expect(readdirSync(join(docs, 'schema')).sort()).toEqual([...files.keys()].sort());
  for (const [name, text] of files) expect(readFileSync(join(docs, 'schema', name), 'utf8'), name).toBe(text);
});

test('docs/findings.md says what the program says: when words change, run "npx tsx scripts/write-schema.ts"', () => {
  expect(readFileSync(join(docs, 'findings.md'), 'utf8')).toBe(findingsPage());
});
