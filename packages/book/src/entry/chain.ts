/**
 * The seal of the book: each entry's hash takes in the hash before it, so nothing can be changed, left out or moved without being seen.
 *
 * hash = SHA-256 of the canonical JSON (RFC 8785) of { previous, envelope…, receivedAt, seq, bodyDigest };
 * bodyDigest = SHA-256 of the salt, a line break and the canonical JSON of the body. The salt is not under the hash: when a body is withdrawn its
 * salt goes too, so nobody can guess the body from its digest, and the book still verifies.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import canonicalize from 'canonicalize';
import type { Entry, EntryBody, ReceivedEntry } from './entry.ts';

/** Canonical JSON of RFC 8785. Throws on what JSON cannot hold, such as NaN. */
export function canonicalJson(value: unknown): string {
  const text = (canonicalize as unknown as (value: unknown) => string | undefined)(value);
  if (text === undefined) throw new Error('Nothing to write as JSON.');
  return text;
}

/** Digest of a body with its salt, hexadecimal. */
export function bodyDigest(salt: string, body: EntryBody | null): string {
  return digest(`${salt}\n${canonicalJson(body)}`);
}

export interface Receipt {
  /** UTC instant, ISO 8601. */
  readonly receivedAt: string;
  /** 1 for the first entry of a book. */
  readonly seq: number;
  /** Random text, another for each entry; hexadecimal of 16 bytes or more. */
  readonly salt: string;
}

/** The entry as received after the one whose hash is given (null for the first). */
export function chain(previousHash: string | null, entry: Entry, receipt: Receipt): ReceivedEntry {
  const sealed = { ...plainEntry(entry), ...receipt, bodyDigest: bodyDigest(receipt.salt, entry.body) };
  return { ...sealed, hash: hashOf(previousHash, sealed) };
}

/** The hash an entry must have after the one before it. */
export function hashOf(previousHash: string | null, received: Omit<ReceivedEntry, 'hash'>): string {
  const { v, id, farm, doneOn, doneAt, enteredAt, by, device, deviceSeq, amends, reason, receivedAt, seq } = received;
  return digest(
    canonicalJson({
      previous: previousHash,
      v,
      id,
      farm,
      doneOn,
      doneAt,
      enteredAt,
      by,
      device,
      deviceSeq,
      amends,
      reason,
      receivedAt,
      seq,
      bodyDigest: received.bodyDigest,
    }),
  );
}

/** The entry without what it got on receipt. */
export function plainEntry(entry: Entry): Entry {
  const { v, id, farm, doneOn, doneAt, enteredAt, by, device, deviceSeq, body, amends, reason } = entry;
  return { v, id, farm, doneOn, doneAt, enteredAt, by, device, deviceSeq, body, amends, reason };
}

/** The entry with its body and salt taken away for good. */
export function withdrawBody(received: ReceivedEntry): ReceivedEntry {
  return { ...received, body: null, salt: '' };
}

function digest(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}
