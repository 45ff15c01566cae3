import { asId, type FarmId } from '@leywright/measures';
import { describe, expect, test } from 'vitest';
import { loadPasswords, passwordProblems, scryptPasswords } from '../../src/people/password.ts';
import { hashOf, newRecoveryCode, newTicket, readTicket } from '../../src/people/ticket.ts';

const argon = await loadPasswords();

describe.each([
  ['argon2id', argon],
  ['scrypt', scryptPasswords],
])('a password kept by %s', (mark, passwords) => {
  test('is known again, and no other is', async () => {
    const kept = await passwords.hash('leeks under snow');
    expect(kept).toContain(`$${mark}$`);
    expect(kept).not.toContain('leeks');
    expect(await passwords.isRight('leeks under snow', kept)).toBe(true);
    expect(await passwords.isRight('leeks under snov', kept)).toBe(false);
    expect(passwords.isWeak(kept)).toBe(false);
  });

  test('is another text each time, so that two people with one password are not seen to have it', async () => {
    expect(await passwords.hash('leeks under snow')).not.toBe(await passwords.hash('leeks under snow'));
  });

  test('is the same however the keyboard composes its letters', async () => {
    const kept = await passwords.hash('Gründüngung im Mai'.normalize('NFC'));
    expect(await passwords.isRight('Gründüngung im Mai'.normalize('NFD'), kept)).toBe(true);
  });

  test.each(['', 'x', '$argon2id$', '$scrypt$ln=40,r=8,p=1$AA$AA', '$scrypt$ln=17,r=8,p=1$$'])(
    'is not known from the broken text "%s"',
    async (kept) => expect(await passwords.isRight('leeks under snow', kept)).toBe(false),
  );
});

test('a password kept by scrypt is still known where argon2id has come, and counts as weak', async () => {
  const kept = await scryptPasswords.hash('leeks under snow');
  expect(await argon.isRight('leeks under snow', kept)).toBe(true);
  expect(argon.isWeak(kept)).toBe(true);
  expect(argon.isWeak('$argon2id$v=19$m=4096,t=1,p=1$AAAA$AAAA')).toBe(true);
});

test.each([
  ['short', 'ruth', ['password-short']],
  ['x'.repeat(257), 'ruth', ['password-long']],
  ['aaaaaaaaaaaa', 'ruth', ['password-plain']],
  ['RuthRuthRuth1', 'ruth', ['password-plain']],
  ['leeks under snow', 'ruth', []],
  ['Schnee überm Lauch', 'ruth', []],
])('"%s" is judged as a new password', (password, person, problems) => {
  expect(passwordProblems(password, person)).toEqual(problems);
});

describe('a ticket', () => {
  const farm = asId<FarmId>('österfeld-3f9a2c');
  const counted = (bytes: number) => Uint8Array.from({ length: bytes }, (_, at) => at * 7);

  test('holds 256 bits, names its farm, and only its hash is kept', () => {
    const { text, tokenHash } = newTicket(farm, counted);
    expect(readTicket(text)).toEqual({ farm, tokenHash });
    const [, token = ''] = text.split('~');
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    expect(tokenHash).toBe(hashOf(token));
    expect(tokenHash).not.toContain(token);
  });

  test.each(['', '~', 'farm~short', `farm~${'x'.repeat(44)}`, `%E0%A4%A~${'x'.repeat(43)}`, `a b~${'x'.repeat(43)}`])(
    '"%s" is none',
    (text) => expect(readTicket(text)).toBeNull(),
  );

  test('a recovery code can be read out: no letter of it is taken for another', () => {
    expect(newRecoveryCode(counted)).toMatch(/^[a-hjkmnp-z2-9]{4}-[a-hjkmnp-z2-9]{4}-[a-hjkmnp-z2-9]{4}$/);
  });
});
