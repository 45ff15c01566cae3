/** A server that asks for sign-in, with a farm and someone of every role; and browsers that keep their cookie. */
import { httpShapes, peopleShapes } from '@leywright/api';
import { type Role, readFarmFolder } from '@leywright/book';
import { asDay, asId, type FarmId, type PersonId } from '@leywright/measures';
import { knownNames } from '@leywright/planner';
import type { FastifyInstance } from 'fastify';
import { foundFromFolder } from '../../src/farm/found.ts';
import type { Access } from '../../src/guards/access.ts';
import { loadPasswords, type Passwords } from '../../src/people/password.ts';
import { bytesOfBase32, codeOf, stepAt } from '../../src/people/totp.ts';
import { type Bench, demoFiles, type Log, openBench, ownHost } from '../bench.ts';

export const password = 'leeks under snow';
export const startMs = Date.parse('2027-06-08T06:00:00Z');
export const origin = `http://${ownHost}`;
/** Base32 of the secret that RFC 6238 uses. */
export const factorSecret = 'GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ';

export interface PeopleBench extends Bench {
  readonly farm: FarmId;
  /** Another farm of the same store, whose ids must stay unknown. */
  readonly other: FarmId;
  readonly clock: { nowMs: number };
}

/** The real hashes take a twentieth of a second each on purpose; tests that are not about them use one made once. */
export async function quickPasswords(): Promise<Passwords> {
  const real = await sharedPasswords;
  const tried = new Map<string, Promise<boolean>>();
  const isRight = (word: string, kept: string) => {
    const name = `${word} ${kept}`;
    const known = tried.get(name) ?? real.isRight(word, kept);
    tried.set(name, known);
    return known;
  };
  return { ...real, isRight };
}

export async function openPeopleBench(ways: Partial<Access> = {}, log?: Log): Promise<PeopleBench> {
  const clock = { nowMs: startMs };
  const bench = await openBench(
    null,
    {
      isAsked: true,
      passwords: await quickPasswords(),
      nowMs: () => clock.nowMs,
      ...ways,
    },
    log,
  );
  const begin = async (files: Readonly<Record<string, string>>) => {
    const founding = await foundFromFolder(bench.desk, readFarmFolder(new Map(Object.entries(files)), knownNames()));
    if (founding.kind !== 'founded') throw new Error(founding.problems[0]?.sentence);
    return founding.farm.id;
  };
  const farm = await begin(demoFiles());
  const other = await begin(otherFiles);
  return { ...bench, farm, other, clock };
}

const otherFiles = {
  'farm.json': JSON.stringify({
    id: 'other-farm',
    name: 'Secret Meadow',
    place: {
      lat_deg: 52.2,
      lon_deg: 0.1,
      elevation_m: 20,
      near: 'Cambridge',
      jurisdiction: 'England',
      time_zone: 'Europe/London',
    },
  }),
  'plots.csv': 'id,letter,name,kind,gross_ha,status,from\nq,Q,Secret Corner,permanent,1.00,organic,2027-01-01\n',
};

/** Makes an account as an invitation would; a grower's second factor is on. */
export async function addPerson(
  bench: PeopleBench,
  person: string,
  role: Role,
  { farm = bench.farm, asKnownOn = null as string | null } = {},
): Promise<void> {
  const { people } = bench.desk.store;
  const id = asId<PersonId>(person);
  await people.addAccount({
    farm,
    person: id,
    name: `${person} of ${farm}`,
    role,
    asKnownOn: asKnownOn === null ? null : asDay(asKnownOn),
    passwordHash: await (await sharedPasswords).hash(password),
    madeAt: new Date(bench.clock.nowMs).toISOString(),
  });
  if (role === 'grower') await people.changeAccount(farm, id, { secondFactor: { secret: factorSecret, isOn: true } });
}

const sharedPasswords = loadPasswords().then(async (real) => {
  const kept = await real.hash(password);
  return { ...real, hash: async (word: string) => (word === password ? kept : real.hash(word)) };
});

export function codeAt(nowMs: number, secret = factorSecret): string {
  return codeOf(bytesOfBase32(secret), stepAt(nowMs));
}

export interface Browser {
  readonly cookie: () => string | null;
  readonly ask: (method: Method, url: string, payload?: unknown) => Promise<Answer>;
}
export type Method = 'GET' | 'POST' | 'PUT' | 'DELETE';
export interface Answer {
  readonly status: number;
  readonly text: string;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly json: () => unknown;
  readonly code: () => string | null;
}

/** Asks as the pages do, and keeps what cookie it is given. */
export function browser(app: FastifyInstance, given: string | null = null): Browser {
  let cookie = given;
  return {
    cookie: () => cookie,
    ask: async (method, url, payload) => {
      const answer = await app.inject({
        method,
        url,
        headers: { host: ownHost, origin, ...(cookie === null ? {} : { cookie }) },
        ...(payload === undefined ? {} : { payload: payload as object }),
      });
      const put = answer.headers['set-cookie'];
      if (typeof put === 'string') cookie = put.split(';')[0] ?? null;
      return {
        status: answer.statusCode,
        text: answer.body,
        headers: answer.headers,
        json: () => JSON.parse(answer.body) as unknown,
        code: () => httpShapes.problems.safeParse(JSON.parse(answer.body)).data?.problems[0]?.code ?? null,
      };
    },
  };
}

export async function signedIn(bench: PeopleBench, person: string, farm = bench.farm): Promise<Browser> {
  const own = browser(bench.app);
  // Each code opens once, so that a second sign-in of a grower waits for the next.
  bench.clock.nowMs += 30_000;
  const answer = await own.ask('POST', '/api/sign-in', { farm, person, password, code: codeAt(bench.clock.nowMs) });
  if (answer.status !== 200) throw new Error(answer.text);
  peopleShapes.me.parse(answer.json());
  return own;
}
