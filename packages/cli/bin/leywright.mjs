#!/usr/bin/env node
// The `leywright` command. The program itself is built into ../dist by `npm run build` (or by `npm start` and `npm test`).
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const program = new URL('../dist/leywright.mjs', import.meta.url);
if (existsSync(fileURLToPath(program))) {
  await import(program.href);
} else {
  console.error(
    'The leywright command is not built yet: run "npm run build" in the project\'s folder, then the same command again.',
  );
  process.exitCode = 2;
}
