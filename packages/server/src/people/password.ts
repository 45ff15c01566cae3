/**
 * Passwords as they are kept: argon2id where its machine code loads, else scrypt of Node itself. The kept text says which and how strong, so
 * each is verified as it was made, and made anew at the next sign-in when it is weaker than today's.
 *
 * Source  RFC 9106 (argon2id), RFC 7914 (scrypt); strengths as OWASP's Password Storage Cheat Sheet gives them (memory).
 * Checks  test/password.test.ts
 */
import { randomBytes, type ScryptOptions, scrypt, timingSafeEqual } from 'node:crypto';

export interface Passwords {
  readonly hash: (password: string) => Promise<string>;
  readonly isRight: (password: string, kept: string) => Promise<boolean>;
  /** Whether a kept text is weaker than what `hash` makes now. */
  readonly isWeak: (kept: string) => boolean;
}

export const shortestPassword = 12;
export const longestPassword = 256;

const argon2 = { algorithm: 2 /* argon2id */, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;
const argon2Mark = `$argon2id$v=19$m=${argon2.memoryCost},t=${argon2.timeCost},p=${argon2.parallelism}$`;
/** log2 of scrypt's cost. */
const scryptLn = 17;
const scryptMark = `$scrypt$ln=${scryptLn},r=8,p=1$`;

/** Argon2id, or scrypt where its machine code cannot be loaded. */
export async function loadPasswords(): Promise<Passwords> {
  const argon = await import('@node-rs/argon2').catch(() => null);
  if (argon === null) return scryptPasswords;
  return {
    hash: (password) => argon.hash(plain(password), argon2),
    isRight: async (password, kept) =>
      kept.startsWith('$scrypt$')
        ? scryptPasswords.isRight(password, kept)
        : argon.verify(kept, plain(password)).catch(() => false),
    isWeak: (kept) => !kept.startsWith(argon2Mark),
  };
}

export const scryptPasswords: Passwords = {
  hash: async (password) => {
    const salt = randomBytes(16);
    return `${scryptMark}${unpadded(salt)}$${unpadded(await derived(plain(password), salt, scryptLn))}`;
  },
  isRight: async (password, kept) => {
    const [, ln, salt, hash] = /^\$scrypt\$ln=(\d{1,2}),r=8,p=1\$([^$]+)\$([^$]+)$/.exec(kept) ?? [];
    if (ln === undefined || salt === undefined || hash === undefined || Number(ln) > 20) return false;
    const wanted = Buffer.from(hash, 'base64');
    const got = await derived(plain(password), Buffer.from(salt, 'base64'), Number(ln));
    return got.length === wanted.length && timingSafeEqual(got, wanted);
  },
  isWeak: (kept) => !kept.startsWith(scryptMark),
};

/** The same word typed on two keyboards may differ in how its letters are composed. */
function plain(password: string): string {
  return password.normalize('NFKC');
}

function unpadded(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString('base64').replace(/=+$/, '');
}

function derived(password: string, salt: Uint8Array, ln: number): Promise<Buffer> {
  const cost = 2 ** ln;
  const options: ScryptOptions = { N: cost, r: 8, p: 1, maxmem: 256 * cost * 8 };
  return new Promise((resolve, reject) => {
    scrypt(password, salt, 32, options, (error, key) => (error === null ? resolve(key) : reject(error)));
  });
}

/** What speaks against a new password, as codes of refusals; long ones of any letters are welcome. */
export function passwordProblems(password: string, person: string): readonly string[] {
  if ([...password].length < shortestPassword) return ['password-short'];
  if (password.length > longestPassword) return ['password-long'];
  const folded = plain(password).toLowerCase();
  if (new Set(folded).size < 5 || folded.replaceAll(person.toLowerCase(), '').length < shortestPassword / 2)
    return ['password-plain'];
  return [];
}
