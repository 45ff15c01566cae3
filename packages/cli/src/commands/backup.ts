/** The whole store into one file, while it is in use. */
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { refusalSentence } from '@leywright/api';
import { backupName, openStore, StoreTrouble } from '@leywright/store';
import { parseFarmWish } from '../arguments.ts';
import { backupSentence, lookOver } from '../farm/backup-words.ts';
import { storeAddress } from '../farm/store-address.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { said } from '../words.ts';

export async function backupCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 0, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { data, to, json, today } = parsed.wish;
  const address = storeAddress(data, io.env);
  const missing = [...(address === null ? [said.needsData] : []), ...(to === null ? [said.needsTo] : [])];
  if (address === null || to === null) return refuse(io, missing);
  if (address.kind === 'file' && !existsSync(address.url)) return refuse(io, [said.noStore(address.url)]);
  const path = existsSync(to) && statSync(to).isDirectory() ? join(to, backupName(today)) : to;
  if (existsSync(path)) return refuse(io, [said.toTaken(path)]);
  return (await copyStore(address.url, path, io)) ?? sayBackedUp(path, json, io);
}

/** Null when the copy is there. */
async function copyStore(url: string, path: string, io: Io): Promise<ExitCode | null> {
  const opened = await openStore(url);
  if (opened.kind === 'refused') return refuse(io, [backupSentence(opened.problem)]);
  try {
    await opened.store.backupTo(path);
    return null;
  } catch (error) {
    return refuse(io, [said.cannotWrite(path, whyNot(error))]);
  } finally {
    await opened.store.close();
  }
}

async function sayBackedUp(path: string, json: boolean, io: Io): Promise<ExitCode> {
  const looked = await lookOver(path, io);
  if (typeof looked === 'number') return looked;
  if (json) printJson(io, { to: path, farms: looked.farms });
  else io.out(`The store is in ${path}: ${looked.sentence}. Its books were read back and are as they were written.`);
  return 0;
}

function whyNot(error: unknown): string {
  if (error instanceof StoreTrouble) return refusalSentence(error.code, {});
  return error instanceof Error ? error.message : String(error);
}
