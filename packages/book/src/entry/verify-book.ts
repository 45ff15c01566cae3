/** Whether a book is as it was written. */

import { bodyDigest, hashOf } from './chain.ts';
import type { ReceivedEntry } from './entry.ts';

/**
 * How an entry fails: `changed` (its envelope or body is not what was sealed), `missing` (entries before it are not there), `moved` (it stands out of
 * order), `repeated`, `body-missing` (its body is gone and no entry withdrew it).
 */
export type Breach = 'changed' | 'missing' | 'moved' | 'repeated' | 'body-missing';

export type Verification =
  | { readonly ok: true; readonly count: number; readonly lastHash: string | null; readonly withdrawn: number }
  | {
      readonly ok: false;
      readonly count: number;
      readonly firstBad: { readonly at: number; readonly seq: number; readonly id: string; readonly how: Breach };
    };

/** Where a book goes on from, when only its later entries are looked at. */
export interface BookEnd {
  readonly seq: number;
  readonly hash: string;
}

/**
 * Verifies entries in the order they stand; `after` when they are the later part of a book. `at` is the place in the list, from 0.
 * `withdrawnElsewhere`: ids whose bodies an entry of another part takes away.
 */
export function verifyBook(
  entries: readonly ReceivedEntry[],
  after: BookEnd | null = null,
  withdrawnElsewhere: ReadonlySet<string> = new Set(),
): Verification {
  const withdrawn = new Set(withdrawnElsewhere);
  for (const { body } of entries) if (body?.kind === 'withdrawn') withdrawn.add(body.entry);
  let previous: BookEnd | null = after;
  for (const [at, entry] of entries.entries()) {
    const how = breachOf(entry, { previous, at, entries, withdrawn });
    if (how !== null) return { ok: false, count: entries.length, firstBad: { at, seq: entry.seq, id: entry.id, how } };
    previous = { seq: entry.seq, hash: entry.hash };
  }
  const bodiless = entries.filter((entry) => entry.body === null && withdrawn.has(entry.id)).length;
  return { ok: true, count: entries.length, lastHash: previous?.hash ?? null, withdrawn: bodiless };
}

interface Standing {
  readonly previous: BookEnd | null;
  readonly at: number;
  readonly entries: readonly ReceivedEntry[];
  readonly withdrawn: ReadonlySet<string>;
}

function breachOf(entry: ReceivedEntry, { previous, at, entries, withdrawn }: Standing): Breach | null {
  const expectedSeq = (previous?.seq ?? 0) + 1;
  if (entry.seq !== expectedSeq) return outOfOrder(entry, expectedSeq, entries.slice(0, at), entries.slice(at + 1));
  if (hashOf(previous?.hash ?? null, entry) !== entry.hash) return 'changed';
  const asSealed = bodyDigest(entry.salt, entry.body) === entry.bodyDigest;
  if (asSealed) return null;
  if (entry.body !== null) return 'changed';
  return withdrawn.has(entry.id) ? null : 'body-missing';
}

function outOfOrder(
  entry: ReceivedEntry,
  expectedSeq: number,
  before: readonly ReceivedEntry[],
  later: readonly ReceivedEntry[],
): Breach {
  if (entry.seq > expectedSeq) return later.some((one) => one.seq === expectedSeq) ? 'moved' : 'missing';
  return before.some((one) => one.seq === entry.seq) ? 'repeated' : 'moved';
}
