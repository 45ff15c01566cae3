/** Entries as they come in, made a set: each id once, with what is missing told. */
import { canonicalJson, plainEntry } from '../entry/chain.ts';
import type { Entry } from '../entry/entry.ts';
import { type BookFinding, bookFinding } from './findings.ts';
import { isReceived } from './order.ts';

export interface Gathered {
  readonly byId: ReadonlyMap<string, Entry>;
  readonly findings: readonly BookFinding[];
}

/** Each id once. Two entries that differ under one id are told; which of them stands does not hang on arrival. */
export function gather(entries: readonly Entry[]): Gathered {
  const byId = new Map<string, Entry>();
  const torn = new Set<string>();
  for (const entry of entries) {
    const before = byId.get(entry.id);
    if (before === undefined) byId.set(entry.id, entry);
    else if (before !== entry) byId.set(entry.id, oneOfTwo(before, entry, torn));
  }
  return {
    byId,
    findings: [...[...torn].map((id) => bookFinding('one-id-two-entries', [id])), ...numberFindings(byId.values())],
  };
}

function oneOfTwo(a: Entry, b: Entry, torn: Set<string>): Entry {
  const textA = canonicalJson(plainEntry(a));
  const textB = canonicalJson(plainEntry(b));
  if (textA === textB) return fuller(a, b);
  // A withdrawn body is the same entry without its words.
  if (
    canonicalJson({ ...plainEntry(a), body: null }) === canonicalJson({ ...plainEntry(b), body: null }) &&
    (a.body === null || b.body === null)
  )
    return a.body === null ? a : b;
  torn.add(a.id);
  return textA < textB ? a : b;
}

/** Of two copies, the one with a receipt; of two receipts, the earlier. */
function fuller(a: Entry, b: Entry): Entry {
  if (!isReceived(a)) return b;
  if (!isReceived(b)) return a;
  return a.receivedAt < b.receivedAt || (a.receivedAt === b.receivedAt && a.seq <= b.seq) ? a : b;
}

/** A device counts its entries from 1: a number left out is a record not received, a number given twice is a copied device. */
function numberFindings(entries: Iterable<Entry>): BookFinding[] {
  const byDevice = new Map<string, Map<number, string[]>>();
  for (const { device, deviceSeq, id } of entries) {
    const numbers = byDevice.get(device) ?? new Map<number, string[]>();
    byDevice.set(device, numbers);
    const ids = numbers.get(deviceSeq);
    if (ids === undefined) numbers.set(deviceSeq, [id]);
    else ids.push(id);
  }
  return [...byDevice].flatMap(([device, numbers]) => [
    ...gapFindings(device, [...numbers.keys()]),
    ...twiceFindings(device, numbers),
  ]);
}

function gapFindings(device: string, given: readonly number[]): BookFinding[] {
  const findings: BookFinding[] = [];
  let next = 1;
  for (const number of [...given].sort((a, b) => a - b)) {
    if (number > next)
      findings.push(
        bookFinding('records-not-received', [], {
          figures: { device, from: next, to: number - 1, count: number - next },
        }),
      );
    next = Math.max(next, number + 1);
  }
  return findings;
}

function twiceFindings(device: string, numbers: ReadonlyMap<number, readonly string[]>): BookFinding[] {
  return [...numbers]
    .filter(([, ids]) => ids.length > 1)
    .map(([number, ids]) => bookFinding('device-number-twice', [...ids].sort(), { figures: { device, number } }));
}
