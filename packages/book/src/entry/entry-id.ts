import type { EntryId } from '@leywright/measures';

/**
 * An entry's id: a UUID of version 7, made on the device without asking anyone, in the order of time.
 * `random` is 10 bytes of chance, `instantMs` milliseconds since 1970. Throws on anything else: both come from our own code.
 *
 * Source  RFC 9562, section 5.7.
 * Checks  test/entry-id.test.ts (the RFC's own example, appendix A.6)
 */
export function newEntryId(random: Uint8Array, instantMs: number): EntryId {
  if (random.length !== 10) throw new Error(`An entry's id takes 10 random bytes, not ${random.length}.`);
  if (!Number.isInteger(instantMs) || instantMs < 0 || instantMs >= 2 ** 48)
    throw new Error(`${instantMs} is not a time of this era in milliseconds.`);
  const bytes = [...Array.from({ length: 6 }, (_, at) => Math.floor(instantMs / 2 ** (8 * (5 - at))) % 256), ...random];
  bytes[6] = 0x70 | ((bytes[6] ?? 0) & 0x0f);
  bytes[8] = 0x80 | ((bytes[8] ?? 0) & 0x3f);
  const hex = bytes.map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-') as EntryId;
}
