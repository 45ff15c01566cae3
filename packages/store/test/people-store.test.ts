import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { asDay } from '@leywright/measures';
import { expect, test } from 'vitest';
import { openStore } from '../src/index.ts';
import { ours, receipt } from './entries.ts';
import { peopleCases } from './people-cases.ts';

peopleCases({
  name: 'SQLite',
  make: async () => {
    const folder = mkdtempSync(join(tmpdir(), 'leywright-people-'));
    return {
      open: () => openStore(join(folder, 'farms.sqlite')),
      remove: async () => rmSync(folder, { recursive: true, force: true }),
    };
  },
});

test('what was erased is in none of the files of the store', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'leywright-erase-'));
  const opened = await openStore(join(folder, 'farms.sqlite'));
  if (opened.kind !== 'open') throw new Error(opened.problem.code);
  const { store } = opened;
  await store.foundFarm({ id: ours, name: 'Ours', sample: false, book: [], entries: [] }, receipt);
  const person = { name: 'Ada Zyxwvut', email: null, phone: null, address: null, without: [], note: null };
  await store.households.putHousehold(ours, {
    id: 'h1',
    size: 'small',
    drop: null,
    from: asDay('2026-05-01'),
    to: null,
    person,
  });
  const found = () => readdirSync(folder).filter((name) => readFileSync(join(folder, name)).includes('Zyxwvut'));
  expect(found()).not.toEqual([]);
  await store.households.eraseHousehold(ours, 'h1', '2027-06-08T06:00:00Z');
  expect(found()).toEqual([]);
  await store.close();
  rmSync(folder, { recursive: true });
});
