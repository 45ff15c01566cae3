import { openSqliteStore } from './sqlite/open.ts';
import type { Opened } from './store.ts';

/**
 * Opens the store at `url`: a path or `file:` address of an SQLite file, made when there is none.
 * What people can put right (a file from a newer program, a damaged one) comes back as a problem; nothing is changed then.
 */
export async function openStore(url: string): Promise<Opened> {
  const scheme = /^([a-z][a-z0-9+.-]+):/i.exec(url)?.[1]?.toLowerCase();
  if (scheme === undefined) return openSqliteStore(url);
  if (scheme === 'file') return openSqliteStore(decodeURIComponent(new URL(url).pathname));
  return { kind: 'refused', problem: { code: 'no-such-store', found: scheme } };
}
