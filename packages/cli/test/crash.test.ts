import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { type ReceivedEntry, verifyBook } from '@leywright/book';
import { expect, test } from 'vitest';
import { binary, newFolder, on, project } from './leywright.ts';

const data = join(newFolder(), 'store');

async function serve(): Promise<{ readonly process: ChildProcess; readonly address: string }> {
  const server = spawn(process.execPath, [binary, 'serve', '--data', data, '--port', '0', ...on], { cwd: project });
  const address = await new Promise<string>((resolve, fail) => {
    let said = '';
    server.stdout.on('data', (piece: Buffer) => {
      said += piece.toString();
      const found = /ready at (http:\S+)\n/.exec(said)?.[1];
      if (found !== undefined) resolve(found);
    });
    server.once('close', () => fail(new Error(`ended after "${said}"`)));
  });
  return { process: server, address };
}

async function post(url: string, body: unknown): Promise<unknown> {
  const answer = await fetch(url, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  expect(answer.status).toBeLessThan(300);
  return answer.json();
}

function weighing(farm: string, number: number) {
  const body = { kind: 'weighing', crop: 'carrot-maincrop', store: 'cold-store', kg: number };
  return {
    v: 1,
    id: `01900000-0000-7000-8000-${String(number).padStart(12, '0')}`,
    farm,
    doneOn: '2027-06-08',
    doneAt: null,
    enteredAt: '2027-06-08T05:30:00Z',
    by: 'ruth',
    device: 'phone',
    deviceSeq: number,
    body,
    amends: null,
    reason: null,
  };
}

async function wholeBook(url: string): Promise<readonly ReceivedEntry[]> {
  const entries: ReceivedEntry[] = [];
  for (;;) {
    const page = (await (await fetch(`${url}?after=${entries.at(-1)?.seq ?? 0}`)).json()) as {
      entries: ReceivedEntry[];
      more: boolean;
    };
    entries.push(...page.entries);
    if (!page.more) return entries;
  }
}

test('nothing that was acknowledged is lost when the server is killed while it writes', async () => {
  const acknowledged: string[] = [];
  let number = 0;
  let farm: string | null = null;
  // By entries, not by the clock, so that a busy machine tries as much as a quiet one.
  for (const killAfter of [5, 20, 60]) {
    const server = await serve();
    farm ??= (
      (await post(`${server.address}/api/farms`, {
        plots: 4,
        areaHa: 3,
        near: 'Cambridge',
        items: 5,
        households: 60,
        weeks: 40,
      })) as { farm: { id: string } }
    ).farm.id;
    const gone = new Promise((resolve) => server.process.once('close', resolve));
    const killAt = acknowledged.length + killAfter;
    try {
      for (;;) {
        number += 1;
        const { received } = (await post(`${server.address}/api/farms/${farm}/entries`, {
          entries: [weighing(farm, number)],
        })) as { received: { id: string }[] };
        acknowledged.push(...received.map((entry) => entry.id));
        if (acknowledged.length === killAt) setTimeout(() => server.process.kill('SIGKILL'), killAfter % 3);
      }
    } catch {
      await gone; // the connection broke: that entry was not acknowledged
    }
  }
  const server = await serve();
  const entries = await wholeBook(`${server.address}/api/farms/${farm}/entries`);
  server.process.kill('SIGTERM');
  const kept = new Set<string>(entries.map((entry) => entry.id));
  expect(acknowledged.length).toBeGreaterThan(20);
  expect(acknowledged.filter((id) => !kept.has(id))).toEqual([]);
  expect(verifyBook(entries).ok).toBe(true);
});
