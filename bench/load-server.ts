/** The server that the load bench asks, in a process of its own: the sample farm, twenty hands who sign in, limits lifted, plans in their thread. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { asDay, asId, type FarmId, type PersonId } from '@leywright/measures';
import { openStore } from '@leywright/store';
import { buildApp } from '../packages/server/src/app/build-app.ts';
import { foundSample } from '../packages/server/src/farm/sample.ts';
import { openAccess } from '../packages/server/src/guards/access.ts';
import { threadIfBuilt } from '../packages/server/src/plans/plan-maker.ts';
import { clockOf, deskOver } from '../packages/server/src/start.ts';

const hands = 20;
const password = 'leeks under snow';

const folder = mkdtempSync(join(tmpdir(), 'leywright-load-'));
const url = process.argv[2] ?? join(folder, 'farms.sqlite');
const opened = await openStore(url);
if (opened.kind === 'refused') throw new Error(opened.problem.code);
const { store } = opened;
const desk = deskOver(store, clockOf(asDay('2027-06-08')), threadIfBuilt(url));
const founding = await foundSample(desk);
if (founding.kind === 'refused') throw new Error(founding.problems[0]?.sentence);
const farm: FarmId = founding.farm.id;
let origin = '';
const access = { ...(await openAccess(() => origin)), isAsked: true };
const passwordHash = await access.passwords.hash(password);
for (let at = 0; at < hands; at += 1) {
  const person = asId<PersonId>(`hand-${at}`);
  const madeAt = new Date().toISOString();
  await store.people.addAccount({
    farm,
    person,
    name: `Hand ${at}`,
    role: 'hand',
    asKnownOn: null,
    passwordHash,
    madeAt,
  });
}
const app = await buildApp({ desk, webRoot: null, access, log: process.stderr });
origin = await app.listen({ host: '127.0.0.1', port: 0 });
process.send?.({ origin, farm, lastSeq: founding.farm.lastSeq });
process.on('message', async (word) => {
  const { user, system } = process.cpuUsage();
  if (word === 'memory') process.send?.({ rssMb: Math.round(process.memoryUsage().rss / 1e6) });
  if (word === 'cpu') process.send?.({ cpuMs: (user + system) / 1000 });
  if (word !== 'stop') return;
  await app.close();
  await desk.plans.close();
  await store.close();
  rmSync(folder, { recursive: true, force: true });
  process.exit(0);
});
