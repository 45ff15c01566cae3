/** A farm folder or zip on the disk, as the bytes of its files by name. Links are not followed out of it. */
import { lstat, readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

export type FarmFiles =
  | { readonly kind: 'folder'; readonly files: ReadonlyMap<string, Uint8Array> }
  | { readonly kind: 'zip'; readonly bytes: Uint8Array }
  | { readonly kind: 'none'; readonly why: 'not-there' | 'neither' | 'too-large' };

/** More than this is no farm folder; the reader has its own, smaller limits for each file. */
const MOST_BYTES = 400_000_000;
const MOST_FILES = 500;

export async function readFarmFiles(path: string): Promise<FarmFiles> {
  const found = await lstat(path).catch(() => null);
  if (found === null) return { kind: 'none', why: 'not-there' };
  if (found.isFile())
    return found.size > MOST_BYTES ? { kind: 'none', why: 'too-large' } : { kind: 'zip', bytes: await readFile(path) };
  if (!found.isDirectory() && !found.isSymbolicLink()) return { kind: 'none', why: 'neither' };
  const names = await readdir(path).catch(() => null);
  return names === null
    ? { kind: 'none', why: 'neither' }
    : readFiles(path, names.filter((name) => !name.startsWith('.')).sort());
}

async function readFiles(path: string, names: readonly string[]): Promise<FarmFiles> {
  if (names.length > MOST_FILES) return { kind: 'none', why: 'too-large' };
  const files = new Map<string, Uint8Array>();
  let bytes = 0;
  for (const name of names) {
    const file = await lstat(join(path, name));
    if (!file.isFile()) continue;
    bytes += file.size;
    if (bytes > MOST_BYTES) return { kind: 'none', why: 'too-large' };
    files.set(name, await readFile(join(path, name)));
  }
  return { kind: 'folder', files };
}
