import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Restored, restoreToFile } from './restore.ts';

/** Puts a backup where `url` says: a file's path, or the `postgres:` address of a database without farms. */
export async function restoreStore(backup: string, url: string, aside: string | null): Promise<Restored> {
  if (!/^postgres(ql)?:/i.test(url)) return restoreToFile(backup, { path: url, aside });
  const { openPostgresStore } = await import('../postgres/open.ts');
  const opened = await openPostgresStore(url);
  if (opened.kind === 'refused') return opened;
  const { PostgresStore } = await import('../postgres/postgres-store.ts');
  if (!(opened.store instanceof PostgresStore)) throw new Error('A store of another database was opened.');
  const scratch = mkdtempSync(join(tmpdir(), 'leywright-restore-'));
  try {
    return await opened.store.restoreFrom(backup, join(scratch, 'restore.sqlite'));
  } finally {
    await opened.store.close();
    rmSync(scratch, { recursive: true, force: true });
  }
}
