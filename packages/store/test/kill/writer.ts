/** Writes entries into a store's file without a pause, until it is killed. Says before each sending that it begins, and after it what was acknowledged. */
import { writeSync } from 'node:fs';
import { asDay, asId, type EntryId, type FarmId } from '@leywright/measures';
import { openStore } from '../../src/index.ts';

const [path = '', run = '0', seed = '1'] = process.argv.slice(2);
const farm = asId<FarmId>('killed');
/** At once and unbuffered: what is said was true before the next statement runs. */
const say = (line: string) => writeSync(1, `${line}\n`);

let state = Number(seed);
function upTo(most: number): number {
  state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
  return 1 + (state % most);
}

const opened = await openStore(path);
if (opened.kind !== 'open') throw new Error(`The store was refused: ${JSON.stringify(opened.problem)}`);
const { store } = opened;
await store.foundFarm(
  { id: farm, name: 'Killed', sample: false, book: [], entries: [] },
  { receivedAt: '2027-06-08T06:00:00Z', newSalt: () => 'salt' },
);
say('open');
for (let number = 0; ; ) {
  const sending = Array.from({ length: upTo(12) }, () => {
    number += 1;
    return entry(number);
  });
  say('begin');
  const appended = await store.appendEntries(farm, sending, {
    receivedAt: '2027-06-08T06:00:00Z',
    newSalt: () => `${run}-${upTo(1_000_000)}`,
  });
  if (appended.kind !== 'appended') throw new Error(appended.kind);
  say(`acknowledged ${appended.received.map(({ id }) => id).join(' ')}`);
}

function entry(number: number) {
  return {
    v: 1 as const,
    id: `01900000-0000-7000-8000-${run.padStart(6, '0')}${String(number).padStart(6, '0')}` as EntryId,
    farm,
    doneOn: asDay('2027-06-08'),
    doneAt: null,
    enteredAt: '2027-06-08T05:30:00Z',
    by: asId<never>('ruth'),
    device: asId<never>(`writer-${run}`),
    deviceSeq: number,
    body: { kind: 'weighing' as const, crop: 'carrot-maincrop', store: 'barn', kg: number },
    amends: null,
    reason: 'x'.repeat(upTo(2000)), // some sendings fill many pages of the file, some few
  };
}
