/** Runs the real command, as people do. */
import { execFile, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, vi } from 'vitest';

// Each case starts the command some times over, on machines that are busy with others.
vi.setConfig({ testTimeout: 90_000 });

export const project = join(import.meta.dirname, '..', '..', '..');
export const binary = join(project, 'packages', 'cli', 'bin', 'leywright.mjs');
const built = join(project, 'packages', 'cli', 'dist', 'leywright.mjs');

// `npm test` has built it; a single test run in a fresh clone builds it here.
if (!existsSync(built))
  spawnSync(process.execPath, [join(project, 'scripts', 'make-ready.mjs'), 'build'], {
    cwd: project,
    stdio: 'inherit',
  });

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

const longestMs = 60_000;

/** The command with these words, in the project's folder; `input` goes to its standard input. */
export function leywright(words: readonly string[], input = ''): Promise<Ran> {
  return new Promise((resolve) => {
    const child = execFile(
      process.execPath,
      [binary, ...words],
      { cwd: project, maxBuffer: 64_000_000, timeout: longestMs },
      (error, out, err) => {
        resolve({ code: error === null ? 0 : Number(error.code ?? -1), out, err });
      },
    );
    child.stdin?.on('error', () => undefined); // a command that refuses does not read
    child.stdin?.end(input);
  });
}

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A new empty folder, taken away after the tests. */
export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'leywright-cli-'));
  folders.push(folder);
  return folder;
}

/** A farm folder of these files. */
export function farmFolder(files: Readonly<Record<string, string>>): string {
  const folder = newFolder();
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  return folder;
}

/** Two plots by name and place, nothing else: a farm with nothing to put right. */
export const smallFarm: Readonly<Record<string, string>> = {
  'farm.json': JSON.stringify({
    id: 'small',
    name: 'Small Farm',
    place: {
      lat_deg: 52.2,
      lon_deg: 0.1,
      elevation_m: 20,
      near: 'Cambridge',
      jurisdiction: 'England',
      time_zone: 'Europe/London',
    },
  }),
  'plots.csv':
    'id,letter,name,kind,gross_ha,status,from\na,A,Ash Piece,permanent,1.00,organic,2027-01-01\nb,B,Brook Doles,permanent,0.50,organic,2027-01-01\n',
};

export const on = ['--today', '2027-06-08'] as const;
