import { openSqliteStore } from './sqlite/open.ts';
import type { Opened } from './store.ts';

/** Name of the store's file in its folder. */
export const storeFile = 'leywright.sqlite';

/**
 * Opens the store at `url`: a path or `file:` address of an SQLite file, made when there is none; or the `postgres:` address of a database.
 * What people can put right (a store from a newer program, a damaged one) comes back as a problem; nothing is changed then.
 */
export async function openStore(url: string): Promise<Opened> {
  const scheme = /^([a-z][a-z0-9+.-]+):/i.exec(url)?.[1]?.toLowerCase();
  if (scheme === undefined) return openSqliteStore(url);
  if (scheme === 'file') return openSqliteStore(decodeURIComponent(new URL(url).pathname));
  // Loaded only where it is used: a grower with a file needs none of it.
  if (scheme === 'postgres' || scheme === 'postgresql')
    return (await import('./postgres/open.ts')).openPostgresStore(url);
  return { kind: 'refused', problem: { code: 'no-such-store', found: scheme } };
}
