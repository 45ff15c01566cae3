/** Bad days of a disk: full, read-only, held by another program, torn. What was acknowledged stays, and what is wrong is said. */
import { spawnSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statfsSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { verifyBook } from '@leywright/book';
import { afterAll, afterEach, describe, expect, test } from 'vitest';
import { inspectBackup, openStore, type Store, StoreTrouble } from '../src/index.ts';
import { connectSqlite } from '../src/sqlite/connect.ts';
import { counter, entry, ours, receipt } from './entries.ts';

const folder = mkdtempSync(join(tmpdir(), 'leywright-trouble-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const nextName = counter('store');
const newPath = () => join(folder, `${nextName()}.sqlite`);

async function withFarm(path: string, count = 2): Promise<Store> {
  const opened = await openStore(path);
  if (opened.kind !== 'open') throw new Error(JSON.stringify(opened.problem));
  const entries = Array.from({ length: count }, (_, at) => entry(at + 1));
  await opened.store.foundFarm({ id: ours, name: 'Ours', sample: false, book: [], entries }, receipt);
  return opened.store;
}

async function troubleOf(work: Promise<unknown>): Promise<string> {
  try {
    await work;
    return 'none';
  } catch (error) {
    return error instanceof StoreTrouble ? error.code : String(error);
  }
}

/** Sends until the store says no; gives what it said and how many entries it had taken by then. */
async function fill(store: Store, from: number): Promise<{ readonly said: string; readonly taken: number }> {
  let taken = from - 1;
  for (;;) {
    const said = await troubleOf(
      store.appendEntries(ours, [entry(taken + 1, { reason: 'x'.repeat(20_000) })], receipt),
    );
    if (said !== 'none') return { said, taken };
    taken += 1;
  }
}

async function bookOf(store: Store): Promise<{ readonly count: number; readonly ok: boolean }> {
  const book = await store.entriesAfter(ours, 0, 100_000);
  return { count: book.length, ok: verifyBook(book).ok };
}

/** A disk of 2 MB of its own for each case; only where this machine lets us make one. */
function smallDisk(): { readonly at: string; readonly readOnly: () => void } | null {
  const at = mkdtempSync(join(folder, 'disk-'));
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=2m', 'tmpfs', at]).status !== 0) return null;
  disks.push(at);
  return { at, readOnly: () => void spawnSync('mount', ['-o', 'remount,ro', at]) };
}

const disks: string[] = [];
// Lazily: a closed file of SQLite may be held until its statements are collected.
const takeDisksAway = () => disks.splice(0).map((at) => spawnSync('umount', ['-l', at]));
const canMount = smallDisk() !== null;
takeDisksAway();

describe('a small disk', () => {
  afterEach(takeDisksAway);

  test.skipIf(!canMount)(
    'that is full is told as that; what was acknowledged stays, and it goes on when there is room',
    async () => {
      const disk = smallDisk();
      if (disk === null) throw new Error('no disk');
      const path = join(disk.at, 'farms.sqlite');
      const ballast = join(disk.at, 'ballast');
      writeFileSync(ballast, Buffer.alloc(600_000));
      const store = await withFarm(path);
      const { said, taken } = await fill(store, 3);
      expect([said, await bookOf(store)]).toEqual(['disk-full', { count: taken, ok: true }]);
      rmSync(ballast);
      expect((await store.appendEntries(ours, [entry(taken + 1)], receipt)).kind).toBe('appended');
      await store.close();
      expect(await inspectBackup(path)).toMatchObject({ kind: 'sound', farms: [{ entries: taken + 1 }] });
    },
  );

  test.skipIf(!canMount)('with no room for a backup says so, and leaves no half of one', async () => {
    const disk = smallDisk();
    if (disk === null) throw new Error('no disk');
    const path = join(disk.at, 'farms.sqlite');
    const store = await withFarm(path, 600);
    const { bavail, bsize } = statfsSync(disk.at);
    writeFileSync(join(disk.at, 'ballast'), Buffer.alloc(bavail * bsize - 40_000));
    const backup = join(disk.at, 'backup.sqlite');
    expect(await troubleOf(store.backupTo(backup))).toBe('disk-full');
    expect([existsSync(backup), existsSync(`${backup}.part`)]).toEqual([false, false]);
    expect(await bookOf(store)).toEqual({ count: 600, ok: true });
    await store.close();
  });

  test.skipIf(!canMount)('that may only be read is told as that', async () => {
    const disk = smallDisk();
    if (disk === null) throw new Error('no disk');
    const path = join(disk.at, 'farms.sqlite');
    const elsewhere = newPath();
    await (await withFarm(elsewhere)).close();
    copyFileSync(elsewhere, path);
    disk.readOnly();
    const opened = await openStore(path);
    expect(opened).toMatchObject({ kind: 'refused', problem: { code: 'read-only-store' } });
    expect(readFileSync(path).equals(readFileSync(elsewhere))).toBe(true);
  });
});

describe('a file', () => {
  test('held by another program is told as that after a wait, and is written when it is let go', async () => {
    const path = newPath();
    const store = await withFarm(path);
    const other = await connectSqlite(path);
    other.exec('begin immediate');
    expect(await troubleOf(store.appendEntries(ours, [entry(3)], receipt))).toBe('store-busy');
    other.exec('rollback');
    other.close();
    expect((await store.appendEntries(ours, [entry(3)], receipt)).kind).toBe('appended');
    await store.close();
  }, 20_000);

  test('whose log is torn anywhere opens with a book that verifies up to where it is whole', async () => {
    const path = newPath();
    const store = await withFarm(path, 1);
    for (let number = 2; number <= 40; number += 1) await store.appendEntries(ours, [entry(number)], receipt);
    const wholeLog = readFileSync(`${path}-wal`).length;
    for (const share of [0, 0.137, 0.5, 0.811, 0.999]) {
      const torn = newPath();
      copyFileSync(path, torn);
      copyFileSync(`${path}-wal`, `${torn}-wal`);
      truncateSync(`${torn}-wal`, Math.floor(wholeLog * share));
      const opened = await openStore(torn);
      if (opened.kind !== 'open') throw new Error(JSON.stringify(opened.problem));
      const farms = await opened.store.farms();
      if (farms.length > 0) expect((await bookOf(opened.store)).ok).toBe(true);
      await opened.store.close();
    }
    await store.close();
  });

  test('torn in half is refused and left as it is', async () => {
    const path = newPath();
    await (await withFarm(path, 500)).close();
    truncateSync(path, Math.floor(readFileSync(path).length / 2));
    const before = readFileSync(path);
    const opened = await openStore(path);
    expect(opened).toMatchObject({ kind: 'refused', problem: { code: 'damaged-database' } });
    expect(readFileSync(path).equals(before)).toBe(true);
  });
});
