import { httpShapes } from '@leywright/api';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ask, type Bench, firstSentence, openBench, ownHost } from './bench.ts';

let bench: Bench;
let farm: string;
beforeAll(async () => {
  bench = await openBench();
  farm = httpShapes.founded.parse((await ask(bench.app, 'POST', '/api/farms', firstSentence)).json()).farm.id;
});
afterAll(() => bench.close());

const part = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 40 }),
  fc.constantFrom('..', '%00', '\u0000', '__proto__', 'constructor', '💧', 'a'.repeat(299), 'a'.repeat(400)),
);
const url = fc.oneof(
  part.map((name) => `/api/farms/${encodeURIComponent(name)}/plan`),
  part.map((name) => `/api/farms/${encodeURIComponent(name)}/entries?after=${encodeURIComponent(name)}`),
  part.map((name) => `/api/farms/FARM/why/${encodeURIComponent(name)}`),
  fc.tuple(part, part).map(([a, b]) => `/api/farms/FARM/why/${encodeURIComponent(a)}/${encodeURIComponent(b)}`),
  part.map((name) => `/api/farms/FARM/plan?year=${encodeURIComponent(name)}`),
  part.map((name) => `/api/farms/FARM/entries?after=${encodeURIComponent(name)}`),
  part.map((name) => `/api/calc/${encodeURIComponent(name)}`),
  fc.webPath().map((path) => `/api${path}`),
);

const anyBody = fc.oneof(
  fc.jsonValue({ maxDepth: 4 }),
  fc.record(
    {
      plots: fc.jsonValue(),
      areaHa: fc.double(),
      near: fc.jsonValue(),
      latDeg: fc.double(),
      items: fc.jsonValue(),
      households: fc.double(),
      weeks: fc.jsonValue(),
    },
    { requiredKeys: [] },
  ),
  fc.record({
    plots: fc.integer(),
    areaHa: fc.double(),
    near: fc.constantFrom('Cambridge', 'x'),
    items: fc.integer(),
    households: fc.integer(),
    weeks: fc.integer(),
    plotAreasHa: fc.array(fc.double()),
  }),
  fc.record({
    files: fc.dictionary(
      fc.constantFrom('plots.csv', 'farm.json', 'agreed.csv', 'entries.jsonl', 'ground.geojson', '../x.csv'),
      fc.string({ unit: 'grapheme', maxLength: 200 }),
    ),
  }),
  fc.record({ entries: fc.array(fc.jsonValue({ maxDepth: 3 }), { maxLength: 4 }) }),
  fc.record({
    entries: fc.array(
      fc.record({
        v: fc.integer({ min: 0, max: 3 }),
        id: fc.string(),
        farm: fc.constant('FARM'),
        doneOn: fc.string(),
        body: fc.jsonValue(),
      }),
      { maxLength: 3 },
    ),
  }),
);

describe('whatever is sent', () => {
  test('a GET is answered, or refused in words, and never a fault of ours', async () => {
    await fc.assert(
      fc.asyncProperty(url, async (path) => {
        const answer = await ask(bench.app, 'GET', path.replace('FARM', farm));
        expect(answer.status, `${path}: ${answer.text.slice(0, 300)}`).toBeLessThan(500);
        if (answer.status >= 400) expect(httpShapes.problems.parse(answer.json()).problems.length).toBeGreaterThan(0);
      }),
      { numRuns: 300 },
    );
  });

  test.each(['/api/farms', '/api/folder/check', '/api/farms/FARM/entries', '/api/calc/pressure', '/api/calc/ETo_day'])(
    'POST %s takes any JSON so',
    async (path) => {
      await fc.assert(
        fc.asyncProperty(anyBody, async (body) => {
          const answer = await bench.app.inject({
            method: 'POST',
            url: path.replace('FARM', farm),
            headers: { host: ownHost, 'content-type': 'application/json' },
            payload: JSON.stringify(body).replaceAll('FARM', farm),
          });
          expect(answer.statusCode, `${JSON.stringify(body)}: ${answer.body.slice(0, 300)}`).toBeLessThan(500);
          if (answer.statusCode >= 400)
            expect(httpShapes.problems.parse(answer.json()).problems.length).toBeGreaterThan(0);
        }),
        { numRuns: 120 },
      );
    },
  );

  test.each(['application/json', 'application/zip', 'text/csv', 'multipart/form-data; boundary=x', 'nonsense'])(
    'so does a body of bytes called %s',
    async (type) => {
      await fc.assert(
        fc.asyncProperty(
          fc.uint8Array({ maxLength: 400 }),
          fc.constantFrom('/api/farms', '/api/folder/check', '/api/farms/FARM/entries', '/api/calc/pressure'),
          async (bytes, path) => {
            const answer = await bench.app.inject({
              method: 'POST',
              url: path.replace('FARM', farm),
              headers: { host: ownHost, 'content-type': type },
              payload: Buffer.from(bytes),
            });
            const isLookedAt = path === '/api/folder/check' && type === 'application/zip';
            expect(answer.statusCode, answer.body.slice(0, 300)).toSatisfy(
              (status: number) => (status >= 400 && status < 500) || (isLookedAt && status === 200),
            );
            expect((answer.json() as { problems: unknown[] }).problems.length).toBeGreaterThan(0);
          },
        ),
        { numRuns: 60 },
      );
    },
  );

  test('a body past the limit is refused before it is read', async () => {
    const answer = await bench.app.inject({
      method: 'POST',
      url: '/api/folder/check',
      headers: { host: ownHost, 'content-type': 'application/json' },
      payload: `{"files":{"plots.csv":"${'x'.repeat(33_000_000)}"}}`,
    });
    expect(answer.statusCode).toBe(413);
    expect(httpShapes.problems.parse(answer.json()).problems[0]?.sentence).toBe(
      'What was sent is too large: 32 MB is the most.',
    );
  });
});
