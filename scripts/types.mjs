// Checks the types of the whole project, in three parts that may see different things: pure packages, Node, browser.
import { spawn } from 'node:child_process';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { embedReference } from './embed-reference.mjs';

const projectFolder = resolve(dirname(fileURLToPath(import.meta.url)), '..');

/** @type {readonly { settings: string, says: string }[]} */
export const parts = [
  { settings: 'tsconfig.pure.json', says: 'pure packages (no clock, no machine, no screen)' },
  { settings: 'tsconfig.node.json', says: 'store, server, command, tests and scripts' },
  { settings: 'tsconfig.web.json', says: 'web app' },
];

/**
 * @param {string} settings such as tsconfig.pure.json
 * @returns {Promise<{ settings: string, faults: string[], seconds: number }>} one line of text a fault
 */
export function checkTypes(settings) {
  const startedAtMs = Date.now();
  const compiler = join(projectFolder, 'node_modules', 'typescript', 'bin', 'tsc');
  return new Promise((settle, fail) => {
    const child = spawn(process.execPath, [compiler, '-p', settings, '--pretty', 'false'], { cwd: projectFolder });
    let said = '';
    child.stdout.on('data', (text) => {
      said += text;
    });
    child.stderr.on('data', (text) => {
      said += text;
    });
    child.once('error', fail);
    child.once('close', (code) => {
      const lines = said.split('\n').filter((line) => line.trim() !== '');
      const faults = code === 0 ? [] : lines.length > 0 ? lines : [`tsc stopped with exit ${code} and said nothing`];
      settle({ settings, faults, seconds: (Date.now() - startedAtMs) / 1000 });
    });
  });
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await embedReference(); // the pure packages import it
  let faultCount = 0;
  for (const part of parts) {
    const { faults, seconds } = await checkTypes(part.settings);
    for (const fault of faults) console.log(fault);
    const starts = faults.filter((line) => !line.startsWith(' ')).length;
    faultCount += starts;
    console.log(
      `${starts === 0 ? 'fine' : `${starts} to put right`}: ${part.says} (${part.settings}, ${seconds.toFixed(1)} s)`,
    );
  }
  process.exitCode = faultCount === 0 ? 0 : 1;
}
