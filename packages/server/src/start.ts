/** Starts the server: the one place where clock, chance, disk and network meet. */
import { randomBytes } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { refusalSentence } from '@leywright/api';
import { asDay, type Day, type FarmId } from '@leywright/measures';
import { openStore, type Store, storeFile } from '@leywright/store';
import type { ServeWish } from './app/arguments.ts';
import { buildApp } from './app/build-app.ts';
import type { Clock, Desk } from './app/desk.ts';
import { startBackups } from './backup/schedule.ts';
import { webFolder } from './disk/project-folders.ts';
import { openSample } from './farm/sample.ts';
import { allEntries, farmShelf } from './farm/shelf.ts';
import { settleAccess } from './guards/settle.ts';
import { eraseWhatIsOver } from './households/keeping.ts';
import { keptPlans, type PlanMaker } from './plans/kept-plans.ts';
import { makeHere, threadIfBuilt } from './plans/plan-maker.ts';

export type Started =
  | {
      readonly kind: 'started';
      readonly address: string;
      /** What is worth saying about how it answers. */
      readonly said: readonly string[];
      readonly stop: () => Promise<void>;
    }
  | { readonly kind: 'refused'; readonly sentence: string };

export const version = '0.1.0';

export async function start(wish: ServeWish): Promise<Started> {
  const opened = await openFolder(wish.folder);
  if (opened.kind === 'refused') return opened;
  const { store } = opened;
  const desk = deskOver(store, clockOf(wish.today), threadIfBuilt(join(wish.folder, storeFile)));
  const said = wish.sample ? await openSample(desk) : null;
  if (said !== null) process.stderr.write(`${said}\n`);
  const settled = await settleAccess(wish, store, Date.now());
  if (settled.kind === 'refused') {
    await store.close();
    return settled;
  }
  const backups = startBackups({
    store,
    folder: wish.backups ?? join(wish.folder, 'backups'),
    day: () => clockOf(null).today(),
    say: (sentence) => process.stderr.write(`${sentence}\n`),
  });
  const scheme = settled.tls === null ? 'http' : 'https';
  let address = settled.address ?? `${scheme}://${wish.host}:${wish.port}`;
  const access = await settled.access(() => address);
  const app = await buildApp({ desk, webRoot: webFolder(), access, log: process.stderr, tls: settled.tls });
  try {
    const listening = await app.listen({ host: wish.host, port: wish.port });
    address = settled.address ?? addressOf(wish.host, listening, app.server.address());
  } catch (error) {
    await app.close();
    await backups.stop();
    await store.close();
    return { kind: 'refused', sentence: portSentence(error, wish) };
  }
  const stopErasing = eraseDaily(desk);
  const stop = async () => {
    stopErasing();
    await app.close();
    await desk.plans.close();
    await backups.stop();
    await store.close();
  };
  return { kind: 'started', address, said: settled.said, stop };
}

/** Where people find it: listening everywhere is no address, so the machine's own name is. */
function addressOf(host: string, listening: string, at: AddressInfo | string | null): string {
  if (host !== '0.0.0.0' && host !== '::') return listening;
  const port = at !== null && typeof at === 'object' ? `:${at.port}` : '';
  return `${new URL(listening).protocol}//${hostname().toLowerCase()}${port}`;
}

const dayMs = 86_400_000;

/** What is kept about households no longer than needed goes by itself: when the server starts, and every day. */
function eraseDaily({ store, clock }: Desk): () => void {
  const erase = () =>
    eraseWhatIsOver(store, clock.today(), clock.now()).catch((error: unknown) => {
      process.stderr.write(`${refusalSentence('not-erased', { found: String(error) })}\n`);
    });
  void erase();
  const timer = setInterval(erase, dayMs);
  timer.unref();
  return () => clearInterval(timer);
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

/** Plans are worked out here, unless a thread is given for them. */
export function deskOver(store: Store, clock: Clock, thread: PlanMaker | null = null): Desk {
  const shelf = farmShelf(store);
  const plans = keptPlans(store, thread ?? makeHere(shelf));
  return { store, shelf, plans, clock, random: (bytes) => randomBytes(bytes), version };
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

function portSentence(error: unknown, { host, port }: ServeWish): string {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  if (code === 'EADDRINUSE')
    return `Port ${port} is in use: Leywright may be running already. Open http://${host}:${port}, or give another with --port.`;
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
