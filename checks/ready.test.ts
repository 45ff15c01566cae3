import { execFile, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { TestModule } from 'vitest/node';
import { tally } from '../scripts/closing-line.ts';
import { installedAgreesWith } from '../scripts/ready/install.mjs';
import { refusalOf } from '../scripts/ready/node-version.mjs';
import { remedyFor } from '../scripts/ready/say.mjs';
import { hashOfPaths } from '../scripts/ready/sources.mjs';
import { projectFolder } from './law/read-tree.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'leywright-ready-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('one process at a time', () => {
  const run = promisify(execFile);
  const lock = () => join(folder, 'cache/make-ready.lock');

  /** Starts a process that takes the lock, notes when it is in and out, and holds it for a moment. */
  const worker = (name: string) =>
    run(process.execPath, [
      '--input-type=module',
      '-e',
      `import { oneAtATime } from ${JSON.stringify(join(projectFolder, 'scripts/ready/one-at-a-time.mjs'))};
       import { appendFileSync } from 'node:fs';
       const note = (word) => appendFileSync(${JSON.stringify(join(folder, 'notes'))}, word + ' ${name}\\n');
       await oneAtATime(${JSON.stringify(lock())}, async () => {
         note('in'); await new Promise((done) => setTimeout(done, 80)); note('out');
       });`,
    ]);

  const notes = () => readFileSync(join(folder, 'notes'), 'utf8').trim().split('\n');

  test('four at once go in one after another, also past a lock that a dead process left behind', async () => {
    const dead = spawnSync(process.execPath, ['-e', '']).pid;
    mkdirSync(join(folder, 'cache'));
    writeFileSync(lock(), `${dead} 1`);
    await Promise.all(['a', 'b', 'c', 'd'].map(worker));
    const said = notes();
    expect(said).toHaveLength(8);
    for (let at = 0; at < said.length; at += 2) expect(said[at + 1]).toBe(said[at]?.replace('in', 'out'));
    expect(existsSync(lock())).toBe(false);
  });

  test('a lock that nobody has touched for minutes is taken over, even if its number runs again as another program', async () => {
    mkdirSync(join(folder, 'cache'));
    writeFileSync(lock(), `${process.pid} 1`);
    const longAgo = new Date(Date.now() - 10 * 60_000);
    utimesSync(lock(), longAgo, longAgo);
    await worker('a');
    expect(notes()).toEqual(['in a', 'out a']);
  });

  test('who waits says for whom', async () => {
    mkdirSync(join(folder, 'cache'));
    writeFileSync(lock(), `${process.pid} 1`);
    const waiting = worker('a');
    await new Promise((done) => waiting.child.stdout?.once('data', done));
    expect(existsSync(join(folder, 'notes'))).toBe(false);
    rmSync(lock());
    expect((await waiting).stdout).toContain(`process ${process.pid}`);
  });
});

describe('what is missing is said in one sentence', () => {
  test.for([
    ['18.19.1', true],
    ['20.10.0', true],
    ['20.11.0', false],
    ['22.0.0', false],
  ] as const)('Node %s', ([version, refused]) => {
    const refusal = refusalOf(version);
    expect(refusal !== null).toBe(refused);
    if (refused) expect(refusal).toContain('install a newer Node');
  });

  test.for([
    ['npm error code ENOTFOUND\nnpm error network request to …', 'no way out to the internet'],
    ['npm error code ENOSPC', 'disk is full'],
    ['npm error code EUSAGE', 'npm install'],
    ['npm error code EACCES', 'may not be written'],
    ['npm error code EINTEGRITY', 'npm cache clean'],
  ] as const)('%s', ([said, remedy]) => {
    expect(remedyFor(said, 'install its libraries')).toContain(remedy);
  });

  test('a cause we do not know is not explained away', () => {
    expect(remedyFor('npm error code EWHATEVER', 'install its libraries')).toBeNull();
  });
});

describe('installing again only when something changed', () => {
  const lockOf = (versionOfZod: string) => ({
    '': { optionalDependencies: { 'far-browser': '1' } },
    'node_modules/zod': { version: versionOfZod },
    'node_modules/other-machine': { version: '1.0.0', optional: true, os: ['no-such-system'] },
    'node_modules/part-of-it': { version: '1.0.0', optional: true },
    'node_modules/far-browser': { version: '1.0.0', optional: true },
  });
  const installed = (packages: object) => {
    mkdirSync(join(folder, 'node_modules'));
    writeFileSync(join(folder, 'node_modules/.package-lock.json'), JSON.stringify({ packages }));
  };

  test('the same versions agree, and optional libraries of other machines may be absent', () => {
    installed({ 'node_modules/zod': { version: '4.0.0' }, 'node_modules/far-browser': { version: '1.0.0' } });
    expect(installedAgreesWith(folder, lockOf('4.0.0'))).toBe(true);
    expect(installedAgreesWith(folder, lockOf('4.0.1'))).toBe(false);
  });

  test('an optional library of our own choice must be there', () => {
    installed({ 'node_modules/zod': { version: '4.0.0' } });
    expect(installedAgreesWith(folder, lockOf('4.0.0'))).toBe(false);
  });

  test('nothing installed agrees with nothing', () => {
    expect(installedAgreesWith(folder, lockOf('4.0.0'))).toBe(false);
  });
});

test('sources are the same by content: a touched file is no change, a changed, added or renamed one is', () => {
  mkdirSync(join(folder, 'src'));
  const put = (name: string, text: string) => writeFileSync(join(folder, 'src', name), text);
  const mark = () => hashOfPaths(folder, ['src', 'not-there']);
  put('a.ts', '1');
  const first = mark();
  put('a.ts', '1');
  expect(mark()).toBe(first);
  put('a.ts', '2');
  const second = mark();
  put('b.ts', '2');
  const third = mark();
  rmSync(join(folder, 'src/b.ts'));
  put('c.ts', '2');
  expect(new Set([first, second, third, mark()]).size).toBe(4);
});

describe('the closing line', () => {
  const module = (states: readonly string[], state: string) =>
    ({
      children: { allTests: () => states.map((one) => ({ result: () => ({ state: one }) })) },
      state: () => state,
    }) as unknown as TestModule;

  test('counts what passed, failed and was skipped', () => {
    const counts = tally(
      [module(['passed', 'failed', 'skipped'], 'failed'), module(['passed', 'pending'], 'passed')],
      [],
    );
    expect(counts).toEqual({ passedCount: 2, failedCount: 1, skippedCount: 2 });
  });

  test('a file that breaks before its first test, and an error outside any test, are failures', () => {
    expect(tally([module([], 'failed')], [{ message: 'x' }])).toEqual({
      passedCount: 0,
      failedCount: 2,
      skippedCount: 0,
    });
  });
});
