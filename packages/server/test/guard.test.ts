import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { httpShapes } from '@leywright/api';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readServeArguments } from '../src/app/arguments.ts';
import { doors } from '../src/guards/doors.ts';
import { ask, type Bench, firstSentence, openBench, ownHost } from './bench.ts';

let bench: Bench;
const web = mkdtempSync(join(tmpdir(), 'leywright-web-'));
beforeAll(async () => {
  mkdirSync(join(web, 'assets'));
  writeFileSync(join(web, 'index.html'), '<!doctype html><title>Leywright</title>');
  writeFileSync(join(web, 'assets', 'index-abc.js'), 'export {};');
  bench = await openBench(web);
});
afterAll(async () => {
  await bench.close();
  rmSync(web, { recursive: true });
});

describe('who may reach the server', () => {
  test.each(['127.0.0.1:7345', 'localhost:7345', '127.0.0.1', '[::1]:7345'])(
    'a browser that calls it %s',
    async (host) => {
      expect((await bench.app.inject({ url: '/api/today', headers: { host } })).statusCode).toBe(200);
    },
  );

  test.each(['evil.example', '127.0.0.1.evil.example', 'localhost.evil.example:7345', '127.0.0.2', '0.0.0.0'])(
    'not one that calls it "%s"',
    async (host) => {
      const answer = await bench.app.inject({ url: '/api/today', headers: { host } });
      expect(answer.statusCode).toBe(421);
      expect(httpShapes.problems.parse(answer.json()).problems[0]?.sentence).toContain(`http://${ownHost}`);
    },
  );

  test.each([
    { origin: 'http://evil.example' },
    { origin: 'null' },
    { origin: `https://${ownHost}` },
    { origin: 'http://127.0.0.1:9999' },
    { 'sec-fetch-site': 'cross-site' },
  ])('nobody writes from another page: %o', async (headers) => {
    const answer = await bench.app.inject({
      method: 'POST',
      url: '/api/farms',
      headers: { host: ownHost, ...headers },
      payload: firstSentence,
    });
    expect(answer.statusCode).toBe(403);
  });

  test('its own pages write', async () => {
    const headers = { host: ownHost, origin: `http://${ownHost}`, 'sec-fetch-site': 'same-origin' };
    expect(
      (await bench.app.inject({ method: 'POST', url: '/api/farms', headers, payload: firstSentence })).statusCode,
    ).toBe(201);
  });

  test('no page may run a script of anyone else, nor be framed', async () => {
    const policy = String((await ask(bench.app, 'GET', '/')).headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe-inline');
    expect(policy).not.toContain("'unsafe-eval'");
  });
});

describe('the pages', () => {
  test.each(['/', '/ground', '/boxes/2027-w26', '/ground/C?from=2022'])('%s is the one page', async (url) => {
    const answer = await ask(bench.app, 'GET', url);
    expect([answer.status, answer.text]).toEqual([200, '<!doctype html><title>Leywright</title>']);
  });

  test('assets may be kept for good, the page is asked for again', async () => {
    expect((await ask(bench.app, 'GET', '/assets/index-abc.js')).headers['cache-control']).toContain('immutable');
    expect((await ask(bench.app, 'GET', '/')).headers['cache-control']).toBe('no-cache');
  });

  test.each(['/assets/none.js', '/api/none'])('%s is not there, and says so', async (url) => {
    const answer = await ask(bench.app, 'GET', url);
    expect([answer.status, httpShapes.problems.parse(answer.json()).problems[0]?.code]).toEqual([404, 'no-such-page']);
  });

  test.each(['/../package.json', '/%2e%2e/%2e%2e/package.json', '/assets/..%2f..%2fpackage.json'])(
    'nothing outside its folder is given: %s',
    async (url) => {
      expect((await ask(bench.app, 'GET', url)).text).not.toContain('"leywright"');
    },
  );
});

describe('the description of the interface', () => {
  test('is OpenAPI 3.1 and names every route and shape', async () => {
    const document = (await ask(bench.app, 'GET', '/api/openapi.json')).json() as {
      openapi: string;
      paths: object;
      components: { schemas: object };
    };
    expect(document.openapi).toBe('3.1.0');
    const routes = Object.keys(doors)
      .map((door) => door.split(' ')[1] ?? '')
      .filter((path) => path.startsWith('/api/'))
      .map((path) => path.replace(/:(\w+)/g, '{$1}').replace('*', '{*}'));
    expect(Object.keys(document.paths).sort()).toEqual([...new Set(routes)].sort());
    expect(Object.keys(document.components.schemas)).toEqual(
      expect.arrayContaining(['Plan', 'Finding', 'Problem', 'FirstSentence']),
    );
  });
});

describe('the words it is started with', () => {
  test('give folder, port and day', () => {
    expect(
      readServeArguments(['--data', '/tmp/x', '--port', '7345', '--today', '2027-06-08', '--sample'], {}),
    ).toMatchObject({ folder: '/tmp/x', port: 7345, today: '2027-06-08', sample: true, host: '127.0.0.1' });
    expect(readServeArguments([], { LEYWRIGHT_DATA: '/tmp/y' })).toMatchObject({
      folder: '/tmp/y',
      today: null,
      sample: false,
    });
  });

  test('that are wrong are all told at once', () => {
    const wrong = ['--port', 'x', '--today', '2027-02-30', '--address', 'farm.example/x', '--cert', 'a.pem'];
    expect(readServeArguments(wrong, {})).toHaveLength(4);
    expect(readServeArguments(['--colour'], {})).toHaveLength(1);
  });
});
