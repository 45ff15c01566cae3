import { httpShapes } from '@leywright/api';
import type { Entry } from '@leywright/book';
import { type ReceivedEntry, verifyBook } from '@leywright/book';
import { asDay, asId, type EntryId } from '@leywright/measures';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ask, type Bench, firstSentence, openBench } from './bench.ts';

let bench: Bench;
let farm: string;
beforeAll(async () => {
  bench = await openBench();
  farm = httpShapes.founded.parse((await ask(bench.app, 'POST', '/api/farms', firstSentence)).json()).farm.id;
});
afterAll(() => bench.close());

function weighing(number: number, kg: number): Entry {
  return {
    v: 1,
    id: `01900000-0000-7000-8000-${String(number).padStart(12, '0')}` as EntryId,
    farm: asId(farm),
    doneOn: asDay('2027-06-07'),
    doneAt: '07:30',
    enteredAt: '2027-06-07T06:30:00Z',
    by: asId('ruth'),
    device: asId('phone'),
    deviceSeq: number,
    body: { kind: 'weighing', crop: 'carrot-maincrop', store: 'cold-store', kg },
    amends: null,
    reason: null,
  };
}

async function push(entries: readonly unknown[]) {
  return ask(bench.app, 'POST', `/api/farms/${farm}/entries`, { entries });
}

async function pull(after: number) {
  return httpShapes.entriesPage.parse(
    (await ask(bench.app, 'GET', `/api/farms/${farm}/entries?after=${after}`)).json(),
  );
}

describe('the book over HTTP', () => {
  test('takes entries, and the same again is no fault', async () => {
    const first = httpShapes.appended.parse((await push([weighing(1, 400), weighing(2, 380)])).json());
    expect(first.received).toHaveLength(2);
    const again = httpShapes.appended.parse((await push([weighing(2, 380), weighing(3, 360)])).json());
    expect(again).toMatchObject({ already: [weighing(2, 380).id], lastSeq: first.lastSeq + 1 });
  });

  test('hands out what came after a place, sealed so that anyone can verify it', async () => {
    const all = await pull(0);
    expect(verifyBook(all.entries as unknown as ReceivedEntry[]).ok).toBe(true);
    const later = await pull(all.lastSeq - 1);
    expect(later.entries.map((entry) => entry.seq)).toEqual([all.lastSeq]);
    expect((await pull(all.lastSeq)).entries).toEqual([]);
  });

  test('a request that waits is answered as soon as somebody records something', async () => {
    const { lastSeq } = await pull(0);
    const waiting = ask(bench.app, 'GET', `/api/farms/${farm}/entries?after=${lastSeq}&wait=20`);
    await new Promise((done) => setTimeout(done, 100));
    const pushedMs = Date.now();
    await push([weighing(50, 120)]);
    const { entries } = httpShapes.entriesPage.parse((await waiting).json());
    expect(entries.map(({ id }) => id)).toEqual([weighing(50, 120).id]);
    expect(Date.now() - pushedMs).toBeLessThan(1500);
  });

  test('a request that waits for nothing is answered at the end of its time', async () => {
    const { lastSeq } = await pull(0);
    const answer = await ask(bench.app, 'GET', `/api/farms/${farm}/entries?after=${lastSeq}&wait=1`);
    expect(httpShapes.entriesPage.parse(answer.json())).toMatchObject({ entries: [], readTo: lastSeq });
    expect((await ask(bench.app, 'GET', `/api/farms/${farm}/entries?after=0&wait=9999`)).status).toBe(422);
  });

  test('refuses an id that stands for other words, and writes nothing of that sending', async () => {
    const before = (await pull(0)).lastSeq;
    const answer = await push([weighing(8, 100), weighing(1, 999)]);
    expect(answer.status).toBe(409);
    expect(httpShapes.problems.parse(answer.json()).problems[0]?.code).toBe('entry-differs');
    expect((await pull(0)).lastSeq).toBe(before);
  });

  test('tells all that is wrong with entries, by their place in the sending', async () => {
    const answer = await push([
      weighing(20, 1),
      { ...weighing(21, 1), doneOn: '2027-02-31' },
      { ...weighing(22, 1), body: { kind: 'weighing', crop: 'carrot-maincrop', store: null, kg: 'much' } },
    ]);
    expect(answer.status).toBe(422);
    const { problems } = httpShapes.problems.parse(answer.json());
    expect(problems.map((problem) => [problem.line, problem.column])).toEqual([
      [2, 'doneOn'],
      [3, 'body.kg'],
    ]);
  });

  test('keeps out an entry of another farm', async () => {
    expect((await push([{ ...weighing(30, 1), farm: 'somebody-else' }])).status).toBe(409);
  });

  test('changes the farm at once: a new name is in the next answer', async () => {
    const page = await pull(0);
    const about = page.entries
      .map((entry) => entry.body as { kind: string; subject?: string; value?: object })
      .find((body) => body.subject === 'about');
    const rename = {
      ...weighing(40, 1),
      doneOn: '2027-06-08',
      enteredAt: '2027-06-08T06:20:00Z',
      body: { kind: 'set', subject: 'about', key: '', value: { ...about?.value, name: 'Far Ridding' } },
    };
    expect((await push([rename])).status).toBe(200);
    expect(
      ((await ask(bench.app, 'GET', `/api/farms/${farm}/plan`)).json() as { farm: { name: string } }).farm.name,
    ).toBe('Far Ridding');
  });
});
