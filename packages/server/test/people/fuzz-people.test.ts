import { httpShapes } from '@leywright/api';
import { roles } from '@leywright/book';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ownHost } from '../bench.ts';
import {
  addPerson,
  type Browser,
  browser,
  type Method,
  openPeopleBench,
  origin,
  type PeopleBench,
  password,
  signedIn,
} from './people-bench.ts';
import { apiDoors } from './role-doors.ts';

let bench: PeopleBench;
let everyone: readonly Browser[];
beforeAll(async () => {
  bench = await openPeopleBench();
  for (const role of roles) await addPerson(bench, role, role);
  await addPerson(bench, 'stranger', 'grower', { farm: bench.other });
  await bench.desk.store.households.putHousehold(bench.other, {
    id: 'h-secret',
    size: 'small',
    drop: null,
    from: '2027-01-01' as never,
    to: null,
    person: { name: 'Secret Person', email: null, phone: null, address: null, without: [], note: null },
  });
  const signed: Browser[] = [];
  for (const role of roles) signed.push(await signedIn(bench, role));
  everyone = [browser(bench.app), ...signed];
});
afterAll(() => bench.close());

/** Of the other farm of this store: nobody of ours may ever read one of them. */
const secrets = /Secret Meadow|Secret Corner|Secret Person|stranger of other-farm/;
const script = '<script>alert(1)</script>';

const nasty = fc.oneof(
  fc.constantFrom(
    '..',
    '../../etc/passwd',
    '..%2f..%2fetc%2fpasswd',
    '%00',
    '\u0000',
    '__proto__',
    'constructor',
    'other-farm',
    'h-secret',
    'q',
    '=HYPERLINK("http://evil.example")',
    '+1+1',
    '@SUM(A1)',
    "' OR 1=1 --",
    '"; DROP TABLE accounts; --',
    script,
    '💧',
    'a'.repeat(400),
  ),
  fc.string({ unit: 'grapheme', maxLength: 40 }),
);
const nested = fc.constant(null).map(() => {
  let deep: unknown = 1;
  for (let level = 0; level < 2_000; level += 1) deep = [deep];
  return deep;
});
const value = fc.oneof(
  { weight: 6, arbitrary: nasty },
  { weight: 3, arbitrary: fc.jsonValue({ maxDepth: 3 }) },
  { weight: 1, arbitrary: nested },
  { weight: 1, arbitrary: fc.constant('x'.repeat(200_000)) },
);
const fields = [
  'farm',
  'person',
  'password',
  'newPassword',
  'code',
  'link',
  'name',
  'role',
  'asKnownOn',
  'mayEnter',
  'days',
  'size',
  'drop',
  'from',
  'to',
  'entries',
  'files',
  'plots',
  'sample',
  'z_m',
];
const body = fc.oneof(
  fc.dictionary(fc.constantFrom(...fields), value, { maxKeys: 8 }),
  fc.record({ person: nasty, name: nasty, role: fc.constantFrom(...roles), days: fc.integer() }),
  fc.record({
    size: nasty,
    drop: nasty,
    from: fc.constant('2027-01-01'),
    to: fc.constant(null),
    person: fc.record({
      name: nasty,
      email: nasty,
      phone: fc.constant(null),
      address: fc.constant(null),
      without: fc.array(nasty),
      note: nasty,
    }),
  }),
  value,
);
const request = fc.record({
  door: fc.constantFrom(...apiDoors),
  names: fc.array(nasty, { minLength: 3, maxLength: 3 }),
  isOwnFarm: fc.boolean(),
  body,
  caller: fc.nat({ max: roles.length }),
});
type Wish = typeof request extends fc.Arbitrary<infer W> ? W : never;

function urlOf({ door, names, isOwnFarm }: Wish): string {
  const [, path = ''] = door.split(' ');
  let at = 0;
  return path.replace(/:(\w+)|\*/g, (_all, name: string | undefined) => {
    if (name === 'farm' && isOwnFarm) return bench.farm;
    at += 1;
    return encodeURIComponent(names[at % names.length] ?? '');
  });
}

