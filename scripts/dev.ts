// `npm run dev`: server and web app with the sample farm on a temporary data folder. The screen follows as files are saved; so does the
// server, which starts again. `npm run dev -- --today 2027-06-08` sets the farm's day; `--farm FOLDER` opens another farm folder.
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { context } from 'esbuild';
import { createServer as createScreenServer } from 'vite';
import { build, commandProduct, nodeBundle, serverProduct } from './ready/build.mjs';

const projectFolder = resolve(import.meta.dirname, '..');
const SCREEN_PORT = 7180;
const SERVER_PORT = 7181;

const { values: wanted } = parseArgs({ options: { today: { type: 'string' }, farm: { type: 'string' } } });

const dataFolder = mkdtempSync(join(tmpdir(), 'leywright-dev-'));
let server: ChildProcess | null = null;
let ending = false;

function startServer(): void {
  const words = ['--data', dataFolder, '--port', String(SERVER_PORT)];
  if (wanted.today !== undefined) words.push('--today', wanted.today);
  if (wanted.farm === undefined) words.push('--sample');
  const started = spawn(process.execPath, [join(projectFolder, serverProduct.output), ...words], { stdio: 'inherit' });
  started.once('exit', (code) => {
    if (!ending && server === started)
      console.log(`  The server stopped (exit ${code}). It starts again when a file is saved.`);
  });
  server = started;
}

async function restartServer(): Promise<void> {
  const old = server;
  server = null;
  if (old !== null && old.exitCode === null) {
    await new Promise((done) => {
      old.once('exit', done);
      old.kill('SIGTERM');
    });
  }
  if (!ending) startServer();
}

/** Bundles the server now and after every saved change, and starts it anew each time. */
async function watchServer(): Promise<{ readonly dispose: () => Promise<void> }> {
  if (!existsSync(join(projectFolder, serverProduct.entry))) {
    console.log(`  The server is left out: ${serverProduct.entry} is not there.`);
    return { dispose: async () => {} };
  }
  const bundle = await context({
    ...nodeBundle(projectFolder, serverProduct),
    logLevel: 'warning',
    plugins: [
      {
        name: 'start the server again',
        setup: (bundling) =>
          bundling.onEnd(async (result) => {
            if (result.errors.length === 0) await restartServer();
          }),
      },
    ],
  });
  await bundle.watch();
  return bundle;
}

async function openFolder(folder: string): Promise<void> {
  await build(projectFolder, { sayAbsent: false });
  const command = join(projectFolder, commandProduct.output);
  const child = spawn(process.execPath, [command, 'import', folder, '--data', dataFolder], { stdio: 'inherit' });
  await new Promise((done) => child.once('exit', done));
}

if (wanted.farm !== undefined) await openFolder(wanted.farm);
const bundle = await watchServer();
const screen = await createScreenServer({
  root: join(projectFolder, 'packages/web'),
  server: { port: SCREEN_PORT, host: '127.0.0.1', proxy: { '/api': `http://127.0.0.1:${SERVER_PORT}` } },
});
await screen.listen();
console.log(`  Leywright for working on: http://127.0.0.1:${SCREEN_PORT} (server on ${SERVER_PORT}). Ctrl C ends it.`);

async function end(): Promise<void> {
  if (ending) return;
  ending = true;
  server?.kill('SIGTERM');
  await Promise.all([screen.close(), bundle.dispose()]);
  rmSync(dataFolder, { recursive: true, force: true, maxRetries: 5 });
  process.exit(0);
}
process.once('SIGINT', end);
process.once('SIGTERM', end);
