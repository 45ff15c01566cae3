import { findingShapes, httpShapes, planShapes, toldShapes } from '@leywright/api';
import type { Plan } from '@leywright/planner';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ask, type Bench, demoFiles, firstSentence, openBench } from './bench.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench.close());

async function begin(body: unknown = firstSentence): Promise<string> {
  const answer = await ask(bench.app, 'POST', '/api/farms', body);
  expect(answer.status, answer.text.slice(0, 400)).toBe(201);
  return httpShapes.founded.parse(answer.json()).farm.id;
}

describe('a farm from one sentence', () => {
  test('is there at once, in pencil, with a plan of its own', async () => {
    const id = await begin({ ...firstSentence, name: 'Österfeld & Söhne' });
    expect(id).toMatch(/^österfeld-söhne-/);
    const farms = httpShapes.farms.parse((await ask(bench.app, 'GET', '/api/farms')).json());
    expect(farms.farms.find((farm) => farm.id === id)?.name).toBe('Österfeld & Söhne');
    const plan = planShapes.plan.parse(
      (await ask(bench.app, 'GET', `/api/farms/${encodeURIComponent(id)}/plan`)).json(),
    );
    expect(plan.agreed.state).toBe('pencil');
    expect(plan.ground).toHaveLength(6);
    expect(plan.today).toBe('2027-06-08');
  });

  test('says everything that is wrong with the sentence at once, in words', async () => {
    const answer = await ask(bench.app, 'POST', '/api/farms', {
      ...firstSentence,
      plots: 0,
      households: -4,
      near: 'Nowhere-under-Wold',
    });
    expect(answer.status).toBe(422);
    const { problems } = httpShapes.problems.parse(answer.json());
    expect(problems.map((problem) => problem.column)).toEqual(['plots', 'households', 'near']);
    expect(problems[2]?.sentence).toBe('No place "Nowhere-under-Wold" is known here. Give its latitude, such as 52.3.');
  });

  test('names the fields that have the wrong shape', async () => {
    const answer = await ask(bench.app, 'POST', '/api/farms', { ...firstSentence, plots: 'six', weeks: null });
    expect(answer.status).toBe(422);
    const { problems } = httpShapes.problems.parse(answer.json());
    expect(problems.map((problem) => problem.sentence)).toEqual([
      'plots has to be a number.',
      'weeks has to be a number.',
    ]);
  });
});

test('the sample farm is founded once, and answered with again', async () => {
  const own = await openBench();
  const first = await ask(own.app, 'POST', '/api/farms', { sample: true });
  expect(first.status, first.text.slice(0, 400)).toBe(201);
  const { farm } = httpShapes.founded.parse(first.json());
  expect(farm.sample).toBe(true);
  const again = httpShapes.founded.parse((await ask(own.app, 'POST', '/api/farms', { sample: true })).json());
  expect(again.farm.id).toBe(farm.id);
  expect(httpShapes.farms.parse((await ask(own.app, 'GET', '/api/farms')).json()).farms).toHaveLength(1);
  await own.close();
});

