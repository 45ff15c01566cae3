/**
 * What opens something: the cookie of a session, the end of an invitation's link, a recovery code. Each holds chance that only its holder
 * knows; the store keeps a hash of it, so who reads the store can open nothing with what stands there.
 */
import { createHash } from 'node:crypto';
import { type FarmId, readId } from '@leywright/measures';

const ticketBytes = 32;
const recoveryBytes = 8;
const recoveryLetters = 'abcdefghjkmnpqrstuvwxyz23456789';
export const recoveryCodes = 10;

export type Chance = (bytes: number) => Uint8Array;

export interface Ticket {
  readonly farm: FarmId;
  readonly tokenHash: string;
}

/** The farm stands in the ticket, so that it is looked for in that farm alone. */
export function newTicket(farm: FarmId, random: Chance): Ticket & { readonly text: string } {
  const token = Buffer.from(random(ticketBytes)).toString('base64url');
  return { farm, tokenHash: hashOf(token), text: `${encodeURIComponent(farm)}~${token}` };
}

/** Null when it is no ticket at all. */
export function readTicket(text: string): Ticket | null {
  const [, farmText, token] = /^([^~;,\s]{1,600})~([A-Za-z0-9_-]{43})$/.exec(text) ?? [];
  if (farmText === undefined || token === undefined) return null;
  const farm = readId<FarmId>(unescaped(farmText));
  return farm === null ? null : { farm, tokenHash: hashOf(token) };
}

function unescaped(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}

/** Chance of 256 bits needs no salt and no slow hash. */
export function hashOf(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}

/** Codes for when the authenticator is lost: `k7m2-px9q-t4rd`, 12 letters of 31, 59 bits of chance. */
export function newRecoveryCode(random: Chance): string {
  const letters: string[] = [];
  // Bytes past the last whole round of letters are drawn again, so that each letter is as likely as any other.
  const most = 256 - (256 % recoveryLetters.length);
  while (letters.length < 12)
    for (const byte of random(recoveryBytes))
      if (byte < most && letters.length < 12) letters.push(recoveryLetters[byte % recoveryLetters.length] ?? '');
  return [letters.slice(0, 4), letters.slice(4, 8), letters.slice(8)].map((four) => four.join('')).join('-');
}

export function hashOfRecoveryCode(code: string): string {
  return hashOf(code.toLowerCase().replace(/[^a-z0-9]/g, ''));
}
