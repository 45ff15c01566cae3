import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { firstFarm } from '@leywright/planner';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readServeArguments, type ServeWish } from '../../src/app/arguments.ts';
import { foundFromSentence } from '../../src/farm/found.ts';
import { inviteAtMachine } from '../../src/people/at-the-machine.ts';
import { clockOf, deskOver, openFolder, start } from '../../src/start.ts';
import { firstSentence } from '../bench.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'leywright-start-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function wish(...words: readonly string[]): ServeWish {
  const read = readServeArguments(['--data', folder, '--port', '0', ...words], {});
  if (!('folder' in read)) throw new Error(read.join(' '));
  return read;
}

async function inviteGrower(): Promise<string> {
  const opened = await openFolder(folder);
  if (opened.kind !== 'open') throw new Error(opened.sentence);
  const desk = deskOver(opened.store, clockOf(null));
  const founding = await foundFromSentence(desk, { ...sentence, name: 'Small' });
  if (founding.kind !== 'founded') throw new Error(founding.problems[0]?.sentence);
  const tools = { store: opened.store, random: desk.random, nowMs: () => Date.now() };
  const invited = await inviteAtMachine(
    tools,
    { farm: founding.farm.id, person: 'ruth', name: 'Ruth', role: 'grower', asKnownOn: null, days: 7 },
    'http://127.0.0.1',
  );
  await opened.store.close();
  return invited.link ?? '';
}
const sentence: Parameters<typeof firstFarm>[0] = {
  ...firstSentence,
  name: null,
  plotAreasHa: null,
  latDeg: null,
  lonDeg: null,
};

test.each([
  ['--host', '0.0.0.0'],
  ['--host', '0.0.0.0', '--plain-http'],
  ['--host', '::', '--address', 'https://farm.example'],
  ['--address', 'https://farm.example'],
  ['--sign-in'],
])('where nobody can sign in, %s %s is refused, and the sentence says what to do', async (...words) => {
  const started = await start(wish(...words));
  if (started.kind === 'started') await started.stop();
  expect(started).toMatchObject({ kind: 'refused' });
  expect(started.kind === 'refused' && started.sentence).toContain('leywright people invite FARM PERSON --role grower');
});

test('with a grower invited it answers beyond this machine by https, or in the clear when told so, and asks everyone', async () => {
  const link = await inviteGrower();
  expect(link).toContain('/invitation#');
  const clear = await start(wish('--host', '0.0.0.0'));
  expect(clear.kind === 'refused' && clear.sentence).toContain('--plain-http');
  const started = await start(wish('--host', '0.0.0.0', '--plain-http'));
  if (started.kind === 'refused') throw new Error(started.sentence);
  try {
    const { port } = new URL(started.address);
    expect(started.said.join(' ')).toContain('in the clear');
    const ask = (path: string) => fetch(`http://127.0.0.1:${port}${path}`);
    expect((await ask('/api/farms')).status).toBe(401);
    expect(await (await ask('/api/me')).json()).toEqual({ signIn: 'asked', visitor: null });
  } finally {
    await started.stop();
  }
});

test('on this machine nothing is asked', async () => {
  await inviteGrower();
  const started = await start(wish());
  if (started.kind === 'refused') throw new Error(started.sentence);
  try {
    expect((await fetch(`${started.address}/api/farms`)).status).toBe(200);
  } finally {
    await started.stop();
  }
});

test('a certificate that cannot be read is refused in words', async () => {
  await inviteGrower();
  const started = await start(
    wish('--host', '0.0.0.0', '--cert', join(folder, 'none.pem'), '--key', join(folder, 'none.key')),
  );
  expect(started.kind === 'refused' && started.sentence).toContain('The certificate or its key cannot be read');
});
