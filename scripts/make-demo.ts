/** Writes the sample farm as a folder: `npx tsx scripts/make-demo.ts`. The same farm, byte for byte, on every machine. */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeFarmFolder } from '@leywright/book';
import { sampleBook, sampleFarm, sampleToday } from '@leywright/farm-kit';

const folder = fileURLToPath(new URL('../demo', import.meta.url));
const farm = sampleFarm(sampleToday);
const files = writeFarmFolder(farm, sampleBook(farm, sampleToday));

mkdirSync(folder, { recursive: true });
for (const old of readdirSync(folder)) if (!files.has(old) && old !== 'README.md') rmSync(join(folder, old));
for (const [name, text] of files) writeFileSync(join(folder, name), text);
console.log(`${files.size} files in ${folder}`);
