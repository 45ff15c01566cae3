import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { projectFolder } from './law/read-tree.ts';

const run = promisify(execFile);

/** What the linter says is wrong; empty when all is well. */
async function lintFaults(folder: string): Promise<string> {
  const linter = join(projectFolder, 'node_modules/@biomejs/biome/bin/biome');
  try {
    await run(process.execPath, [linter, 'check', '--max-diagnostics=40', '--colors=off', folder], {
      cwd: projectFolder,
      maxBuffer: 50_000_000,
    });
    return '';
  } catch (error) {
    const { stdout = '', stderr = '' } = error as { stdout?: string; stderr?: string };
    return `${stdout}\n${stderr}`;
  }
}

test('the linter and the formatter find nothing to put right', async () => {
  const faults = await lintFaults('.');
  expect(faults === '', `\n${faults}\n"npm run format" puts most of it right.\n`).toBe(true);
});
