/** Records of a book for tests: who and where are plain, ids follow from the order they are made in. */
import { type Entry, type EntryBody, newEntryId } from '@leywright/book';
import { asDay, asId, type EntryId } from '@leywright/measures';

export type RecordPieces = Partial<Omit<Entry, 'v' | 'body' | 'doneOn' | 'amends' | 'device' | 'by' | 'id'>> & {
  readonly id?: string;
  readonly by?: string;
  readonly device?: string;
  readonly amends?: string | null;
};

/** The id of the record with that number in a test's book. */
export function recordId(number: number): EntryId {
  return newEntryId(
    Uint8Array.from({ length: 10 }, (_, at) => (number * 31 + at * 7) % 256),
    1_800_000_000_000 + number * 60_000,
  );
}

/** The record of that number: done on a day, typed at noon of it, on a phone that has sent all before. */
export function record(number: number, doneOn: string, body: EntryBody | null, pieces: RecordPieces = {}): Entry {
  const { id, by, device, amends, ...rest } = pieces;
  return {
    v: 1,
    id: id === undefined ? recordId(number) : (id as EntryId),
    farm: asId('test-farm'),
    doneOn: asDay(doneOn),
    doneAt: null,
    enteredAt: `${doneOn}T12:00:00.000Z`,
    by: asId(by ?? 'ruth'),
    device: asId(device ?? 'phone'),
    deviceSeq: number,
    body,
    amends: amends === undefined || amends === null ? null : (amends as EntryId),
    reason: null,
    ...rest,
  };
}

/** Something seen and counted; changes nothing on the ground. */
export function observation(plot: string | null, what: string, count: number | null): EntryBody {
  return { kind: 'observation', plot, what, count, of: 10, words: null };
}
