/** Puts a backup back: looked over first, whole or not at all, and a store that is there already is never written over. */
import { copyFileSync, existsSync } from 'node:fs';
import type { Kysely } from 'kysely';
import type { StoreTables } from '../schema/tables.ts';
import type { StoreProblem } from '../store.ts';
import { copyRows } from './copy-rows.ts';
import { type BackedUpFarm, type BackupProblem, inspectBackup } from './inspect.ts';
import { overOldSqlite } from './new-sqlite.ts';
import { putAside, wholeFile } from './whole-file.ts';

export interface RestoreWish {
  /** File of the store to be. */
  readonly path: string;
  /** Where a store that is there already goes; null = it stays and nothing is put back. */
  readonly aside: string | null;
}

export type Restored =
  | { readonly kind: 'restored'; readonly farms: readonly BackedUpFarm[]; readonly aside: string | null }
  | {
      readonly kind: 'refused';
      readonly problem: BackupProblem | StoreProblem | { readonly code: 'store-there'; readonly found: string };
    };

/** An older backup is brought up when the store is next opened, as any older store is. */
export async function restoreToFile(backup: string, { path, aside }: RestoreWish): Promise<Restored> {
  const inspected = await inspectBackup(backup);
  if (inspected.kind === 'refused') return inspected;
  const isThere = existsSync(path);
  if (isThere && aside === null) return { kind: 'refused', problem: { code: 'store-there', found: path } };
  await wholeFile(path, async (draft) => {
    copyFileSync(backup, draft);
    if (isThere && aside !== null) putAside(path, aside);
  });
  return { kind: 'restored', farms: inspected.farms, aside: isThere ? aside : null };
}

/** Into a database of today's tables that holds no farm yet; all rows or none. */
export async function restoreInto(db: Kysely<StoreTables>, backup: string, scratch: string): Promise<Restored> {
  const inspected = await inspectBackup(backup);
  if (inspected.kind === 'refused') return inspected;
  const farm = await db.selectFrom('farms').select('farm_id').limit(1).executeTakeFirst();
  if (farm !== undefined) return { kind: 'refused', problem: { code: 'store-there', found: farm.farm_id } };
  copyFileSync(backup, scratch);
  await overOldSqlite(scratch, (from, tables) => db.transaction().execute((step) => copyRows(from, step, tables)));
  return { kind: 'restored', farms: inspected.farms, aside: null };
}
