import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { doors } from '../../src/guards/doors.ts';
import { openBench } from '../bench.ts';
import { apiDoors, examples, isMeantOpen, tableOf, type Walked, walkDoors } from './role-doors.ts';

let walked: readonly Walked[];
beforeAll(async () => {
  walked = await walkDoors();
}, 120_000);

test('every route of the server has a door, and every door a route and a request that tries it', async () => {
  const bench = await openBench();
  await bench.app.ready();
  const document = bench.app.swagger() as unknown as { readonly paths: Readonly<Record<string, object>> };
  const served = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.keys(methods).map(
      (method) => `${method.toUpperCase()} ${path.replaceAll(/\{(\w+)\}/g, ':$1').replace('{*}', '*')}`,
    ),
  );
  await bench.close();
  expect(served.sort()).toEqual([...apiDoors].sort());
  expect(Object.keys(examples).sort()).toEqual([...apiDoors].sort());
  expect(Object.keys(doors).filter((door) => !apiDoors.includes(door))).toEqual(['GET /*', 'GET /', 'GET /index.html']);
});

test('every role comes through the doors that are meant for it, and through no other', () => {
  const wrong = walked.filter((one) => one.isOpen !== isMeantOpen(one.door, one.caller));
  expect(
    wrong.map(({ door, caller, answer }) => `${caller} at ${door}: ${answer.status} ${answer.text.slice(0, 120)}`),
  ).toEqual([]);
});

test('the tries are right ones: a grower is answered, not told that what was sent is wrong', () => {
  const own = walked.filter(({ door, caller, answer }) => {
    const isFarm = door.includes('/api/farms/:farm/') && !door.endsWith(':invitation');
    return caller === 'grower' && isFarm && answer.status >= 300;
  });
  expect(own.map(({ door, answer }) => `${door}: ${answer.status} ${answer.text.slice(0, 120)}`)).toEqual([]);
});

test('whoever is refused learns nothing of the farm', () => {
  const told = walked.filter(({ isOpen, answer }) => !isOpen && /Oddlethorpe|Cinder|Ada Example/.test(answer.text));
  expect(told.map(({ door, caller }) => `${caller} at ${door}`)).toEqual([]);
});

test('docs/security.md has the table as it was walked here', () => {
  const page = join(import.meta.dirname, '..', '..', '..', '..', 'docs', 'security.md');
  const text = readFileSync(page, 'utf8');
  const [before, rest = ''] = text.split('<!-- table: begin -->');
  const after = rest.split('<!-- table: end -->')[1];
  const wanted = `${before}<!-- table: begin -->\n\n${tableOf(walked)}\n\n<!-- table: end -->${after}`;
  // WRITE_DOCS=1 writes it anew after a route or a role has changed.
  if (process.env['WRITE_DOCS'] === '1') writeFileSync(page, wanted);
  else expect(text).toBe(wanted);
});
