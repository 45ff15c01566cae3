// What every browser test starts from: a browser, the built app on a temporary data folder, and a test that is skipped
// with its reason where there is no browser, never passed.
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { test } from 'vitest';
import { type BrowserFound, findBrowser } from './find-browser.ts';

const projectFolder = resolve(import.meta.dirname, '..');
const serverProgram = join(projectFolder, 'packages/server/dist/main.mjs');
const commandProgram = join(projectFolder, 'packages/cli/dist/leywright.mjs');
const READY_WITHIN_MS = 30_000;
const STOP_WITHIN_MS = 5_000;

const found = await findBrowser();

/** Why there is no browser to test in, or null when there is one. */
export const browserReason: string | null = found.kind === 'none' ? found.reason : null;

/** Starts a browser without a window. Close it when done. Throws when `browserReason` says there is none. */
export async function openBrowser(): Promise<Browser> {
  if (found.kind === 'none') throw new Error(found.reason);
  return chromium.launch(launching(found));
}

function launching(browser: Extract<BrowserFound, { kind: 'found' }>) {
  return {
    executablePath: browser.executable,
    env: { ...process.env, ...browser.environment } as Record<string, string>,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--font-render-hinting=none',
    ],
  };
}

export interface Phone {
  readonly page: Page;
  /** Ends the browser as a flat battery does: nothing is told, nothing is closed. */
  readonly kill: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** A browser of phone size that keeps what it holds in `folder`, so that it can be killed and started again. */
export async function openPhone(folder: string): Promise<Phone> {
  if (found.kind === 'none') throw new Error(found.reason);
  const context = await chromium.launchPersistentContext(folder, {
    ...launching(found),
    viewport: { width: 390, height: 844 },
    hasTouch: true,
  });
  const page = context.pages()[0] ?? (await context.newPage());
  const kill = async () => {
    const gone = new Promise((resolve) => context.once('close', resolve));
    for (const pid of pidsNaming(folder)) process.kill(pid, 'SIGKILL');
    await gone;
  };
  return { page, kill, close: () => context.close() };
}

/** Programs of ours that name this folder, which no other program knows. */
function pidsNaming(folder: string): readonly number[] {
  const listed = spawnSync('ps', ['-axo', 'pid=,args='], { encoding: 'utf8' }).stdout;
  return listed
    .split('\n')
    .filter((line) => line.includes(folder) && !line.includes('ps -axo'))
    .map((line) => Number.parseInt(line, 10))
    .filter((pid) => Number.isInteger(pid) && pid !== process.pid);
}

export interface AppSettings {
  /** 'sample' for the sample farm, or a farm folder to open; without it the app starts with no farm at all. */
  readonly farm?: string;
  /** The farm's day, as 2027-04-18. */
  readonly today: string;
  /** What is done to the data folder before the server starts. */
  readonly before?: (dataFolder: string) => Promise<void>;
  /** More words for the server. */
  readonly words?: readonly string[];
}

export interface RunningApp {
  /** Such as http://127.0.0.1:41234, without a slash at the end. */
  readonly address: string;
  readonly dataFolder: string;
  /** Stops the server and takes its data folder away. */
  readonly stop: () => Promise<void>;
}

/** Starts the built server on a free port with a temporary data folder. */
export async function startApp(settings: AppSettings): Promise<RunningApp> {
  if (!existsSync(serverProgram)) throw new Error('The server is not built. Run "npm run build" first.');
  const dataFolder = mkdtempSync(join(tmpdir(), 'leywright-task-'));
  const takeAway = () => rmSync(dataFolder, { recursive: true, force: true, maxRetries: 5 });
  try {
    if (settings.farm !== undefined && settings.farm !== 'sample')
      await importFarm(resolve(projectFolder, settings.farm), dataFolder);
    await settings.before?.(dataFolder);
    const portText = String(await freePort());
    const settingsText = [
      '--data',
      dataFolder,
      '--port',
      portText,
      '--today',
      settings.today,
      ...(settings.words ?? []),
    ];
    if (settings.farm === 'sample') settingsText.push('--sample');
    const server = spawn(process.execPath, [serverProgram, ...settingsText], { stdio: ['ignore', 'pipe', 'pipe'] });
    const killOnExit = () => server.kill('SIGKILL');
    process.once('exit', killOnExit);
    const stop = async () => {
      await stopServer(server);
      process.removeListener('exit', killOnExit);
      takeAway();
    };
    try {
      return { address: await addressFrom(server), dataFolder, stop };
    } catch (error) {
      await stop();
      throw error;
    }
  } catch (error) {
    takeAway();
    throw error;
  }
}

export interface TaskTools {
  readonly page: Page;
  readonly app: RunningApp;
  readonly browser: Browser;
}

export interface TaskSettings extends AppSettings {
  readonly context?: BrowserContextOptions;
}

/**
 * One grower's task as a test: starts the app and a browser at 1440 × 900, opens the first page, and puts both away at the end.
 * An error the page itself reports (an exception, or something its policy forbids) fails the test.
 */
export function task(name: string, settings: TaskSettings, steps: (tools: TaskTools) => Promise<void>): void {
  test(name, async (context) => {
    if (browserReason !== null) {
      if (process.env['CI'] === 'true') throw new Error(browserReason);
      context.skip(browserReason);
    }
    const app = await startApp(settings);
    const browser = await openBrowser();
    try {
      const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, ...settings.context });
      const pageErrors: string[] = [];
      page.on('pageerror', (error) => pageErrors.push(error.message));
      page.on('console', (message) => {
        if (message.text().includes('Content Security Policy')) pageErrors.push(message.text());
      });
      await page.goto(app.address);
      await steps({ page, app, browser });
      if (pageErrors.length > 0) throw new Error(`The page reported: ${pageErrors.join('; ')}`);
    } finally {
      await browser.close();
      await app.stop();
    }
  });
}

