/** Starts the server: the one place where clock, chance, disk and network meet. */
import { randomBytes } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { refusalSentence } from '@leywright/api';
import { asDay, type Day, type FarmId } from '@leywright/measures';
import { openStore, type Store } from '@leywright/store';
import type { ServeWish } from './app/arguments.ts';
import { buildApp } from './app/build-app.ts';
import type { Clock, Desk } from './app/desk.ts';
import { webFolder } from './disk/project-folders.ts';
import { openSample } from './farm/sample.ts';
import { allEntries, farmShelf } from './farm/shelf.ts';

export type Started =
  | { readonly kind: 'started'; readonly address: string; readonly stop: () => Promise<void> }
  | { readonly kind: 'refused'; readonly sentence: string };

/** Name of the store's file in its folder. */
export const storeFile = 'leywright.sqlite';
export const version = '0.1.0';
const thisMachine = '127.0.0.1';

export async function start(wish: ServeWish): Promise<Started> {
  const opened = await openFolder(wish.folder);
  if (opened.kind === 'refused') return opened;
  const desk = deskOver(opened.store, clockOf(wish.today));
  const said = wish.sample ? await openSample(desk) : null;
  if (said !== null) process.stderr.write(`${said}\n`);
  let address = `http://${thisMachine}:${wish.port}`;
  const app = await buildApp({ desk, webRoot: webFolder(), address: () => address, log: process.stderr });
  try {
    address = await app.listen({ host: thisMachine, port: wish.port });
  } catch (error) {
    await app.close();
    await opened.store.close();
    return { kind: 'refused', sentence: portSentence(error, wish.port) };
  }
  const stop = async () => {
    await app.close();
    await opened.store.close();
  };
  return { kind: 'started', address, stop };
}

/** Opens the store of a data folder, making both when they are new. */
export async function openFolder(
  folder: string,
): Promise<{ readonly kind: 'open'; readonly store: Store } | { readonly kind: 'refused'; readonly sentence: string }> {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    return {
      kind: 'refused',
      sentence: refusalSentence('cannot-open', { found: error instanceof Error ? error.message : String(error) }),
    };
  }
  const opened = await openStore(join(folder, storeFile));
  if (opened.kind === 'open') return opened;
  const { code, ...figures } = opened.problem;
  return { kind: 'refused', sentence: refusalSentence(code, figures) };
}

export function deskOver(store: Store, clock: Clock): Desk {
  return { store, shelf: farmShelf(store), clock, random: (bytes) => randomBytes(bytes), version };
}

/** The day follows the machine's clock and zone. Where one was given, what comes in is received on that day too, at the hour it is. */
export function clockOf(fixed: Day | null): Clock {
  const localDay = () => {
    const now = new Date();
    const two = (number: number) => String(number).padStart(2, '0');
    return asDay(`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`);
  };
  return { isDaySaid: fixed !== null, today: () => fixed ?? localDay(), now: () => instantOn(fixed) };
}

function instantOn(fixed: Day | null): string {
  const now = new Date().toISOString();
  return fixed === null ? now : `${fixed}${now.slice(fixed.length)}`;
}

function portSentence(error: unknown, port: number): string {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  if (code === 'EADDRINUSE')
    return `Port ${port} is in use: Leywright may be running already. Open http://${thisMachine}:${port}, or give another with --port.`;
  if (code === 'EACCES') return `Port ${port} may not be used by you: give one above 1023 with --port.`;
  return refusalSentence('cannot-open', { found: error instanceof Error ? error.message : String(error) });
}

/** A farm with its whole book, for commands that look into a store without serving it. */
export async function farmInStore(store: Store, id: FarmId) {
  const open = await farmShelf(store).open(id);
  return open === null
    ? null
    : {
        farm: open.farm,
        described: open.described,
        bookFindings: open.bookFindings,
        entries: await allEntries(store, id),
      };
}