describe('a farm folder', () => {
  test('can be looked at without being kept', async () => {
    const before = httpShapes.farms.parse((await ask(bench.app, 'GET', '/api/farms')).json()).farms.length;
    const answer = await ask(bench.app, 'POST', '/api/folder/check', {
      files: { ...demoFiles(), 'plots.csv': 'id,letter,gross_ha\na,A,minus two\n' },
    });
    const check = httpShapes.folderCheck.parse(answer.json());
    expect(check.wouldImport).toBe(false);
    expect(check.problems.some((problem) => problem.file === 'plots.csv' && problem.line === 2)).toBe(true);
    expect(httpShapes.farms.parse((await ask(bench.app, 'GET', '/api/farms')).json()).farms).toHaveLength(before);
  });

  test('with mistakes is refused whole, with every one of them in its place', async () => {
    const answer = await ask(bench.app, 'POST', '/api/farms', {
      files: { 'plots.csv': 'id,letter,name,gross_ha\na,A,Ash,1\na,B,Brook,1\nc,C,Cinder,x\n' },
    });
    expect(answer.status).toBe(422);
    const { problems } = httpShapes.problems.parse(answer.json());
    expect(problems.map((problem) => [problem.code, problem.line])).toEqual(
      expect.arrayContaining([
        ['id-twice', 3],
        ['not-a-number', 4],
      ]),
    );
    expect(
      problems.every((problem) => problem.sentence.startsWith('plots.csv') || problem.sentence.startsWith('farm.json')),
    ).toBe(true);
  });

  test('comes in once, and a second time is refused by its id', async () => {
    const id = await begin({ files: demoFiles() });
    const again = await ask(bench.app, 'POST', '/api/farms', { files: demoFiles() });
    expect(again.status).toBe(409);
    expect(httpShapes.problems.parse(again.json()).problems[0]?.found).toBe(id);
  });

  test('goes out as a zip that another store takes in, with the same plan', async () => {
    const { farms } = httpShapes.farms.parse((await ask(bench.app, 'GET', '/api/farms')).json());
    const sample = farms.find((farm) => farm.sample);
    const zip = await ask(bench.app, 'GET', `/api/farms/${sample?.id}/export`);
    expect(zip.headers['content-type']).toBe('application/zip');
    const other = await openBench();
    const answer = await other.app.inject({
      method: 'POST',
      url: '/api/farms',
      headers: { host: '127.0.0.1', 'content-type': 'application/zip' },
      payload: zip.bytes,
    });
    expect(answer.statusCode, answer.body.slice(0, 500)).toBe(201);
    const planOf = async ({ app }: Bench) => (await ask(app, 'GET', `/api/farms/${sample?.id}/plan`)).json() as Plan;
    expect(await planOf(other)).toEqual(await planOf(bench));
    const entriesOf = async ({ app }: Bench) =>
      httpShapes.entriesPage.parse((await ask(app, 'GET', `/api/farms/${sample?.id}/entries`)).json()).lastSeq;
    expect(await entriesOf(other)).toBe(await entriesOf(bench));
    await other.close();
  });
});

describe('the plan of a farm', () => {
  test('follows the year that is asked for', async () => {
    const id = await begin();
    const plan = planShapes.plan.parse((await ask(bench.app, 'GET', `/api/farms/${id}/plan?year=2029`)).json());
    expect(plan.year).toBe(2029);
  });

  test('is told in findings with their sentences', async () => {
    const id = await begin();
    const { findings } = toldShapes.findings.parse((await ask(bench.app, 'GET', `/api/farms/${id}/findings`)).json());
    expect(findings.length).toBeGreaterThan(0);
    expect(findings.every((finding) => finding.sentence.endsWith('.') && !finding.sentence.includes('…'))).toBe(true);
  });

  test('opens each figure to its sum', async () => {
    const id = await begin();
    const answer = await ask(bench.app, 'GET', `/api/farms/${id}/why/net/a`);
    expect(answer.status, answer.text).toBe(200);
    expect(findingShapes.toldWhy.parse(answer.json()).value).toBeGreaterThan(0);
    expect((await ask(bench.app, 'GET', `/api/farms/${id}/why/net/nowhere`)).status).toBe(404);
  });

  test.each(['1200', '9999', 'soon', '2027.5'])('of the year %s is refused in words', async (year) => {
    const id = await begin();
    const answer = await ask(bench.app, 'GET', `/api/farms/${id}/plan?year=${year}`);
    expect(answer.status).toBe(422);
    expect(httpShapes.problems.parse(answer.json()).problems).toHaveLength(1);
  });

  test('of a farm that is not there says so', async () => {
    const answer = await ask(bench.app, 'GET', '/api/farms/nowhere/plan');
    expect(answer.status).toBe(404);
    expect(httpShapes.problems.parse(answer.json()).problems[0]?.sentence).toBe('There is no farm "nowhere" here.');
  });
});
