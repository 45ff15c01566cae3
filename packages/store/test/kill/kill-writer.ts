/** Kills a writer over and over while it writes, and looks after each time whether everything it was told is kept is there. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BookEnd, verifyBook } from '@leywright/book';
import { asId, type FarmId } from '@leywright/measures';
import { build } from 'esbuild';
import { openStore } from '../../src/index.ts';

export interface KillCount {
  readonly killed: number;
  /** Of them, while a sending had begun and was not yet acknowledged. */
  readonly killedInMidWrite: number;
  readonly acknowledged: number;
  readonly lost: number;
  /** Entries in the book at the end. */
  readonly kept: number;
  readonly verified: boolean;
}

interface Died {
  readonly acknowledged: readonly string[];
  readonly inMidWrite: boolean;
}

const farm = asId<FarmId>('killed');
const projectFolder = join(import.meta.dirname, '..', '..', '..', '..');

/** `random` gives a number from 0 to 1; `path` is a new file, else one in a folder that is taken away. */
export async function killWriter(times: number, random: () => number): Promise<KillCount> {
  const folder = mkdtempSync(join(tmpdir(), 'leywright-kill-'));
  const path = join(folder, 'killed.sqlite');
  try {
    const program = await bundledWriter();
    const acknowledged: string[] = [];
    let sofar: Book = { end: null, kept: new Set(), verified: true };
    let killedInMidWrite = 0;
    for (let run = 1; run <= times; run += 1) {
      const died = await runAndKill([program, path, String(run), String(1 + Math.floor(random() * 1e9))], random);
      acknowledged.push(...died.acknowledged);
      if (died.inMidWrite) killedInMidWrite += 1;
      sofar = await readOn(path, sofar);
    }
    const whole = await readOn(path, { end: null, kept: new Set(), verified: true });
    const lost = acknowledged.filter((id) => !whole.kept.has(id)).length;
    const verified = sofar.verified && whole.verified && sofar.kept.size === whole.kept.size;
    return {
      ...{ killed: times, killedInMidWrite, acknowledged: acknowledged.length, lost, kept: whole.kept.size },
      verified,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** As one file, so that a writer starts quickly. */
async function bundledWriter(): Promise<string> {
  const folder = join(projectFolder, 'node_modules', '.cache', 'leywright');
  mkdirSync(folder, { recursive: true });
  const outfile = join(folder, `kill-writer-${process.pid}.mjs`);
  await build({
    entryPoints: [join(import.meta.dirname, 'writer.ts')],
    ...{ bundle: true, platform: 'node', format: 'esm', target: 'node20', outfile, logLevel: 'silent' },
    external: ['@photostructure/sqlite', 'pg'],
    banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
  });
  process.once('exit', () => rmSync(outfile, { force: true }));
  return outfile;
}

/** Lets it be acknowledged a few times, waits a hair's breadth more, and kills it. */
function runAndKill(words: readonly string[], random: () => number): Promise<Died> {
  const killAfter = 1 + Math.floor(random() * 6);
  const hairMs = random() * 4;
  return new Promise((resolve, fail) => {
    const writer: ChildProcess = spawn(process.execPath, words, { stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    let complaint = '';
    let isAimed = false;
    writer.stderr?.on('data', (piece: Buffer) => {
      complaint += piece.toString();
    });
    writer.stdout?.on('data', (piece: Buffer) => {
      said += piece.toString();
      if (isAimed || said.split('acknowledged').length <= killAfter) return;
      isAimed = true;
      setTimeout(() => writer.kill('SIGKILL'), hairMs);
    });
    writer.once('close', (_code, signal) => {
      if (signal !== 'SIGKILL') fail(new Error(`The writer ended by itself: ${complaint}`));
      else resolve(diedSaying(said));
    });
  });
}

/** A last line without its end was being said when the writer died: the entries it names had been acknowledged to the writer, not yet to us. */
function diedSaying(said: string): Died {
  const lines = said.split('\n').slice(0, -1);
  return {
    acknowledged: lines.flatMap((line) => (line.startsWith('acknowledged ') ? line.split(' ').slice(1) : [])),
    inMidWrite: lines.at(-1) === 'begin',
  };
}

interface Book {
  readonly end: BookEnd | null;
  readonly kept: Set<string>;
  readonly verified: boolean;
}

/** Opens the file as the next start would, and follows the seals from where we left off. */
async function readOn(path: string, { end, kept, verified }: Book): Promise<Book> {
  const opened = await openStore(path);
  if (opened.kind !== 'open') throw new Error(`After a kill: ${JSON.stringify(opened.problem)}`);
  const entries = await opened.store.entriesAfter(farm, end?.seq ?? 0, 10_000_000);
  await opened.store.close();
  for (const { id } of entries) kept.add(id);
  const last = entries.at(-1) ?? end;
  return { end: last, kept, verified: verified && verifyBook(entries, end).ok };
}
