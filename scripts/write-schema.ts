// Writes docs/schema: what each command prints on --json, as JSON Schema. A test holds the files to the shapes.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { schemaFiles } from '@leywright/api';

const folder = join(import.meta.dirname, '..', 'docs', 'schema');
mkdirSync(folder, { recursive: true });
for (const [name, text] of schemaFiles()) writeFileSync(join(folder, name), text);
