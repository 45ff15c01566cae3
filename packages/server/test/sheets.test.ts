/** What leaves the house: order sheets read back equal by another library, and calendars that others import unchanged. */
import { sampleFarm, sampleToday } from '@leywright/farm-kit';
import { hands, type OrderRow, orders, planFarm } from '@leywright/planner';
import { parse } from 'csv-parse/sync';
import ICAL from 'ical.js';
import ical from 'node-ical';
import readXlsxFile from 'read-excel-file/node';
import { describe, expect, test } from 'vitest';
import { calendarFeed } from '../src/sheets/calendar-feed.ts';
import { ordersCsv, ordersXlsx } from '../src/sheets/order-sheets.ts';

const farm = {
  ...sampleFarm(),
  seedOffers: [
    {
      id: 'o',
      what: 'carrot-maincrop',
      variety: null,
      supplier: 'Müller, "Söhne"; Saat',
      status: 'organic' as const,
      packKg: null,
      packSeeds: 100_000,
      available: true,
      seenOn: null,
    },
    {
      id: 'p',
      what: 'leek-mid',
      variety: null,
      supplier: '=1+1',
      status: 'untreated' as const,
      packKg: 0.01,
      packSeeds: null,
      available: true,
      seenOn: null,
    },
  ],
};
const plan = planFarm(farm, { today: sampleToday, year: 2027 });
const rows = orders.orderSheet(orders.seedOrders(farm, plan));

describe('order sheets', () => {
  test('hold every order, those with a supplier first', () => {
    expect(rows.length).toBeGreaterThan(10);
    expect(rows[0]?.supplier).not.toBeNull();
  });

  test('as CSV read back equal', () => {
    const back = parse(ordersCsv(rows), { columns: true }) as Record<string, string>[];
    expect(back).toHaveLength(rows.length);
    rows.forEach((row, at) => {
      for (const column of orders.orderColumns) {
        const cell = (back[at]?.[column] ?? '').replace(/^'(?==)/, '');
        expect(cell, column).toBe(row[column] === null ? '' : String(row[column]));
      }
    });
  });

  test('no cell runs as a formula', () => expect(ordersCsv(rows)).not.toMatch(/(^|,)=/m));

  test('as XLSX read back equal, numbers as numbers', async () => {
    const [head, ...cells] = await readXlsxFile(await ordersXlsx(rows));
    expect(head).toEqual([...orders.orderColumns]);
    const back = cells.map((line) =>
      Object.fromEntries(orders.orderColumns.map((column, at) => [column, line[at] ?? null])),
    );
    expect(back as unknown as OrderRow[]).toEqual(rows);
  });
});

describe('a calendar of jobs', () => {
  const madeAt = '2027-01-14T06:00:00Z';
  const feed = calendarFeed(farm, plan, { madeAt, person: null, daysBack: 400, daysOn: 400 });
  const open = plan.work.jobs.filter((job) => job.doneShare < 1);

  test('keeps the form of RFC 5545: lines of at most 75 octets ended by CR LF, a version, an id and a stamp for each event', () => {
    for (const line of feed.split('\r\n')) expect(Buffer.byteLength(line), line).toBeLessThanOrEqual(75);
    expect(feed.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(feed.startsWith('BEGIN:VCALENDAR\r\n')).toBe(true);
    expect(feed.endsWith('END:VCALENDAR\r\n')).toBe(true);
    const calendar = new ICAL.Component(ICAL.parse(feed));
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    const events = calendar.getAllSubcomponents('vevent');
    expect(events).toHaveLength(open.length);
    const ids = events.map((event) => event.getFirstPropertyValue('uid'));
    expect(new Set(ids).size).toBe(ids.length);
    for (const event of events)
      for (const name of ['uid', 'dtstamp', 'dtstart']) expect(event.getAllProperties(name), name).toHaveLength(1);
  });

  test('another library imports it unchanged: every job with its days and its name', () => {
    const read = Object.values(ical.sync.parseICS(feed)).filter((one) => one.type === 'VEVENT');
    expect(read).toHaveLength(open.length);
    const days = read.map((one) => [one.datetype, one.start.toISOString().slice(0, 10)].join(' ')).toSorted();
    expect(days.every((day) => day.startsWith('date '))).toBe(true);
    const planting = open.find((job) => job.kind === 'plant');
    const event = read.find((one) => one.uid.includes(planting?.id ?? '?'));
    expect(event?.summary).toContain('Plant out');
    expect(event?.description).toContain('May be done from');
  });

  test('for one person holds the jobs that are theirs and no others', () => {
    const ours = new Set(
      hands
        .assignHands(plan.work, farm)
        .filter((line) => line.person === 'ruth')
        .map((line) => line.job),
    );
    const events = new ICAL.Component(
      ICAL.parse(calendarFeed(farm, plan, { madeAt, person: 'ruth', daysBack: 400, daysOn: 400 })),
    ).getAllSubcomponents('vevent');
    expect(events.length).toBe(open.filter((job) => ours.has(job.id)).length);
    expect(events.length).toBeGreaterThan(0);
    expect(events.length).toBeLessThan(open.length);
  });
});
