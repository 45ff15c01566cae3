/**
 * What the tables of a farm folder say, as entries that follow its book.
 *
 * A book that was exported describes the farm itself; its tables repeat that, so only what somebody changed in them since is entered, and it
 * counts from the day of the import. A book of records alone lies over its tables, so the tables are entered as of the day before it begins.
 */
import {
  canonicalJson,
  type Entry,
  emptyFarm,
  entriesOf,
  type Farm,
  type ReceivedEntry,
  replay,
  type Stamp,
} from '@leywright/book';
import { addDays, type Day } from '@leywright/measures';

export function tablesAsEntries(tables: Farm, book: readonly ReceivedEntry[], stamp: Stamp): readonly Entry[] {
  if (!describesFarm(book)) return entriesOf(tables, { ...stamp, doneOn: dayBefore(book, stamp.doneOn) });
  const told = replay(emptyFarm(tables.about), book, { only: 'descriptions' }).farm;
  const before = new Map(entriesOf(told, stamp).map((entry) => [rowOf(entry), writtenValue(entry)]));
  const rows = entriesOf(tables, stamp);
  const changed = rows.filter((entry) => before.get(rowOf(entry)) !== writtenValue(entry));
  // A device counts without gaps: a number left out would be a record not yet received.
  return [...changed, ...takenAway(before, rows, stamp)].map((entry, at) => ({
    ...entry,
    deviceSeq: stamp.deviceSeqFrom + at,
  }));
}

/** The farm as tables and book together tell it: the same as after an import. */
export function farmOfFolder(tables: Farm, book: readonly ReceivedEntry[], today: Day) {
  if (!describesFarm(book)) return { ...replay(tables, book), described: () => tables };
  const entries = [...book, ...tablesAsEntries(tables, book, trialStamp(tables, today))];
  const base = emptyFarm(tables.about);
  return { ...replay(base, entries), described: () => replay(base, entries, { only: 'descriptions' }).farm };
}

function describesFarm(book: readonly ReceivedEntry[]): boolean {
  return book.some(({ body }) => body?.kind === 'set' && body.subject === 'about');
}

function dayBefore(book: readonly ReceivedEntry[], today: Day): Day {
  const [first] = [...book.map((entry) => entry.doneOn), today].sort();
  return book.length === 0 || first === undefined ? today : addDays(first, -1);
}

/** Rows that the book knows and the tables no longer have. */
function takenAway(before: ReadonlyMap<string, string>, rows: readonly Entry[], stamp: Stamp): readonly Entry[] {
  const kept = new Set(rows.map(rowOf));
  const { newId, deviceSeqFrom, ...envelope } = stamp;
  return [...before.keys()]
    .filter((row) => !kept.has(row))
    .map((row, at) => {
      const [subject, key] = JSON.parse(row) as [Extract<Entry['body'], { kind: 'set' }>['subject'], string];
      const place = rows.length + at;
      return {
        v: 1,
        id: newId(place),
        ...envelope,
        doneAt: null,
        deviceSeq: deviceSeqFrom,
        body: { kind: 'set', subject, key, value: null },
        amends: null,
        reason: null,
      };
    });
}

function rowOf({ body }: Entry): string {
  return body?.kind === 'set' ? JSON.stringify([body.subject, body.key]) : '';
}

function writtenValue({ body }: Entry): string {
  return body?.kind === 'set' ? canonicalJson(body.value) : '';
}

/** For a look at a folder that is not imported: who and when do not matter, only that these entries come last. */
function trialStamp(tables: Farm, today: Day): Stamp {
  const last = 'ffffffff-ffff-7fff-bfff-';
  return {
    farm: tables.about.id,
    by: 'tables' as Stamp['by'],
    device: 'tables' as Stamp['device'],
    deviceSeqFrom: 1,
    doneOn: today,
    enteredAt: `${today}T23:59:59.999Z`,
    newId: (at) => `${last}${String(at).padStart(12, '0')}` as ReturnType<Stamp['newId']>,
  };
}
