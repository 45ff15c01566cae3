/** A hundred thousand entries, thirty years of a busy farm: sealed, verified, replayed in order and out of it. Prints one JSON object:
 * openMs is the replay of the book as it stands, appendPerSecond the sealing alone, without a disk. */
import {
  aboutFarm,
  chain,
  type Entry,
  type EntryBody,
  emptyFarm,
  newEntryId,
  type Plot,
  type ReceivedEntry,
  replay,
  type Stand,
  verifyBook,
  wholePlot,
} from '@leywright/book';
import { addDays, asDay, asId } from '@leywright/measures';
import { middleMs, seeded } from './seeded.ts';

const count = 100_000;
const random = seeded(20270101);
const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
const about = aboutFarm('bench', 'Bench', {
  latDeg: 52,
  lonDeg: -1,
  elevationM: null,
  near: null,
  jurisdiction: 'England',
  timeZone: 'Europe/London',
});
const plots = Array.from({ length: 12 }, (_, at) => `p${at}`);
const crops = ['kale', 'carrot-maincrop', 'leek-mid', 'potato-maincrop'];

function bodyOf(at: number): EntryBody {
  const stand = `s${Math.floor(random() * Math.max(1, at / 12))}`;
  const plot = pick(plots);
  const chance = random();
  if (at < plots.length) return { kind: 'set', subject: 'plots', key: `p${at}`, value: plotOf(`p${at}`) };
  if (chance < 0.1)
    return {
      kind: 'set',
      subject: 'stands',
      key: `s${Math.floor(at / 12)}`,
      value: standOf(`s${Math.floor(at / 12)}`, plot, at),
    };
  if (chance < 0.2)
    return {
      kind: 'sowing',
      stand,
      plot,
      span: wholePlot,
      what: pick(crops),
      standKind: 'crop',
      variety: null,
      seedLot: null,
      seedKg: null,
      undersownIn: null,
      expectedTo: null,
    };
  if (chance < 0.6)
    return {
      kind: 'harvest',
      stand,
      plot,
      crop: pick(crops),
      grossKg: Math.round(random() * 900) / 10,
      count: null,
      unit: 'kg',
      gradedOutShare: 0.1,
      into: 'box',
      store: null,
    };
  if (chance < 0.9) return { kind: 'job-done', job: `${stand}/hoe/1`, share: 1, hours: 2 };
  return { kind: 'weighing', crop: pick(crops), store: null, kg: Math.round(random() * 900) };
}

function plotOf(id: string): Plot {
  return {
    id: asId(id),
    letter: id,
    name: id,
    field: null,
    kind: 'rotation',
    grossM2: 6000,
    measuredBy: 'typed',
    hedgeM: 0,
    bankM2: 0,
    headlandShare: null,
    soil: null,
    bedCentresM: null,
    bedCount: null,
    courseAtStart: null,
    from: null,
    to: null,
    status: 'organic',
    statusSince: null,
    ring: null,
  };
}

function standOf(id: string, plot: string, at: number): Stand {
  const from = addDays(asDay('2000-01-01'), Math.floor(at / 10));
  return {
    id: asId(id),
    succession: null,
    plot: asId(plot),
    span: wholePlot,
    what: pick(crops),
    kind: 'crop',
    variety: null,
    state: 'agreed',
    sownOn: from,
    plantedOn: null,
    from,
    to: addDays(from, 150),
    undersownIn: null,
    course: null,
    courseYear: null,
    establishedShare: null,
    endedBy: null,
    reason: null,
    yieldTHa: null,
  };
}

function entryOf(at: number, before: readonly Entry[]): Entry {
  const doneOn = addDays(asDay('2000-01-01'), Math.floor(at / 10));
  const amends = at > 100 && random() < 0.02 ? (before[at - 1 - Math.floor(random() * 50)]?.id ?? null) : null;
  return {
    v: 1,
    id: newEntryId(
      Uint8Array.from({ length: 10 }, () => Math.floor(random() * 256)),
      946_684_800_000 + at * 8_640_000,
    ),
    farm: about.id,
    doneOn,
    doneAt: null,
    enteredAt: `${doneOn}T18:00:00Z`,
    by: asId('ann'),
    device: asId('phone'),
    deviceSeq: at + 1,
    body: bodyOf(at),
    amends,
    reason: null,
  };
}

const entries: Entry[] = [];
for (let at = 0; at < count; at += 1) entries.push(entryOf(at, entries));
const book: ReceivedEntry[] = [];
const sealStarted = performance.now();
for (const entry of entries)
  book.push(
    chain(book.at(-1)?.hash ?? null, entry, {
      receivedAt: `${entry.doneOn}T19:00:00Z`,
      seq: book.length + 1,
      salt: `${book.length}`.padStart(32, '0'),
    }),
  );
const sealMs = performance.now() - sealStarted;
const jumbled = book
  .map((entry) => ({ entry, key: random() }))
  .sort((a, b) => a.key - b.key)
  .map((one) => one.entry);

const inOrder = middleMs(5, () => replay(emptyFarm(about), book));
const outOfOrder = middleMs(5, () => replay(emptyFarm(about), jumbled));
const verified = middleMs(1, () => verifyBook(book));
if (!verified.result.ok || outOfOrder.result.farm.harvests.length !== inOrder.result.farm.harvests.length)
  throw new Error('The bench replayed two different farms.');
console.log(
  JSON.stringify({
    entries: count,
    openMs: inOrder.ms,
    openJumbledMs: outOfOrder.ms,
    appendPerSecond: Math.round((count / sealMs) * 1000),
    verifyMs: verified.ms,
    stands: inOrder.result.farm.stands.length,
    harvests: inOrder.result.farm.harvests.length,
    findings: inOrder.result.findings.length,
  }),
);
