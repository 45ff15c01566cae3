/** Files that are there whole or not at all, and on the disk when we say so. */
import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';

/** Fills a file beside `path` by `fill`, and gives it its name only once it is whole and on the disk. */
export async function wholeFile(path: string, fill: (draft: string) => Promise<void>): Promise<void> {
  const draft = `${path}.part`;
  takeAway(draft);
  try {
    await fill(draft);
    syncToDisk(draft);
    renameSync(draft, path);
    syncToDisk(dirname(path));
  } catch (error) {
    takeAway(draft);
    throw error;
  }
}

/** With the files SQLite keeps beside it. */
export function takeAway(path: string): void {
  for (const end of ['', '-wal', '-shm', '-journal']) rmSync(`${path}${end}`, { force: true });
}

/** Puts a store's file out of the way under another name, with the files SQLite keeps beside it. */
export function putAside(path: string, aside: string): void {
  for (const end of ['', '-wal', '-shm', '-journal'])
    if (existsSync(`${path}${end}`)) renameSync(`${path}${end}`, `${aside}${end}`);
  syncToDisk(dirname(path));
}

export function syncToDisk(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
