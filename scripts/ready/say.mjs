// How the scripts speak: what they do in plain sentences, and in one sentence what to do when something is missing.

/** A thing the person at the keyboard can put right. Its message is the whole sentence they need. */
export class Missing extends Error {}

/** @param {string} sentence */
export function say(sentence) {
  console.log(`  ${sentence}`);
}

/**
 * Says every fifteen seconds that a long job is still going, so that nobody stops it believing it hangs.
 * @template T
 * @param {string} doing in the form "installing"
 * @param {() => Promise<T>} job
 * @returns {Promise<T>}
 */
export async function whileSaying(doing, job) {
  const startedAtMs = Date.now();
  const timer = setInterval(() => say(`still ${doing}, ${secondsSince(startedAtMs)}`), 15_000);
  try {
    return await job();
  } finally {
    clearInterval(timer);
  }
}

/** @param {number} startedAtMs @returns {string} "0.4 s" or "23 s" */
export function secondsSince(startedAtMs) {
  const seconds = (Date.now() - startedAtMs) / 1000;
  return seconds < 10 ? `${seconds.toFixed(1)} s` : `${Math.round(seconds)} s`;
}

/**
 * Puts a failure of npm, the disk or the network into one sentence that says what to do.
 * @param {string} text what the failing tool wrote
 * @param {string} doing in the form "install its libraries"
 * @returns {string | null} null when the cause is not one we know
 */
export function remedyFor(text, doing) {
  for (const [sign, remedy] of remedies) {
    if (sign.test(text)) return `Leywright could not ${doing}: ${remedy}`;
  }
  return null;
}

/** @type {readonly (readonly [RegExp, string])[]} */
const remedies = [
  [/ENOSPC|no space left/i, 'the disk is full; free about 1 GB and run the same command again.'],
  [/EDQUOT/i, 'your disk allowance is used up; free about 1 GB and run the same command again.'],
  [
    /ENOTFOUND|EAI_AGAIN|ETIMEDOUT|ECONNREFUSED|ECONNRESET|ENETUNREACH|EHOSTUNREACH|network|socket hang up/i,
    'there is no way out to the internet (or a proxy is in between); connect and run the same command again.',
  ],
  [
    /E40[13]\b|E407\b/i,
    'the package source refused the request; check the proxy or sign-in in your own .npmrc, then run it again.',
  ],
  [/EINTEGRITY/i, 'a download was damaged; run "npm cache clean --force" and then the same command again.'],
  [
    /EACCES|EPERM|EROFS/i,
    'this folder may not be written to; give yourself the right to write here, then run it again.',
  ],
  [
    /EUSAGE|can only install packages when your package\.json/i,
    'package.json and package-lock.json disagree; run "npm install" once.',
  ],
  [/EMFILE|ENFILE/i, 'too many files are open at once; run "ulimit -n 4096" and then the same command again.'],
];
