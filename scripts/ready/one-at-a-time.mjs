// Lets one process at a time install or build. A second one waits; a lock left behind by a process that died is taken over.
import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { say } from './say.mjs';

const HEARTBEAT_MS = 3_000;
/** The holder touches the lock every three seconds; a lock this old belongs to nobody, even if its number is in use again. */
const STALE_AFTER_MS = 120_000;

/**
 * @template T
 * @param {string} lockFile
 * @param {() => Promise<T>} job
 * @returns {Promise<T>}
 */
export async function oneAtATime(lockFile, job) {
  mkdirSync(dirname(lockFile), { recursive: true });
  await take(lockFile);
  const heartbeat = setInterval(() => touch(lockFile), HEARTBEAT_MS);
  const release = () => rmSync(lockFile, { force: true });
  const stop = () => {
    release();
    process.exit(130);
  };
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
  try {
    return await job();
  } finally {
    clearInterval(heartbeat);
    process.removeListener('SIGINT', stop);
    process.removeListener('SIGTERM', stop);
    release();
  }
}

/** @param {string} lockFile */
async function take(lockFile) {
  let said = false;
  while (!create(lockFile)) {
    const holder = readHolder(lockFile);
    if (holder !== null && isStale(holder)) {
      clearAway(lockFile, holder.text);
      continue;
    }
    if (!said && holder !== null) {
      say(
        `Another Leywright command (process ${holder.pid}) is installing or building here; waiting for it to finish.`,
      );
      said = true;
    }
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
}

/** The lock appears whole or not at all: a file is written beside it, then linked to its name. @param {string} lockFile */
function create(lockFile) {
  const draft = `${lockFile}.${process.pid}`;
  writeFileSync(draft, `${process.pid} ${Date.now()}`);
  try {
    linkSync(draft, lockFile);
    return true;
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code === 'EEXIST') return false;
    throw error;
  } finally {
    rmSync(draft, { force: true });
  }
}

/**
 * @param {string} lockFile
 * @returns {{ pid: number, text: string, ageMs: number } | null} null when it has just been released
 */
function readHolder(lockFile) {
  try {
    const text = readFileSync(lockFile, 'utf8');
    return { pid: Number.parseInt(text, 10), text, ageMs: Date.now() - statSync(lockFile).mtimeMs };
  } catch {
    return null;
  }
}

/** @param {{ pid: number, ageMs: number }} holder */
function isStale(holder) {
  return holder.ageMs > STALE_AFTER_MS || !isRunning(holder.pid);
}

/** @param {number} pid */
function isRunning(pid) {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM'; // there, but someone else's
  }
}

/**
 * Moves the dead lock aside; if in that moment another process had already put its own there, gives it back.
 * @param {string} lockFile @param {string} deadText
 */
function clearAway(lockFile, deadText) {
  const aside = `${lockFile}.${process.pid}.old`;
  try {
    renameSync(lockFile, aside);
    if (readFileSync(aside, 'utf8') !== deadText) linkSync(aside, lockFile);
  } catch {
    // someone else was quicker
  } finally {
    rmSync(aside, { force: true });
  }
}

/** @param {string} lockFile */
function touch(lockFile) {
  try {
    const now = new Date();
    utimesSync(lockFile, now, now);
  } catch {
    // a lock taken away by hand is not worth stopping for
  }
}
