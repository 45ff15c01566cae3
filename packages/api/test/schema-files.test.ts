import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { schemaFiles } from '../src/schema-files.ts';

const folder = join(import.meta.dirname, '..', '..', '..', 'docs', 'schema');

test('docs/schema says exactly what --json prints: when a shape changes, run "npx tsx scripts/write-schema.ts"', () => {
  const files = schemaFiles();
  expect(readdirSync(folder).sort()).toEqual([...files.keys()].sort());
  for (const [name, text] of files) expect(readFileSync(join(folder, name), 'utf8'), name).toBe(text);
});
