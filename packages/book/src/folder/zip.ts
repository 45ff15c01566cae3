/** Farm folders in a zip. What a zip claims is looked at before anything is unpacked. */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import type { KnownNames } from '../names/known-names.ts';
import { type FileBytes, ourFiles, staysInside } from './file-names.ts';
import { limits } from './limits.ts';
import { type ProblemList, problemList } from './problem.ts';
import { type FolderReading, readFiles } from './read-folder.ts';

/** Reads a zipped folder; as `readFarmFolder`. */
export function readFarmZip(bytes: Uint8Array, known: KnownNames): FolderReading {
  const problems = problemList();
  const files = unpacked(bytes, problems);
  if (files === null) return { farm: null, entries: [], problems: problems.all() };
  return readFiles(ourFiles(files, problems), known, problems);
}

/** The files of a zip as they are, by path; null for one that `readFarmZip` would not unpack. */
export function filesInZip(bytes: Uint8Array): ReadonlyMap<string, FileBytes> | null {
  return unpacked(bytes, problemList());
}

/** The files as one zip; the same files give the same bytes. */
export function zipFolder(files: ReadonlyMap<string, FileBytes>): Uint8Array {
  // The earliest day a zip can hold.
  const mtime = '1980-01-01T00:00:00';
  return zipSync(
    Object.fromEntries(
      [...files].map(([name, bytes]) => [
        name,
        [typeof bytes === 'string' ? strToU8(bytes) : bytes, { mtime }] as const,
      ]),
    ) as Record<string, [Uint8Array, { mtime: string }]>,
  );
}

interface Listed {
  readonly path: string;
  readonly unpackedBytes: number;
  readonly isLink: boolean;
  readonly isLocked: boolean;
}

function unpacked(bytes: Uint8Array, problems: ProblemList): Map<string, FileBytes> | null {
  const zip = { file: '', line: null, column: null };
  const listed = listing(bytes);
  if (listed === null) problems.add('not-a-zip', zip);
  else if (listed.length > limits.files)
    problems.add('too-many-files', zip, { figures: { files: listed.length, limit: limits.files } });
  else if (listed.reduce((sum, one) => sum + one.unpackedBytes, 0) > limits.folderBytes)
    problems.add('too-large', zip, {
      figures: { bytes: listed.reduce((sum, one) => sum + one.unpackedBytes, 0), limitBytes: limits.folderBytes },
    });
  else if (tellTwice(listed, problems)) return null;
  else if (listed.filter((one) => tellUnsafe(one, problems)).length === 0) return unpack(bytes, listed, problems);
  return null;
}

/** The same path twice: one would silently win. */
function tellTwice(listed: readonly Listed[], problems: ProblemList): boolean {
  const twice = listed.filter((one, at) => listed.findIndex((other) => other.path === one.path) !== at);
  for (const { path } of twice)
    problems.add('file-twice', { file: path.slice(0, 200), line: null, column: null }, { found: path });
  return twice.length > 0;
}

function tellUnsafe({ path, isLink, isLocked }: Listed, problems: ProblemList): boolean {
  const place = { file: path.slice(0, 200), line: null, column: null };
  if (!staysInside(path)) problems.add('path-outside', place, { found: path });
  else if (isLink) problems.add('link-in-zip', place, { found: path });
  else if (isLocked) problems.add('zip-locked', place, { found: path });
  else return false;
  return true;
}

function unpack(bytes: Uint8Array, listed: readonly Listed[], problems: ProblemList): Map<string, FileBytes> | null {
  const claimed = new Map(listed.map((one) => [one.path, one.unpackedBytes]));
  try {
    // Sizes come from the same listing that was added up above; fflate fills no buffer beyond them.
    const files = unzipSync(bytes, { filter: (file) => claimed.get(file.name) === file.originalSize });
    return new Map(Object.entries(files));
  } catch {
    problems.add('not-a-zip', { file: '', line: null, column: null });
    return null;
  }
}

const endSignature = 0x06054b50;
const entrySignature = 0x02014b50;
const sizeBeyondZip32 = 0xffffffff;

/**
 * The central directory: paths, sizes and what kind of thing each is, without unpacking anything. Null when there is none.
 *
 * Source  PKWARE APPNOTE.TXT 6.3, sections 4.3.12 and 4.3.16; links by the upper half of the external attributes, as Unix zips write them.
 */
function listing(bytes: Uint8Array): Listed[] | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = bytes.length - 22;
  while (end >= 0 && end > bytes.length - 66_000 && view.getUint32(end, true) !== endSignature) end -= 1;
  if (end < 0 || view.getUint32(end, true) !== endSignature) return null;
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  const listed: Listed[] = [];
  for (let entry = 0; entry < count; entry += 1) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== entrySignature) return null;
    const nameLength = view.getUint16(at + 28, true);
    const nameAt = at + 46;
    const unpackedBytes = view.getUint32(at + 24, true);
    if (unpackedBytes === sizeBeyondZip32 || nameAt + nameLength > bytes.length) return null;
    const isUtf8 = (view.getUint16(at + 8, true) & 0x800) !== 0;
    listed.push({
      path: strFromU8(bytes.subarray(nameAt, nameAt + nameLength), !isUtf8),
      unpackedBytes,
      isLink: view.getUint32(at + 38, true) >>> 28 === 0xa,
      isLocked: (view.getUint16(at + 8, true) & 1) !== 0,
    });
    at = nameAt + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return listed;
}
