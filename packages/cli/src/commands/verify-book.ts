/** Whether the book of a farm is as it was written. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { problemSentence } from '@leywright/api';
import { readFarmFolder, readFarmZip, verifyBook } from '@leywright/book';
import { knownNames } from '@leywright/planner';
import { readFarmFiles } from '@leywright/server';
import { inspectBackup, storeFile } from '@leywright/store';
import { parseFarmWish } from '../arguments.ts';
import { backupSentence } from '../farm/backup-words.ts';
import { type FarmName, notRead, openFarm } from '../farm/open-farm.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { said } from '../words.ts';

interface Verified {
  readonly ok: boolean;
  readonly entries: number | null;
  readonly firstBad: { readonly seq: number; readonly how: keyof typeof breaches } | null;
}

export async function verifyBookCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseFarmWish(args, 1, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { words, data, json, today } = parsed.wish;
  const [name] = words;
  const file = storeFileNamed(name, data);
  if (file === null && name === undefined) return refuse(io, [said.noFarm]);
  const verified =
    file !== null
      ? await verifyFile(file, io)
      : data === null
        ? await verifyOnDisk(name ?? '', io)
        : await verifyInStore({ name, data, json, today }, io);
  if (typeof verified === 'number') return verified;
  const { ok, entries, firstBad } = verified;
  if (json) printJson(io, { ok, entries, firstBad: firstBad?.seq ?? null, why: firstBad?.how ?? null });
  else if (firstBad === null)
    io.out(`The book is as it was written: ${entries} entries, each sealed to the one before it.`);
  else io.out(`The book is broken at entry ${firstBad.seq}: ${breaches[firstBad.how]}.`);
  return ok ? 0 : 1;
}

/** A store or a backup, looked at as a whole: a file, a data folder, or --data without a farm. */
function storeFileNamed(name: string | undefined, data: string | null): string | null {
  if (name === undefined) return data === null ? null : join(data, storeFile);
  if (data !== null) return null;
  if (/\.(sqlite|db)$/i.test(name)) return name;
  const inFolder = join(name, storeFile);
  return existsSync(inFolder) ? inFolder : null;
}

/** All books of a file. */
async function verifyFile(path: string, io: Io): Promise<Verified | ExitCode> {
  const inspected = await inspectBackup(path);
  if (inspected.kind === 'sound') {
    const entries = inspected.farms.reduce((sum, farm) => sum + farm.entries, 0);
    return { ok: true, entries, firstBad: null };
  }
  const { problem } = inspected;
  if (problem.code === 'broken-book')
    return { ok: false, entries: null, firstBad: { seq: problem.seq, how: problem.how } };
  return refuse(io, [backupSentence(problem)]);
}

async function verifyOnDisk(path: string, io: Io): Promise<Verified | ExitCode> {
  const found = await readFarmFiles(path);
  if (found.kind === 'none') return refuse(io, [notRead[found.why](path)]);
  const reading =
    found.kind === 'zip' ? readFarmZip(found.bytes, knownNames()) : readFarmFolder(found.files, knownNames());
  const broken = reading.problems.find((problem) => problem.code === 'book-broken');
  if (broken !== undefined) {
    const how = String(broken.figures['how']);
    return {
      ok: false,
      entries: null,
      firstBad: { seq: Number(broken.figures['seq']), how: isBreach(how) ? how : 'changed' },
    };
  }
  if (reading.farm === null)
    return refuse(
      io,
      reading.problems.map((problem) => problemSentence(problem)),
    );
  return verified(reading.entries);
}

async function verifyInStore(asked: FarmName, io: Io): Promise<Verified | ExitCode> {
  const opened = await openFarm(asked, io);
  return typeof opened === 'number' ? opened : verified(opened.entries);
}

function verified(entries: Parameters<typeof verifyBook>[0]): Verified {
  const result = verifyBook(entries);
  return { ok: result.ok, entries: result.count, firstBad: result.ok ? null : result.firstBad };
}

const breaches = {
  changed: 'it is not what was sealed',
  missing: 'entries before it are not there',
  moved: 'it stands out of order',
  repeated: 'it stands there twice',
  'body-missing': 'what it said is gone, and no entry withdrew it',
} as const;

function isBreach(how: string): how is keyof typeof breaches {
  return Object.hasOwn(breaches, how);
}
