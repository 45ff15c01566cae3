/** Writes the tables of docs/farm-folder.md from the columns that read and write the files: `npx tsx scripts/write-farm-folder-page.ts`. */
import { readFileSync, writeFileSync } from 'node:fs';
import { describeFolder } from '@leywright/book';

const page = new URL('../docs/farm-folder.md', import.meta.url);
const beginning = '<!-- From here on written by scripts/write-farm-folder-page.ts -->\n';
const [words = ''] = readFileSync(page, 'utf8').split(beginning);
writeFileSync(page, `${words}${beginning}\n${describeFolder()}`);
