/** A farm as a folder of plain files, or as a zip of them. Never writes over anything. */
import { mkdir, readdir, stat, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { writeFarmFolder, zipFolder } from '@leywright/book';
import { parseFarmWish } from '../arguments.ts';
import { openFarm } from '../farm/open-farm.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { said } from '../words.ts';

export async function exportCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 1, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { words, data, to, json, today } = parsed.wish;
  if (to === null) return refuse(io, [said.needsTo]);
  if (await isTaken(to)) return refuse(io, [said.toTaken(to)]);
  const opened = await openFarm({ name: words[0], data, json, today }, io);
  if (typeof opened === 'number') return opened;
  const files = writeFarmFolder(opened.described(), opened.entries);
  try {
    if (to.endsWith('.zip')) await writeFile(to, zipFolder(files), { flag: 'wx' });
    else await writeAll(to, files);
  } catch (error) {
    return refuse(io, [said.cannotWrite(to, error instanceof Error ? error.message : String(error))]);
  }
  if (json) printJson(io, { farm: opened.farm.about.id, files: [...files.keys()], to: resolve(to) });
  else io.out(`${opened.farm.about.name}: ${files.size} files in ${to}.`);
  return 0;
}

/** A folder that is there and empty may be filled. */
async function isTaken(path: string): Promise<boolean> {
  const found = await stat(path).catch(() => null);
  if (found === null) return false;
  return !found.isDirectory() || (await readdir(path)).length > 0;
}

async function writeAll(folder: string, files: ReadonlyMap<string, string>): Promise<void> {
  await mkdir(folder, { recursive: true });
  for (const [name, text] of files) await writeFile(join(folder, name), text, { flag: 'wx' });
}
