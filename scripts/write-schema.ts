// Writes what is written from the program itself: docs/schema (what --json prints, as JSON Schema) and docs/findings.md. A test holds them to it.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { findingsPage, schemaFiles } from '@leywright/api';

const docs = join(import.meta.dirname, '..', 'docs');
mkdirSync(join(docs, 'schema'), { recursive: true });
for (const [name, text] of schemaFiles()) writeFileSync(join(docs, 'schema', name), text);
writeFileSync(join(docs, 'findings.md'), findingsPage());
