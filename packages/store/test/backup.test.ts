import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { verifyBook } from '@leywright/book';
import { Kysely } from 'kysely';
import { afterAll, describe, expect, test } from 'vitest';
import { backupName, backupsToTakeAway, inspectBackup, openStore, restoreStore, type Store } from '../src/index.ts';
import { migrations, newestMigration } from '../src/schema/migrations.ts';
import type { StoreTables } from '../src/schema/tables.ts';
import { connectSqlite } from '../src/sqlite/connect.ts';
import { nodeSqliteDialect } from '../src/sqlite/dialect.ts';
import { counter, entry, entryId, ours, receipt, theirs } from './entries.ts';

const folder = mkdtempSync(join(tmpdir(), 'leywright-backup-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const nextName = counter('file');
const newPath = () => join(folder, `${nextName()}.sqlite`);

async function open(path: string): Promise<Store> {
  const opened = await openStore(path);
  if (opened.kind !== 'open') throw new Error(JSON.stringify(opened.problem));
  return opened.store;
}

/** Two farms: 300 entries of ours, one of them withdrawn since; two of theirs. */
async function filled(path: string): Promise<Store> {
  const store = await open(path);
  const entries = Array.from({ length: 300 }, (_, at) => entry(at + 1));
  await store.foundFarm({ id: ours, name: 'Ours', sample: false, book: [], entries }, receipt);
  await store.appendEntries(ours, [entry(301, { body: { kind: 'withdrawn', entry: entryId(7) } })], receipt);
  const other = [entry(1, { farm: theirs }), entry(2, { farm: theirs })];
  await store.foundFarm({ id: theirs, name: 'Theirs', sample: false, book: [], entries: other }, receipt);
  return store;
}

describe('a backup', () => {
  test('put back is the same store, farm by farm and seal by seal', async () => {
    const store = await filled(newPath());
    const [backup, path] = [newPath(), newPath()];
    await store.backupTo(backup);
    expect(await restoreStore(backup, path, null)).toMatchObject({
      kind: 'restored',
      farms: [
        { id: ours, name: 'Ours', entries: 301 },
        { id: theirs, name: 'Theirs', entries: 2 },
      ],
    });
    const restored = await open(path);
    expect(await restored.farms()).toEqual(await store.farms());
    for (const farm of [ours, theirs]) {
      const book = await restored.entriesAfter(farm, 0, 1000);
      expect(book).toEqual(await store.entriesAfter(farm, 0, 1000));
      expect(verifyBook(book).ok).toBe(true);
    }
    await restored.appendEntries(ours, [entry(302)], receipt); // and goes on
    await restored.close();
    await store.close();
  });

  test('made while entries come in holds the book as it was at one moment', async () => {
    const store = await filled(newPath());
    const backup = newPath();
    const copying = store.backupTo(backup);
    for (let number = 302; number <= 330; number += 1) await store.appendEntries(ours, [entry(number)], receipt);
    await copying;
    expect(await inspectBackup(backup)).toMatchObject({ kind: 'sound' });
    await store.close();
  });

  test('is read where nothing may be written, and is one file', async () => {
    const store = await filled(newPath());
    const backup = newPath();
    await store.backupTo(backup);
    await store.close();
    chmodSync(backup, 0o444);
    expect(await inspectBackup(backup)).toMatchObject({ kind: 'sound', migration: newestMigration });
    expect([existsSync(`${backup}-wal`), existsSync(`${backup}.part`)]).toEqual([false, false]);
  });

  test('never goes over a store that is there; asked to, it puts that one aside', async () => {
    const path = newPath();
    const store = await filled(path);
    const backup = newPath();
    await store.backupTo(backup);
    await store.appendEntries(ours, [entry(302)], receipt);
    await store.close();
    expect(await restoreStore(backup, path, null)).toEqual({
      kind: 'refused',
      problem: { code: 'store-there', found: path },
    });
    const aside = newPath();
    expect(await restoreStore(backup, path, aside)).toMatchObject({ kind: 'restored', aside });
    const [now, before] = [await open(path), await open(aside)];
    expect((await now.farm(ours))?.lastSeq).toBe(301);
    expect((await before.farm(ours))?.lastSeq).toBe(302);
    await now.close();
    await before.close();
  });
});

describe('a backup that cannot be relied on is refused, and nothing is changed', () => {
  async function backedUp(): Promise<string> {
    const store = await filled(newPath());
    const backup = newPath();
    await store.backupTo(backup);
    await store.close();
    return backup;
  }

  async function refusalOf(backup: string): Promise<string> {
    const target = newPath();
    const restored = await restoreStore(backup, target, null);
    expect(existsSync(target)).toBe(false);
    return restored.kind === 'refused' ? restored.problem.code : restored.kind;
  }

  test('because it is not there, or something else', async () => {
    const text = newPath();
    writeFileSync(text, 'plots, not pages\n'.repeat(500));
    expect([await refusalOf(newPath()), await refusalOf(text)]).toEqual(['no-backup', 'not-a-backup']);
  });

  test('because half of it is missing', async () => {
    const backup = await backedUp();
    truncateSync(backup, Math.floor(readFileSync(backup).length / 2));
    expect(await refusalOf(backup)).toBe('damaged-backup');
  });

  test('because one figure in it was changed', async () => {
    const backup = await backedUp();
    const bytes = readFileSync(backup);
    const at = bytes.indexOf('"kg":250');
    bytes.write('"kg":950', at);
    writeFileSync(backup, bytes);
    expect(await inspectBackup(backup)).toEqual({
      kind: 'refused',
      problem: { code: 'broken-book', found: ours, seq: 250, how: 'changed' },
    });
    expect(await refusalOf(backup)).toBe('broken-book');
  });

  test('because a newer program wrote it', async () => {
    const backup = await backedUp();
    const connection = await connectSqlite(backup);
    connection.exec(`insert into migrations (number, name) values (${newestMigration + 1}, 'of the future')`);
    connection.close();
    expect(await refusalOf(backup)).toBe('newer-database');
  });
});

describe('a store of each older version', () => {
  test.each(migrations.slice(0, -1).map(({ number }) => number))(
    'at step %i is brought up with its book as it was, also from a backup',
    async (number) => {
      const path = newPath();
      await atStep(path, number);
      const target = newPath();
      expect((await restoreStore(path, target, null)).kind).toBe('restored');
      for (const old of [path, target]) {
        const store = await open(old);
        const book = await store.entriesAfter(ours, 0, 10);
        expect(book.map(({ id }) => id)).toEqual([entryId(1), entryId(2)]);
        expect(verifyBook(book).ok).toBe(true);
        expect((await store.appendEntries(ours, [entry(3)], receipt)).kind).toBe('appended');
        expect(await store.households.households(ours)).toEqual([]);
        await store.close();
      }
    },
  );

  /** A file as the program of that step left it, with a farm of two entries, written row by row. */
  async function atStep(path: string, number: number): Promise<void> {
    const donor = newPath();
    const store = await open(donor);
    const entries = [entry(1), entry(2)];
    await store.foundFarm({ id: ours, name: 'Ours', sample: false, book: [], entries }, receipt);
    await store.close();
    const connection = await connectSqlite(path);
    const db = new Kysely<StoreTables>({ dialect: nodeSqliteDialect(connection) });
    await db.schema.createTable('migrations').addColumn('number', 'integer').addColumn('name', 'text').execute();
    for (const step of migrations.slice(0, number)) {
      await step.up(db, 'sqlite');
      await db.insertInto('migrations').values({ number: step.number, name: step.name }).execute();
    }
    connection.exec(`attach '${donor}' as donor`);
    connection.exec('insert into farms select * from donor.farms');
    connection.exec('insert into entries select * from donor.entries');
    await db.destroy();
  }
});

describe('scheduled backups', () => {
  test('of the last fourteen days stay, then the first of each month for two years', () => {
    const names = Array.from({ length: 900 }, (_, at) =>
      backupName(new Date(Date.UTC(2025, 0, 1 + at)).toISOString().slice(0, 10)),
    );
    const kept = new Set(names);
    for (const name of backupsToTakeAway(names)) kept.delete(name);
    expect([...kept].slice(-14)).toEqual(names.slice(-14));
    expect(kept.size).toBe(24 + 14); // the fourteen days of June begin on the 6th
    expect([...kept].slice(0, -14).every((name) => name.endsWith('-01.sqlite'))).toBe(true);
  });

  test('never take away a file of another name', () => {
    const days = Array.from({ length: 40 }, (_, at) => backupName(`2027-03-${String(at + 1).padStart(2, '0')}`));
    const taken = backupsToTakeAway([...days, 'leywright.sqlite', 'before-the-move.sqlite', 'leywright-2027.sqlite']);
    expect(taken.every((name) => days.includes(name))).toBe(true);
  });
});
