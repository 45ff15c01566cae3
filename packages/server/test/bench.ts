/** A server over a store of its own, with its day and its chance fixed. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { asDay } from '@leywright/measures';
import { openStore } from '@leywright/store';
import type { FastifyInstance } from 'fastify';
import { buildApp } from '../src/app/build-app.ts';
import type { Desk } from '../src/app/desk.ts';
import { farmShelf } from '../src/farm/shelf.ts';
import { type Access, openAccess } from '../src/guards/access.ts';
import { keptPlans } from '../src/plans/kept-plans.ts';
import { makeHere } from '../src/plans/plan-maker.ts';

export interface Bench {
  readonly app: FastifyInstance;
  readonly desk: Desk;
  readonly close: () => Promise<void>;
}

export interface Log {
  readonly write: (line: string) => unknown;
}

export const ownHost = '127.0.0.1:7345';

export async function openBench(
  webRoot: string | null = null,
  ways: Partial<Access> = {},
  log: Log = process.stderr,
): Promise<Bench> {
  const folder = mkdtempSync(join(tmpdir(), 'leywright-server-'));
  const opened = await openStore(join(folder, 'farms.sqlite'));
  if (opened.kind !== 'open') throw new Error(opened.problem.code);
  const draw = chance(20_270_608);
  const shelf = farmShelf(opened.store);
  const desk: Desk = {
    store: opened.store,
    shelf,
    plans: keptPlans(opened.store, makeHere(shelf)),
    clock: { isDaySaid: true, today: () => asDay('2027-06-08'), now: () => '2027-06-08T06:00:00.000Z' },
    random: (bytes) => Uint8Array.from({ length: bytes }, draw),
    version: '0.1.0',
  };
  const access = { ...(await openAccess(() => `http://${ownHost}`)), ...ways };
  const app = await buildApp({ desk, webRoot, access, log });
  const close = async () => {
    await app.close();
    await opened.store.close();
    rmSync(folder, { recursive: true, force: true });
  };
  return { app, desk, close };
}

/** Bytes by chance from a seed (xorshift of 32 bits). */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return state & 0xff;
  };
}

/** A request as the pages make it. */
export async function ask(app: FastifyInstance, method: 'GET' | 'POST', url: string, payload?: unknown) {
  const answer = await app.inject({
    method,
    url,
    headers: { host: ownHost },
    ...(payload === undefined ? {} : { payload: payload as object }),
  });
  return {
    status: answer.statusCode,
    headers: answer.headers,
    text: answer.body,
    bytes: answer.rawPayload,
    json: () => JSON.parse(answer.body) as unknown,
  };
}

export const firstSentence = { plots: 6, areaHa: 5.2, near: 'Cambridge', items: 7, households: 120, weeks: 49 };

const demo = join(import.meta.dirname, '..', '..', '..', 'demo');

/** The sample farm's files as the pages send them. */
export function demoFiles(): Readonly<Record<string, string>> {
  return Object.fromEntries(readdirSync(demo).map((name) => [name, readFileSync(join(demo, name), 'utf8')]));
}
