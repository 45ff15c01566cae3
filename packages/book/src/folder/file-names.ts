/** Which of the given files are ours, under their plain names. */

import { mapFile } from '../ground/ground-map.ts';
import { nearest } from '../names/nearest.ts';
import { tables } from '../rows/tables.ts';
import { limits } from './limits.ts';
import type { ProblemList } from './problem.ts';
import { bookFileName } from './text.ts';

export const folderFiles: readonly string[] = [
  'farm.json',
  ...tables.map((table) => table.file),
  mapFile,
  bookFileName,
];

export type FileBytes = string | Uint8Array;

/** Files by our own name for them. Paths that leave the folder, files named twice and files we would lose are told. */
export function ourFiles(files: ReadonlyMap<string, FileBytes>, problems: ProblemList): Map<string, FileBytes> {
  const ours = new Map<string, FileBytes>();
  if (files.size > limits.files) {
    problems.add(
      'too-many-files',
      { file: '', line: null, column: null },
      { figures: { files: files.size, limit: limits.files } },
    );
    return ours;
  }
  const paths = [...files]
    .map(([path, bytes]) => ({ path: path.replaceAll('\\', '/').replace(/^\.\//, ''), bytes }))
    .filter(({ path }) => !isHidden(path));
  const within = paths.filter(({ path }) => staysInside(path) || tellOutside(path, problems));
  const top = topFolder(within.map(({ path }) => path));
  for (const { path, bytes } of within) {
    const name = path.slice(top.length);
    const known = folderFiles.find((one) => one === name.toLowerCase());
    if (known === undefined) tellUnknown(name, problems);
    else if (ours.has(known)) problems.add('file-twice', { file: known, line: null, column: null }, { found: name });
    else ours.set(known, bytes);
  }
  return ours;
}

/** Whether a path lies inside the folder it came with: not absolute, and never upward. */
export function staysInside(path: string): boolean {
  const plain = path.replaceAll('\\', '/');
  return !plain.startsWith('/') && !/^[a-z]:/i.test(plain) && !plain.split('/').includes('..') && !plain.includes('\0');
}

function tellOutside(path: string, problems: ProblemList): boolean {
  problems.add('path-outside', { file: path.slice(0, 200), line: null, column: null }, { found: path });
  return false;
}

/** What systems and people leave in folders beside the files. */
function isHidden(path: string): boolean {
  const name = path.split('/').at(-1) ?? '';
  return (
    path.endsWith('/') ||
    path.startsWith('__MACOSX/') ||
    name.startsWith('.') ||
    name.startsWith('~$') ||
    /^(readme|read-me)(\.(md|txt))?$/i.test(name) ||
    /^(thumbs\.db|desktop\.ini)$/i.test(name)
  );
}

/** A folder inside the zip, or picked with its own name: all files share it. */
function topFolder(paths: readonly string[]): string {
  const top = /^[^/]+\//.exec(paths[0] ?? '')?.[0] ?? '';
  return paths.every((path) => path.startsWith(top)) ? top : '';
}

/** A file near one of ours is most likely that one misspelled, and would be lost: that stops. */
function tellUnknown(name: string, problems: ProblemList): void {
  const near = nearest(name, folderFiles);
  problems.add(
    'unknown-file',
    { file: name.slice(0, 200), line: null, column: null },
    { found: name, nearest: near, gravity: near.length > 0 ? 'stops' : 'look' },
  );
}