describe('whatever anyone sends to any route', () => {
  test('is answered or refused in words: never a fault of ours, another farm’s facts, or a page', async () => {
    await fc.assert(
      fc.asyncProperty(request, async (wish) => {
        const [method = 'GET'] = wish.door.split(' ');
        // Whoever signs out or changes a password by chance would only end the walk.
        fc.pre(wish.door !== 'POST /api/sign-out');
        const hasBody = method === 'POST' || method === 'PUT';
        const answer = await everyone[wish.caller]?.ask(
          method as Method,
          urlOf(wish),
          hasBody ? JSON.stringify(wish.body) : undefined,
        );
        if (answer === undefined) return;
        const where = `${wish.door} as ${wish.caller}: ${answer.status}`;
        expect(answer.status, `${where} ${answer.text.slice(0, 300)}`).toBeLessThan(500);
        expect(secrets.test(answer.text), where).toBe(false);
        if (answer.status >= 400) expect(httpShapes.problems.parse(answer.json()).problems.length).toBeGreaterThan(0);
        // A script in a name goes out as text only: JSON that no browser takes for a page.
        if (answer.text.includes('<script>')) {
          expect(String(answer.headers['content-type'])).toMatch(/^application\/(json|zip)/);
          expect(answer.headers['x-content-type-options']).toBe('nosniff');
        }
      }),
      { numRuns: 600, seed: 20_270_608 },
    );
  });

  test('a forged session opens nothing', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(
          nasty,
          fc
            .tuple(
              fc.constantFrom(bench.farm as string, bench.other as string, '__proto__'),
              fc.base64String({ minLength: 40, maxLength: 44 }),
            )
            .map((two) => two.join('~')),
        ),
        async (forged) => {
          const cookie = `leywright=${forged.replace(/[^\x21-\x7e]/g, '')}`;
          const answer = await bench.app.inject({
            url: `/api/farms/${bench.farm}/plan`,
            headers: { host: ownHost, origin, cookie },
          });
          expect(answer.statusCode).toBe(401);
        },
      ),
      { numRuns: 100 },
    );
  });

  test('another farm is as if it were not there, by every door and for everyone', async () => {
    for (const own of everyone.slice(1))
      for (const door of apiDoors.filter((one) => one.includes('/api/farms/:farm/'))) {
        const [method = 'GET', path = ''] = door.split(' ');
        const url = path.replace(':farm', bench.other).replace(/:\w+|\*/g, 'h-secret');
        const answer = await own.ask(method as Method, url, method === 'POST' || method === 'PUT' ? {} : undefined);
        expect([403, 404], `${door}: ${answer.status}`).toContain(answer.status);
        if (answer.status === 404) expect(answer.code(), door).toBe('no-such-farm');
        expect(secrets.test(answer.text), door).toBe(false);
      }
  });
});

test('neither passwords, codes nor tokens are in what the server logs, even when it fails', async () => {
  const lines: string[] = [];
  const held = await openPeopleBench({}, { write: (line) => lines.push(line) });
  await addPerson(held, 'hanna', 'hand');
  const own = await signedIn(held, 'hanna');
  const broken = new Proxy(held.desk.store.people, {
    get: (from, name) =>
      name === 'account' ? () => Promise.reject(new Error('the disk is gone')) : Reflect.get(from, name),
  });
  Object.defineProperty(held.desk.store, 'people', { value: broken });
  const failed = await own.ask('POST', '/api/sign-in', { farm: held.farm, person: 'hanna', password });
  expect(failed.status).toBe(500);
  expect(lines.length).toBeGreaterThan(0);
  const said = lines.concat(failed.text).join('\n');
  expect(said).not.toContain(password);
  expect(said).not.toContain(own.cookie()?.split('~')[1] ?? 'no token');
  await held.close();
});
