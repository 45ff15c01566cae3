import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { base32, bytesOfBase32, codeOf, factorAddress, stepAt, stepOfCode } from '../../src/people/totp.ts';

/** RFC 6238, appendix B: the secret is the digits 1 to 0, as often as the hash is long. */
const secrets = {
  sha1: Buffer.from('12345678901234567890'),
  sha256: Buffer.from('12345678901234567890123456789012'),
  sha512: Buffer.from('1234567890123456789012345678901234567890123456789012345678901234'),
} as const;

test.each([
  [59, '94287082', '46119246', '90693936'],
  [1111111109, '07081804', '68084774', '25091201'],
  [1111111111, '14050471', '67062674', '99943326'],
  [1234567890, '89005924', '91819424', '93441116'],
  [2000000000, '69279037', '90698825', '38618901'],
  [20000000000, '65353130', '77737706', '47863826'],
] as const)('at %i s the codes are those of RFC 6238, appendix B', (timeS, sha1, sha256, sha512) => {
  const step = stepAt(timeS * 1000);
  expect(codeOf(secrets.sha1, step, { digits: 8, hash: 'sha1' })).toBe(sha1);
  expect(codeOf(secrets.sha256, step, { digits: 8, hash: 'sha256' })).toBe(sha256);
  expect(codeOf(secrets.sha512, step, { digits: 8, hash: 'sha512' })).toBe(sha512);
});

test.each([
  ['f', 'MY'],
  ['fo', 'MZXQ'],
  ['foo', 'MZXW6'],
  ['foob', 'MZXW6YQ'],
  ['fooba', 'MZXW6YTB'],
  ['foobar', 'MZXW6YTBOI'],
])('base32 of "%s" is that of RFC 4648, section 10, without its padding', (text, encoded) => {
  expect(base32(Buffer.from(text))).toBe(encoded);
  expect(Buffer.from(bytesOfBase32(encoded)).toString()).toBe(text);
});

describe('a code', () => {
  const nowMs = 1_800_000_000_000;
  const secret = secrets.sha1;

  test.each([-1, 0, 1])('of %i steps from now is taken, and says which step it was', (off) => {
    expect(stepOfCode(secret, codeOf(secret, stepAt(nowMs) + off), nowMs)).toBe(stepAt(nowMs) + off);
  });

  test.each([-3, -2, 2, 3])('of %i steps from now is not', (off) => {
    expect(stepOfCode(secret, codeOf(secret, stepAt(nowMs) + off), nowMs)).toBeNull();
  });

  test('with a space in it is read, and anything else is not', () => {
    const code = codeOf(secret, stepAt(nowMs));
    expect(stepOfCode(secret, ` ${code.slice(0, 3)} ${code.slice(3)}`, nowMs)).toBe(stepAt(nowMs));
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), (text) => {
        const read = stepOfCode(secret, text, nowMs);
        return read === null || /^\d{6}$/.test(text.replace(/\s/g, ''));
      }),
    );
  });

  test('survives being written down: bytes come back from base32', () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 20, maxLength: 20 }), (bytes) => {
        expect(bytesOfBase32(base32(bytes))).toEqual(bytes);
      }),
    );
  });

  test('is set up by an address that names the farm and the person', () => {
    expect(factorAddress('MZXW6', 'Hill & Dale', 'ruth')).toBe(
      'otpauth://totp/Hill%20%26%20Dale:ruth?secret=MZXW6&issuer=Hill%20%26%20Dale&algorithm=SHA1&digits=6&period=30',
    );
  });
});
