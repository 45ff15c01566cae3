// Installs the libraries with `npm ci`, when they are not there or not those of package-lock.json.
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Missing, remedyFor, say, secondsSince, whileSaying } from './say.mjs';
import { hashOfTexts } from './sources.mjs';

const DISK_NEEDED_MB = 900;

/**
 * @typedef {{ version?: string, link?: boolean, optional?: boolean, os?: string[], cpu?: string[], libc?: string[],
 *   bin?: Record<string, string>, optionalDependencies?: Record<string, string> }} LockedPackage
 */
/** @typedef {Record<string, LockedPackage>} LockedPackages by place, such as node_modules/zod */

/**
 * @param {string} projectFolder
 * @returns {Promise<boolean>} whether anything was installed
 */
export async function install(projectFolder) {
  const lockText = readFileSync(join(projectFolder, 'package-lock.json'), 'utf8');
  const wanted = wantedKey(projectFolder, lockText);
  if (stampOf(projectFolder) === wanted) return false;
  /** @type {LockedPackages} */
  const locked = JSON.parse(lockText).packages;
  refuseWhenOutOfStep(projectFolder, locked);
  if (installedAgreesWith(projectFolder, locked)) {
    stamp(projectFolder, wanted); // someone ran npm themselves, and well
    return false;
  }
  refuseFullDisk(projectFolder);
  const startedAtMs = Date.now();
  const count = Object.keys(locked).filter((place) => place.startsWith('node_modules/')).length;
  say(`Installing the libraries Leywright is built on (up to ${count}; a minute or two the first time).`);
  await whileSaying('installing', () => npmCi(projectFolder));
  stamp(projectFolder, wanted);
  say(`Installed in ${secondsSince(startedAtMs)}.`);
  return true;
}

/** @param {string} projectFolder @returns {Promise<void>} */
function npmCi(projectFolder) {
  // None of the libraries needs its install script: their programs come ready-made. So none is run, whatever npm's own rule is.
  const words = ['ci', '--no-fund', '--no-audit', '--loglevel=error', '--ignore-scripts'];
  const npm = process.env.npm_execpath;
  const useNode = npm !== undefined && /npm-cli\.c?js$/.test(npm);
  return new Promise((settle, fail) => {
    const child = spawn(useNode ? process.execPath : 'npm', useNode ? [npm, ...words] : words, {
      cwd: projectFolder,
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    let said = '';
    child.stderr.on('data', (text) => {
      said += text;
    });
    child.once('error', () =>
      fail(new Missing('npm is not to be found: install it beside Node, then run the same command again.')),
    );
    child.once('close', (code) => {
      if (code === 0) settle();
      else
        fail(
          new Missing(
            remedyFor(said, 'install its libraries') ?? `npm could not install the libraries:\n\n${said.trim()}`,
          ),
        );
    });
  });
}

/**
 * What was installed last holds while the lock, the engine and the machine are the same.
 * @param {string} projectFolder @param {string} lockText
 */
function wantedKey(projectFolder, lockText) {
  const npmrc = join(projectFolder, '.npmrc');
  const manifests = manifestPaths(projectFolder).map((path) => readFileSync(join(projectFolder, path), 'utf8'));
  return hashOfTexts([
    lockText,
    existsSync(npmrc) ? readFileSync(npmrc, 'utf8') : '',
    process.versions.modules,
    process.platform,
    process.arch,
    ...manifests,
  ]);
}

/** The stamp lies inside node_modules, so that taking the folder away takes the stamp away too. @param {string} projectFolder */
function stampPath(projectFolder) {
  return join(projectFolder, 'node_modules', '.leywright-installed');
}

/** @param {string} projectFolder */
function stampOf(projectFolder) {
  const path = stampPath(projectFolder);
  return existsSync(path) ? readFileSync(path, 'utf8') : null;
}

/** @param {string} projectFolder @param {string} key */
function stamp(projectFolder, key) {
  mkdirSync(join(projectFolder, 'node_modules'), { recursive: true });
  writeFileSync(stampPath(projectFolder), key);
}

/**
 * npm keeps its own list of what it put in node_modules; compare it with the lock.
 * @param {string} projectFolder @param {LockedPackages} locked
 */
export function installedAgreesWith(projectFolder, locked) {
  const list = join(projectFolder, 'node_modules', '.package-lock.json');
  if (!existsSync(list)) return false;
  /** @type {LockedPackages} */
  const installed = JSON.parse(readFileSync(list, 'utf8')).packages;
  const ownChoice = new Set(Object.keys(locked['']?.optionalDependencies ?? {}).map((name) => `node_modules/${name}`));
  return Object.entries(locked).every(([place, wanted]) => {
    if (!place.includes('node_modules/')) return commandsAreLinked(projectFolder, wanted); // the project and its workspaces
    const there = installed[place];
    if (there === undefined) return wanted.optional === true && !(ownChoice.has(place) || isMadeForThisMachine(wanted));
    return wanted.link === true || there.version === wanted.version;
  });
}

/** @param {string} projectFolder @param {LockedPackage} workspace */
function commandsAreLinked(projectFolder, workspace) {
  return Object.keys(workspace.bin ?? {}).every((name) =>
    existsSync(join(projectFolder, 'node_modules', '.bin', name)),
  );
}

/** An optional library without a word on machines belongs to another one that was left out. @param {LockedPackage} wanted */
function isMadeForThisMachine(wanted) {
  if (wanted.os === undefined && wanted.cpu === undefined) return false;
  if (wanted.os !== undefined && !wanted.os.includes(process.platform)) return false;
  if (wanted.cpu !== undefined && !wanted.cpu.includes(process.arch)) return false;
  if (wanted.libc !== undefined && process.platform === 'linux') return wanted.libc.includes(libcHere());
  return true;
}

function libcHere() {
  /** @type {any} */
  const report = process.report?.getReport();
  return report?.header?.glibcVersionRuntime === undefined ? 'musl' : 'glibc';
}

/**
 * npm ci refuses in many lines when a package.json was changed by hand; this says it in one.
 * @param {string} projectFolder @param {Record<string, any>} locked
 */
function refuseWhenOutOfStep(projectFolder, locked) {
  for (const path of manifestPaths(projectFolder)) {
    const manifest = JSON.parse(readFileSync(join(projectFolder, path), 'utf8'));
    const inLock = locked[path === 'package.json' ? '' : path.slice(0, -'/package.json'.length)];
    for (const list of ['dependencies', 'devDependencies', 'optionalDependencies']) {
      const said = JSON.stringify(Object.entries(manifest[list] ?? {}).sort());
      const known = JSON.stringify(Object.entries(inLock?.[list] ?? {}).sort());
      if (said !== known) {
        throw new Missing(
          `The ${list} of ${path} are not those of package-lock.json: run "npm install" once, then the same command again.`,
        );
      }
    }
  }
}

/** @param {string} projectFolder @returns {string[]} */
function manifestPaths(projectFolder) {
  const packages = readdirSync(join(projectFolder, 'packages')).map((name) => `packages/${name}/package.json`);
  return ['package.json', ...packages.filter((path) => existsSync(join(projectFolder, path))).sort()];
}

/** @param {string} projectFolder */
function refuseFullDisk(projectFolder) {
  const disk = statfsSync(projectFolder);
  const freeMb = (disk.bavail * disk.bsize) / 1_000_000;
  if (freeMb >= DISK_NEEDED_MB) return;
  throw new Missing(
    `There are ${Math.floor(freeMb)} MB free on this disk and Leywright needs ${DISK_NEEDED_MB}: make room, then run the same command again.`,
  );
}