async function importFarm(folder: string, dataFolder: string): Promise<void> {
  const { code, said } = await runToEnd([commandProgram, 'import', folder, '--data', dataFolder]);
  if (code !== 0 && code !== 1) throw new Error(`The farm folder ${folder} was not opened:\n${said}`);
}

/** Runs the built command on a data folder and gives what it printed. */
export async function command(words: readonly string[], dataFolder: string): Promise<string> {
  const { code, said } = await runToEnd([commandProgram, ...words, '--data', dataFolder]);
  if (code !== 0) throw new Error(said);
  return said;
}

function runToEnd(programAndWords: readonly string[]): Promise<{ code: number | null; said: string }> {
  return new Promise((settle, fail) => {
    const child = spawn(process.execPath, programAndWords, { stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    const listen = (text: Buffer) => {
      said += text.toString();
    };
    child.stdout.on('data', listen);
    child.stderr.on('data', listen);
    child.once('error', fail);
    child.once('close', (code) => settle({ code, said }));
  });
}

/** Waits for the line "Leywright is ready at http://…". */
function addressFrom(server: ChildProcess): Promise<string> {
  return new Promise((settle, fail) => {
    let said = '';
    const tooLate = setTimeout(
      () => give(new Error(`The server was not ready within ${READY_WITHIN_MS / 1000} s.\n${said}`)),
      READY_WITHIN_MS,
    );
    const give = (answer: string | Error) => {
      clearTimeout(tooLate);
      if (typeof answer === 'string') settle(answer);
      else fail(answer);
    };
    const listen = (text: Buffer) => {
      said += text.toString();
      const address = /is ready at (http:\/\/[\d.:]+)/.exec(said)?.[1];
      if (address !== undefined) give(address);
    };
    server.stdout?.on('data', listen);
    server.stderr?.on('data', listen);
    server.once('exit', (code) => give(new Error(`The server stopped before it was ready (exit ${code}).\n${said}`)));
  });
}

function stopServer(server: ChildProcess): Promise<void> {
  if (server.exitCode !== null || server.signalCode !== null) return Promise.resolve();
  return new Promise((settle) => {
    const force = setTimeout(() => server.kill('SIGKILL'), STOP_WITHIN_MS);
    server.once('exit', () => {
      clearTimeout(force);
      settle();
    });
    server.kill('SIGTERM');
  });
}

function freePort(): Promise<number> {
  return new Promise((settle, fail) => {
    const probe = createServer();
    probe.once('error', fail);
    probe.listen(0, '127.0.0.1', () => {
      const place = probe.address();
      probe.close(() =>
        place !== null && typeof place === 'object' ? settle(place.port) : fail(new Error('no free port')),
      );
    });
  });
}
