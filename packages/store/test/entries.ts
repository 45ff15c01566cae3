/** Entries for the cases of a store. */
import { chain, type Entry, type ReceivedEntry } from '@leywright/book';
import { asDay, asId, type EntryId, type FarmId } from '@leywright/measures';
import type { Receipt } from '../src/index.ts';

export const ours = asId<FarmId>('ours');
export const theirs = asId<FarmId>('theirs');
/** A fresh salt each time. */
export const receipt: Receipt = { receivedAt: '2027-06-08T06:00:00Z', newSalt: counter('salt') };

/** name-1, name-2, and on. */
export function counter(name: string): () => string {
  let counted = 0;
  return () => {
    counted += 1;
    return `${name}-${counted}`;
  };
}

export function entry(number: number, more: Partial<Entry> = {}): Entry {
  return {
    v: 1,
    id: entryId(number),
    farm: ours,
    doneOn: asDay('2027-06-08'),
    doneAt: null,
    enteredAt: '2027-06-08T05:30:00Z',
    by: asId('ruth'),
    device: asId('phone'),
    deviceSeq: number,
    body: { kind: 'weighing', crop: 'carrot-maincrop', store: 'barn', kg: number },
    amends: null,
    reason: null,
    ...more,
  };
}

export function entryId(number: number): EntryId {
  return `01900000-0000-7000-8000-${String(number).padStart(12, '0')}` as EntryId;
}

export function sealed(entries: readonly Entry[]): readonly ReceivedEntry[] {
  const book: ReceivedEntry[] = [];
  for (const one of entries)
    book.push(
      chain(book.at(-1)?.hash ?? null, one, { receivedAt: '2026-01-01T00:00:00Z', seq: book.length + 1, salt: 'old' }),
    );
  return book;
}

export function haltingSalt(count: number): () => string {
  let left = count;
  return () => {
    if (left === 0) throw new Error('no more salt');
    left -= 1;
    return 'salt';
  };
}
