/**
 * Codes of the second factor: six digits from a secret and the time.
 *
 * Source  RFC 6238 (time-based one-time passwords) over RFC 4226, section 5.3; RFC 4648, section 6 (base32).
 * Checks  test/totp.test.ts (all 18 vectors of RFC 6238, appendix B; the vectors of RFC 4648, section 10)
 */
import { createHmac, timingSafeEqual } from 'node:crypto';

const stepS = 30;
const stepsAround = 1;
const codeDigits = 6;

/** Which time step an instant is in; milliseconds since 1970. */
export function stepAt(instantMs: number): number {
  return Math.floor(instantMs / 1000 / stepS);
}

/** The code of one time step. */
export function codeOf(
  secret: Uint8Array,
  step: number,
  {
    digits = codeDigits,
    hash = 'sha1',
  }: { readonly digits?: number; readonly hash?: 'sha1' | 'sha256' | 'sha512' } = {},
): string {
  const counter = Buffer.alloc(8);
  counter.writeBigUInt64BE(BigInt(step));
  const mac = createHmac(hash, secret).update(counter).digest();
  const offset = (mac.at(-1) ?? 0) & 0x0f;
  const number = mac.readUInt32BE(offset) & 0x7fff_ffff;
  return String(number % 10 ** digits).padStart(digits, '0');
}

/** The time step whose code this is: now's, or one before or after it, because clocks differ. Null when it is none of them. */
export function stepOfCode(secret: Uint8Array, code: string, instantMs: number): number | null {
  const given = code.replace(/\s/g, '');
  if (!/^\d{6}$/.test(given)) return null;
  const now = stepAt(instantMs);
  for (let step = Math.max(0, now - stepsAround); step <= now + stepsAround; step += 1)
    if (timingSafeEqual(Buffer.from(codeOf(secret, step)), Buffer.from(given))) return step;
  return null;
}

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567';

/** Base32 without padding. */
export function base32(bytes: Uint8Array): string {
  const bits = [...bytes].map((byte) => byte.toString(2).padStart(8, '0')).join('');
  const groups = bits.match(/.{1,5}/g) ?? [];
  return groups.map((group) => letters[Number.parseInt(group.padEnd(5, '0'), 2)]).join('');
}

export function bytesOfBase32(text: string): Uint8Array {
  const bits = [...text].map((letter) => letters.indexOf(letter).toString(2).padStart(5, '0')).join('');
  return Uint8Array.from(bits.match(/.{8}/g) ?? [], (byte) => Number.parseInt(byte, 2));
}

/** What an authenticator reads from a picture or a link. */
export function factorAddress(secret: string, farmName: string, person: string): string {
  const label = `${encodeURIComponent(farmName)}:${encodeURIComponent(person)}`;
  return `otpauth://totp/${label}?secret=${secret}&issuer=${encodeURIComponent(farmName)}&algorithm=SHA1&digits=${codeDigits}&period=${stepS}`;
}
