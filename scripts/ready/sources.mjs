// Knows whether sources changed since they were last built, by their content and not by their dates.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const LEAVE_OUT = new Set(['node_modules', 'dist', '.cache', 'test']);

/** @param {readonly string[]} texts */
export function hashOfTexts(texts) {
  const hash = createHash('sha256');
  for (const text of texts) hash.update(`${text.length}:`).update(text);
  return hash.digest('hex');
}

/**
 * One mark for everything under the given files and folders: equal marks, equal sources.
 * @param {string} projectFolder
 * @param {readonly string[]} paths files or folders, from the project's folder; those not there count as absent
 */
export function hashOfPaths(projectFolder, paths) {
  const hash = createHash('sha256');
  for (const path of paths) addPath(hash, join(projectFolder, path), path);
  return hash.digest('hex');
}

/** @param {import('node:crypto').Hash} hash @param {string} fullPath @param {string} name */
function addPath(hash, fullPath, name) {
  if (!existsSync(fullPath)) return;
  const entries = readFolder(fullPath);
  if (entries === null) {
    hash.update(`\0${name}\0`).update(readFileSync(fullPath));
    return;
  }
  for (const entry of entries) {
    if (!LEAVE_OUT.has(entry)) addPath(hash, join(fullPath, entry), `${name}/${entry}`);
  }
}

/** @param {string} path @returns {string[] | null} null when it is a file */
function readFolder(path) {
  try {
    return readdirSync(path).sort();
  } catch {
    return null;
  }
}
