/** Writes the sample farm and the clean farm as folders: `npx tsx scripts/make-demo.ts`. Byte for byte the same on every machine. */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeFarmFolder } from '@leywright/book';
import { cleanFarm, sampleBook, sampleFarm, sampleToday } from '@leywright/farm-kit';

const keptByHand = ['README.md', 'question.md', 'expected.json'];

function write(name: string, files: ReadonlyMap<string, string>): void {
  const folder = fileURLToPath(new URL(`../${name}`, import.meta.url));
  mkdirSync(folder, { recursive: true });
  for (const old of readdirSync(folder))
    if (!files.has(old) && !keptByHand.includes(old)) rmSync(join(folder, old), { recursive: true });
  for (const [file, text] of files) writeFileSync(join(folder, file), text);
  console.log(`${files.size} files in ${folder}`);
}

const sample = sampleFarm(sampleToday);
write('demo', writeFarmFolder(sample, sampleBook(sample, sampleToday)));
write('scenarios/a-farm-with-nothing-to-find', writeFarmFolder(cleanFarm(), []));
