import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inspectBackup } from '@leywright/store';
import { afterAll, expect, test } from 'vitest';
import { startBackups } from '../src/backup/schedule.ts';
import { openBench } from './bench.ts';

const folder = mkdtempSync(join(tmpdir(), 'leywright-schedule-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const farm = { plots: 4, areaHa: 3, near: 'Cambridge', items: 5, households: 60, weeks: 40 };

test('each day has one backup that was read back, and the older ones are thinned out', async () => {
  const { app, desk, close } = await openBench();
  await app.inject({ method: 'POST', url: '/api/farms', headers: { host: '127.0.0.1' }, payload: farm });
  const said: string[] = [];
  let day = '2027-03-01';
  const backups = startBackups({ store: desk.store, folder, day: () => day, say: (line) => said.push(line) });
  for (let at = 1; at <= 20; at += 1) {
    day = `2027-03-${String(at).padStart(2, '0')}`;
    await backups.look();
    await backups.look();
  }
  await backups.stop();
  const names = readdirSync(folder).sort();
  expect([names.length, names[0], names.at(-1)]).toEqual([
    15,
    'leywright-2027-03-01.sqlite',
    'leywright-2027-03-20.sqlite',
  ]);
  expect(await inspectBackup(join(folder, names.at(-1) ?? ''))).toMatchObject({ kind: 'sound', farms: [{}] });
  expect(said).toEqual([]);
  await close();
});

test('a folder that cannot be written is said, and the server goes on', async () => {
  const { app, desk, close } = await openBench();
  await app.inject({ method: 'POST', url: '/api/farms', headers: { host: '127.0.0.1' }, payload: farm });
  const file = join(folder, 'in-the-way');
  writeFileSync(file, '');
  const said: string[] = [];
  const store = desk.store;
  const backups = startBackups({ store, folder: join(file, 'x'), day: () => '2027-03-01', say: (s) => said.push(s) });
  await backups.look();
  await backups.stop();
  expect(said[0]).toContain('No backup could be made');
  expect((await desk.store.farms()).length).toBe(1);
  await close();
});
