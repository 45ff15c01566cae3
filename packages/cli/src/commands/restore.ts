/** Puts a backup back. A store that is there already stays, unless --replace lets it be put aside under another name. */
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { restoreStore } from '@leywright/store';
import { parseFarmWish } from '../arguments.ts';
import { backupSentence, farmsSentence } from '../farm/backup-words.ts';
import { storeAddress } from '../farm/store-address.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { said } from '../words.ts';

export async function restoreCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 1, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { words, data, json, replace } = parsed.wish;
  const [backup] = words;
  const address = storeAddress(data, io.env);
  const missing = [...(backup === undefined ? [said.needsBackup] : []), ...(address === null ? [said.needsData] : [])];
  if (backup === undefined || address === null) return refuse(io, missing);
  try {
    if (address.kind === 'file') mkdirSync(dirname(address.url), { recursive: true });
    const aside = replace ? `${address.url}.before-${Date.now()}` : null;
    const restored = await restoreStore(backup, address.url, aside);
    if (restored.kind === 'refused') return refuse(io, [backupSentence(restored.problem)]);
    if (json) printJson(io, { farms: restored.farms, aside: restored.aside });
    else {
      io.out(`Put back: ${farmsSentence(restored.farms)}.`);
      if (restored.aside !== null) io.out(`The store that was there is now ${restored.aside}.`);
    }
    return 0;
  } catch (error) {
    return refuse(io, [said.cannotWrite(address.kind === 'file' ? address.url : 'the database', messageOf(error))]);
  }
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
