import { peopleShapes } from '@leywright/api';
import { asId, type PersonId } from '@leywright/measures';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hashOf } from '../../src/people/ticket.ts';
import { ownHost } from '../bench.ts';
import {
  addPerson,
  browser,
  codeAt,
  openPeopleBench,
  origin,
  type PeopleBench,
  password,
  signedIn,
} from './people-bench.ts';

let bench: PeopleBench;
beforeAll(async () => {
  bench = await openPeopleBench();
  await addPerson(bench, 'ruth', 'grower');
  await addPerson(bench, 'hanna', 'hand');
});
afterAll(() => bench.close());

const signIn = (body: object) => browser(bench.app).ask('POST', '/api/sign-in', { farm: bench.farm, ...body });

describe('signing in', () => {
  test('opens a session whose cookie no script sees and no other site sends', async () => {
    const answer = await signIn({ person: 'hanna', password });
    expect(answer.status).toBe(200);
    expect(answer.headers['set-cookie']).toMatch(/^leywright=.+; Path=\/; HttpOnly; SameSite=Strict; Max-Age=7776000$/);
    expect(peopleShapes.me.parse(answer.json()).visitor).toMatchObject({ person: 'hanna', role: 'hand' });
  });

  test('with a wrong password and with a name nobody has are refused in the same words', async () => {
    const wrong = await signIn({ person: 'hanna', password: 'leeks under rain' });
    const nobody = await signIn({ person: 'nobody', password });
    expect(wrong.status).toBe(401);
    expect(wrong.text).toBe(nobody.text);
  });

  test('as a grower asks for the second factor, and takes each code once', async () => {
    expect((await signIn({ person: 'ruth', password })).code()).toBe('code-needed');
    expect((await signIn({ person: 'ruth', password, code: '000000' })).code()).toBe('code-refused');
    const code = codeAt(bench.clock.nowMs);
    expect((await signIn({ person: 'ruth', password, code })).status).toBe(200);
    expect((await signIn({ person: 'ruth', password, code })).code()).toBe('code-refused');
  });

  test('is to wait, longer each time, after five failures; a right password does not shorten it', async () => {
    await addPerson(bench, 'tries', 'hand');
    for (let time = 0; time < 5; time += 1) await signIn({ person: 'tries', password: 'leeks under rain' });
    const waiting = await signIn({ person: 'tries', password });
    expect([waiting.status, waiting.code()]).toEqual([429, 'wait-before-sign-in']);
    bench.clock.nowMs += 31_000;
    await signIn({ person: 'tries', password: 'leeks under rain' });
    bench.clock.nowMs += 31_000;
    expect((await signIn({ person: 'tries', password })).status).toBe(429);
    bench.clock.nowMs += 30_000;
    expect((await signIn({ person: 'tries', password })).status).toBe(200);
  });

  test('keeps neither password nor token in the store', async () => {
    const own = await signedIn(bench, 'hanna');
    const token = own.cookie()?.split('~')[1] ?? '';
    const [account, sessions] = [
      await bench.desk.store.people.account(bench.farm, asId<PersonId>('hanna')),
      await bench.desk.store.people.sessions(bench.farm, asId<PersonId>('hanna')),
    ];
    expect(account?.passwordHash).toMatch(/^\$argon2id\$/);
    expect(JSON.stringify([account, sessions])).not.toContain(token);
    expect(sessions.map((session) => session.tokenHash)).toContain(hashOf(token));
  });
});

