import { rotationShapes } from '@leywright/api';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ask, type Bench, firstSentence, openBench } from './bench.ts';

let bench: Bench;
let farm = '';
beforeAll(async () => {
  bench = await openBench();
  const begun = await ask(bench.app, 'POST', '/api/farms', firstSentence);
  farm = (begun.json() as { farm: { id: string } }).farm.id;
});
afterAll(() => bench.close());

describe('POST /api/farms/:farm/rotation', () => {
  test('a farm begun from one sentence gets a rotation, with the next best of every cell', async () => {
    const answer = await ask(bench.app, 'POST', `/api/farms/${encodeURIComponent(farm)}/rotation`, {
      years: 5,
      seconds: 4,
    });
    expect(answer.status, answer.text.slice(0, 400)).toBe(200);
    const told = rotationShapes.rotation.parse(answer.json());
    expect(['proposal', 'no-plan']).toContain(told.kind);
    if (told.kind === 'proposal') expect(told.plots[0]?.years).toHaveLength(5);
  });

  test('a wish that is none is told, each fault in its place', async () => {
    const answer = await ask(bench.app, 'POST', `/api/farms/${encodeURIComponent(farm)}/rotation`, {
      years: 99,
      pins: 3,
    });
    expect(answer.status).toBe(422);
    expect(answer.text).toContain('years');
    expect(answer.text).toContain('pins');
  });

  test('a farm that is not there is not planned', async () => {
    expect((await ask(bench.app, 'POST', '/api/farms/nobody/rotation', { years: 5 })).status).toBe(404);
  });
});
