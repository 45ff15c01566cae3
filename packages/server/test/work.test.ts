import { httpShapes, workShapes } from '@leywright/api';
import ICAL from 'ical.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ask, type Bench, demoFiles, openBench } from './bench.ts';

let bench: Bench;
let farm: string;
beforeAll(async () => {
  bench = await openBench();
  const answer = await ask(bench.app, 'POST', '/api/farms', { files: demoFiles() });
  farm = `/api/farms/${encodeURIComponent(httpShapes.founded.parse(answer.json()).farm.id)}`;
}, 120_000);
afterAll(() => bench.close());

const get = (path: string) => ask(bench.app, 'GET', `${farm}/${path}`);

describe('work over HTTP', () => {
  test('the year’s hours, the day and the orders have the shapes they are described with', async () => {
    const work = workShapes.work.parse((await get('work?year=2027')).json());
    expect(work.jobs.length).toBeGreaterThan(500);
    for (const sums of Object.values(work.hoursBy))
      expect(Object.values(sums).reduce((sum, hours) => sum + hours, 0)).toBeCloseTo(work.yearH, 0);
    const day = workShapes.dayOfWork.parse((await get('day')).json());
    expect(day).toMatchObject({ today: '2027-06-08', week: '2027-w23', person: null });
    expect(day.jobs.length).toBeGreaterThan(0);
    const orders = workShapes.orders.parse((await get('orders')).json());
    expect(orders.orders.length).toBeGreaterThan(10);
  }, 120_000);

  test('a day for somebody nobody knows is refused by name', async () => {
    const answer = await get('day?person=nobody');
    expect(answer.status).toBe(404);
    expect(httpShapes.problems.parse(answer.json()).problems[0]?.sentence).toContain('"nobody"');
  });

  test('order sheets come as files', async () => {
    const csv = await get('orders.csv');
    expect(csv.headers['content-type']).toContain('text/csv');
    expect(csv.text.split('\n')[0]).toContain('supplier,what');
    const xlsx = await get('orders.xlsx');
    expect(xlsx.headers['content-disposition']).toContain('.xlsx');
    expect(xlsx.bytes.subarray(0, 2).toString()).toBe('PK');
  });

  test('each person has an address of their own; with another key there is nothing', async () => {
    const calendars = (await get('calendars')).json() as { person: string; address: string }[];
    const ruth = calendars.find((one) => one.person === 'ruth');
    const idris = calendars.find((one) => one.person === 'idris');
    const feed = await ask(bench.app, 'GET', ruth?.address ?? '');
    expect(feed.headers['content-type']).toContain('text/calendar');
    expect(new ICAL.Component(ICAL.parse(feed.text)).getAllSubcomponents('vevent').length).toBeGreaterThan(0);
    const key = idris?.address.split('/').at(-1) ?? '';
    const wrong = (ruth?.address ?? '').replace(/[^/]+$/, key);
    expect((await ask(bench.app, 'GET', wrong)).status).toBe(404);
    expect(new Set(calendars.map((one) => one.address.split('/').at(-1))).size).toBe(calendars.length);
  });
});