describe('a session', () => {
  test('ends when its person signs out, and its cookie opens nothing any more', async () => {
    const own = await signedIn(bench, 'hanna');
    const stolen = browser(bench.app, own.cookie());
    expect((await own.ask('POST', '/api/sign-out')).status).toBe(200);
    expect((await stolen.ask('GET', '/api/farms')).code()).toBe('sign-in-first');
  });

  test('can be ended from another, one by one or all others at once', async () => {
    const [one, two, three] = [
      await signedIn(bench, 'hanna'),
      await signedIn(bench, 'hanna'),
      await signedIn(bench, 'hanna'),
    ];
    const list = peopleShapes.sessions.parse((await one.ask('GET', '/api/me/sessions')).json()).sessions;
    const mine = peopleShapes.sessions.parse((await two.ask('GET', '/api/me/sessions')).json()).sessions;
    expect(list.filter((session) => session.isThis)).toHaveLength(1);
    const twos = mine.find((session) => session.isThis)?.id;
    expect((await one.ask('DELETE', `/api/me/sessions/${twos}`)).status).toBe(200);
    expect((await two.ask('GET', '/api/farms')).status).toBe(401);
    expect((await three.ask('GET', '/api/farms')).status).toBe(200);
    expect((await one.ask('DELETE', '/api/me/sessions')).status).toBe(200);
    expect((await three.ask('GET', '/api/farms')).status).toBe(401);
    expect((await one.ask('GET', '/api/farms')).status).toBe(200);
  });

  test('runs out after thirty days without a word, and after ninety in any case', async () => {
    await addPerson(bench, 'idle', 'hand');
    const own = await signedIn(bench, 'idle');
    for (const day of [29, 58, 87]) {
      bench.clock.nowMs += 29 * 86_400_000;
      expect((await own.ask('GET', '/api/farms')).status, `day ${day}`).toBe(200);
    }
    bench.clock.nowMs += 4 * 86_400_000;
    expect((await own.ask('GET', '/api/farms')).status).toBe(401);
    const other = await signedIn(bench, 'idle');
    bench.clock.nowMs += 31 * 86_400_000;
    expect((await other.ask('GET', '/api/farms')).status).toBe(401);
  });

  test('of somebody else cannot be ended, nor guessed', async () => {
    const [hanna, ruth] = [await signedIn(bench, 'hanna'), await signedIn(bench, 'ruth')];
    const [rs] = peopleShapes.sessions.parse((await ruth.ask('GET', '/api/me/sessions')).json()).sessions;
    expect((await hanna.ask('DELETE', `/api/me/sessions/${rs?.id}`)).code()).toBe('no-such-session');
    for (const forged of [
      'leywright=',
      'leywright=x',
      `leywright=${bench.farm}~${'A'.repeat(43)}`,
      `leywright=${hashOf('x')}`,
    ])
      expect((await browser(bench.app, forged).ask('GET', '/api/farms')).status).toBe(401);
    const token = hanna.cookie()?.split('~')[1];
    const moved = browser(bench.app, `leywright=${bench.other}~${token}`);
    expect((await moved.ask('GET', '/api/farms')).status).toBe(401);
  });
});

describe('a write', () => {
  test.each([
    [{}, 403],
    [{ origin: 'https://evil.example' }, 403],
    [{ origin: 'null' }, 403],
    [{ 'sec-fetch-site': 'cross-site' }, 403],
    [{ 'sec-fetch-site': 'same-site' }, 403],
    [{ origin }, 200],
    [{ 'sec-fetch-site': 'same-origin' }, 200],
  ])('that carries a cookie has to say that it comes from our own pages: %o → %i', async (headers, status) => {
    const own = await signedIn(bench, 'hanna');
    const answer = await bench.app.inject({
      method: 'POST',
      url: '/api/sign-out',
      headers: { host: ownHost, cookie: own.cookie() ?? '', ...headers },
    });
    expect(answer.statusCode, answer.body).toBe(status);
  });
});

describe('the second factor', () => {
  test('is set up first by a grower, who reaches nothing else before; recovery codes open once each', async () => {
    await addPerson(bench, 'gwen', 'hand');
    await bench.desk.store.people.changeAccount(bench.farm, asId<PersonId>('gwen'), { role: 'grower' });
    const gwen = await signedIn(bench, 'gwen');
    expect((await gwen.ask('GET', `/api/farms/${bench.farm}/plan`)).code()).toBe('factor-first');
    const begun = peopleShapes.newFactor.parse((await gwen.ask('POST', '/api/me/second-factor', { password })).json());
    expect((await gwen.ask('POST', '/api/me/second-factor/confirm', { code: '123' })).code()).toBe('code-refused');
    const code = codeAt(bench.clock.nowMs, begun.secret);
    const on = await gwen.ask('POST', '/api/me/second-factor/confirm', { code });
    const { recoveryCodes } = peopleShapes.recoveryCodes.parse(on.json());
    expect(new Set(recoveryCodes).size).toBe(10);
    expect((await gwen.ask('GET', '/api/farms')).status).toBe(200);
    expect((await gwen.ask('POST', '/api/me/second-factor/remove', { password, code: '1' })).code()).toBe(
      'factor-stays',
    );
    expect((await signIn({ person: 'gwen', password, code: recoveryCodes[0]?.toUpperCase() })).status).toBe(200);
    expect((await signIn({ person: 'gwen', password, code: recoveryCodes[0] })).code()).toBe('code-refused');
  });
});

describe('how often', () => {
  test('one address tries to sign in, and one person asks, is held', async () => {
    const held = await openPeopleBench({ limits: { personAMinute: 8, strangerAMinute: 6, signInAMinute: 3 } });
    await addPerson(held, 'hanna', 'hand');
    const own = await signedIn(held, 'hanna');
    const answers = [];
    for (let time = 0; time < 10; time += 1) answers.push(await own.ask('GET', '/api/farms'));
    expect(answers.filter(({ status }) => status === 200)).toHaveLength(8);
    expect(answers.at(-1)?.code()).toBe('too-often');
    const tries = [];
    for (let time = 0; time < 4; time += 1)
      tries.push(await browser(held.app).ask('POST', '/api/sign-in', { farm: held.farm, person: 'x', password: 'y' }));
    expect(tries.map(({ status }) => status)).toEqual([401, 401, 429, 429]);
    await held.close();
  });
});
