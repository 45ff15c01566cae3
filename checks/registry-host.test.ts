import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { filesUnder, projectFolder } from './law/read-tree.ts';

// In two pieces, so that this file is not an offence against itself.
const publicRegistry = new RegExp(['registry\\.(npmjs\\.org', 'yarnpkg\\.com)|npm\\.pkg\\.github\\.com'].join('|'));
const anyLockedAddress = /"resolved":\s*"https?:/;

/** Lines that tie the project to one source of packages; everyone's own npm settings must decide that. */
function hostLines(path: string, text: string): readonly string[] {
  return text
    .split('\n')
    .map((line, at) => ({ line, at: at + 1 }))
    .filter(
      ({ line }) => publicRegistry.test(line) || (path.endsWith('package-lock.json') && anyLockedAddress.test(line)),
    )
    .map(({ line, at }) => `${path}:${at}  ${line.trim().slice(0, 120)}`);
}

const tracked = trackedFiles();

/** What git keeps; in a copy without git, every file of ours. */
function trackedFiles(): readonly string[] {
  try {
    const said = execFileSync('git', ['ls-files', '-z'], { cwd: projectFolder, encoding: 'utf8', stdio: 'pipe' });
    return said.split('\0').filter(Boolean);
  } catch {
    const atRoot = readdirSync(projectFolder, { withFileTypes: true }).filter((entry) => entry.isFile());
    const folders = ['packages', 'scripts', 'checks', 'tasks', 'scenarios', 'bench', 'docs', 'demo', '.ci'];
    return [...atRoot.map((entry) => entry.name), ...folders.flatMap((folder) => filesUnder(folder))];
  }
}

test('no tracked file names the host of a package registry', () => {
  const found = tracked.flatMap((path) => {
    const full = join(projectFolder, path);
    const size = statSync(full, { throwIfNoEntry: false })?.size ?? 0;
    return size === 0 || size > 5_000_000 ? [] : hostLines(path, readFileSync(full, 'utf8'));
  });
  const remedy =
    'Take the address out. A lock file is cleaned by "npm install" with the .npmrc of this project (omit-lockfile-registry-resolved).';
  expect(found.length, `\n${found.join('\n')}\n${remedy}\n`).toBe(0);
});

test('a lock file with an address in it is found, and one with paths of our own is not', () => {
  expect(hostLines('package-lock.json', '"resolved": "https://packages.example/zod/-/zod-4.tgz",')).toHaveLength(1);
  expect(hostLines('package-lock.json', '"resolved": "packages/measures",')).toHaveLength(0);
  expect(hostLines('.npmrc', ['registry=https://registry.', 'npmjs.org/'].join(''))).toHaveLength(1);
});
