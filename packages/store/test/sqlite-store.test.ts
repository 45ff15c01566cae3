import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { openStore, type Store } from '../src/index.ts';
import { migrations, newestMigration } from '../src/schema/migrations.ts';
import { connectSqlite } from '../src/sqlite/connect.ts';
import { SqliteStore } from '../src/sqlite/sqlite-store.ts';
import { counter, entry, ours } from './entries.ts';
import { storeCases } from './store-cases.ts';

const folder = mkdtempSync(join(tmpdir(), 'leywright-store-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const nextName = counter('store');
const newPath = () => join(folder, `${nextName()}.sqlite`);
const receipt = { receivedAt: '2027-06-08T06:00:00Z', newSalt: () => 'salt' };

storeCases({
  name: 'SQLite',
  make: async () => {
    const path = newPath();
    return { open: () => openStore(path), remove: async () => rmSync(path, { force: true }) };
  },
});

async function open(path: string): Promise<Store> {
  const opened = await openStore(path);
  if (opened.kind !== 'open') throw new Error(opened.problem.code);
  return opened.store;
}

async function problemOf(path: string): Promise<string> {
  const opened = await openStore(path);
  if (opened.kind === 'refused') return opened.problem.code;
  await opened.store.close();
  return 'open';
}

async function withFarm(path: string): Promise<Store> {
  const store = await open(path);
  await store.foundFarm({ id: ours, name: 'Ours', sample: false, book: [], entries: [entry(1), entry(2)] }, receipt);
  return store;
}

describe('the SQLite file', () => {
  test('is written through to the disk before an entry is acknowledged', async () => {
    const store = await open(newPath());
    if (!(store instanceof SqliteStore)) throw new Error('not SQLite');
    expect([
      store.setting('journal_mode'),
      Number(store.setting('synchronous')),
      Number(store.setting('foreign_keys')),
    ]).toEqual(['wal', 2, 1]);
    await store.close();
  });

  test('may be named by a file address', async () => {
    const path = newPath();
    await (await open(`file://${path}`)).close();
    expect(existsSync(path)).toBe(true);
  });

  test('of a newer program is refused and left as it is', async () => {
    const path = newPath();
    await (await withFarm(path)).close();
    const connection = await connectSqlite(path);
    connection.exec(`insert into migrations (number, name) values (${newestMigration + 1}, 'of the future')`);
    connection.close();
    const before = readFileSync(path);
    expect(await openStore(path)).toEqual({
      kind: 'refused',
      problem: { code: 'newer-database', found: newestMigration + 1, known: newestMigration },
    });
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  test('that is no database, or a damaged one, is refused and left as it is', async () => {
    const text = newPath();
    writeFileSync(text, 'plots, not pages\n'.repeat(500));
    expect(await problemOf(text)).toBe('not-a-database');
    expect(readFileSync(text, 'utf8').startsWith('plots')).toBe(true);
    const damaged = newPath();
    const store = await withFarm(damaged);
    await store.appendEntries(
      ours,
      Array.from({ length: 400 }, (_, at) => entry(at + 3)),
      receipt,
    );
    await store.close();
    const bytes = readFileSync(damaged);
    bytes.fill(0x5a, 8192, 8192 + 6000);
    writeFileSync(damaged, bytes);
    expect(['damaged-database', 'not-a-database']).toContain(await problemOf(damaged));
  });

  test('in a folder that is not there cannot be opened, and it says so', async () => {
    expect(await problemOf(join(folder, 'nowhere', 'x.sqlite'))).toBe('cannot-open');
  });

  test('or another address we know: others are refused', async () => {
    expect(await openStore('mysql://somewhere/farms')).toEqual({
      kind: 'refused',
      problem: { code: 'no-such-store', found: 'mysql' },
    });
  });

  test('lets no program change or take out an entry', async () => {
    const path = newPath();
    await (await withFarm(path)).close();
    const connection = await connectSqlite(path);
    expect(() => connection.exec('delete from entries')).toThrow('never taken out');
    expect(() => connection.exec(`update entries set body = '{}' where seq = 1`)).toThrow('never changed');
    expect(() => connection.exec(`update entries set body = null, salt = '', hash = 'x' where seq = 1`)).toThrow(
      'never changed',
    );
    connection.exec(`update entries set body = null, salt = '' where seq = 1`);
    connection.close();
  });

  test('is copied whole while it is in use', async () => {
    const store = await withFarm(newPath());
    const copy = newPath();
    await store.backupTo(copy);
    await store.appendEntries(ours, [entry(3)], receipt);
    const restored = await open(copy);
    expect(await restored.entriesAfter(ours, 0, 10)).toEqual((await store.entriesAfter(ours, 0, 10)).slice(0, 2));
    expect(existsSync(`${copy}.part`)).toBe(false);
    await restored.close();
    await store.close();
  });

  test('holds what was acknowledged even when the process that wrote it ends without closing', async () => {
    const path = newPath();
    const store = await withFarm(path);
    const afterCrash = newPath();
    copyFileSync(path, afterCrash);
    copyFileSync(`${path}-wal`, `${afterCrash}-wal`);
    const again = await open(afterCrash);
    expect(await again.entriesAfter(ours, 0, 10)).toHaveLength(2);
    await again.close();
    await store.close();
  });

  test('is brought up by steps numbered from 1 without gaps', () => {
    expect(migrations.map(({ number }) => number)).toEqual(migrations.map((_, at) => at + 1));
  });
});
