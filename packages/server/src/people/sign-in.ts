/** Signing in: name, password, and the second factor where there is one. Whoever tries too often waits, longer each time. */
import { type FarmId, type PersonId, readId } from '@leywright/measures';
import type { Account, Session, Store } from '@leywright/store';
import type { Passwords } from './password.ts';
import { type Chance, hashOfRecoveryCode, newTicket } from './ticket.ts';
import { bytesOfBase32, stepOfCode } from './totp.ts';
import { longestDays } from './visitor.ts';

export interface SignInTools {
  readonly store: Store;
  readonly passwords: Passwords;
  readonly random: Chance;
  readonly nowMs: () => number;
}

export interface SignInWish {
  readonly farm: string;
  readonly person: string;
  readonly password: string;
  /** Of the authenticator, or a recovery code. */
  readonly code: string | null;
  /** What the browser calls itself. */
  readonly device: string;
}

export type SignedInOrNot =
  | { readonly kind: 'signed-in'; readonly account: Account; readonly session: Session; readonly cookie: string }
  | { readonly kind: 'refused'; readonly code: 'sign-in-refused' | 'code-needed' | 'code-refused' }
  | { readonly kind: 'wait'; readonly waitS: number };

const freeFailures = 5;
const firstWaitS = 30;
const longestWaitS = 900;
const dayMs = 86_400_000;
const deviceChars = 160;

export async function signIn(tools: SignInTools, wish: SignInWish): Promise<SignedInOrNot> {
  const account = await accountOf(tools.store, wish);
  const waitS = account === null ? 0 : waitOf(account, tools.nowMs());
  if (waitS > 0) return { kind: 'wait', waitS };
  const isRight = await isPasswordOf(account, wish.password, tools.passwords);
  if (account === null || account.endedAt !== null || !isRight) {
    if (account !== null) await countFailure(tools, account);
    return { kind: 'refused', code: 'sign-in-refused' };
  }
  const factor = await factorOf(tools, account, wish.code);
  if (factor !== 'right') {
    if (factor === 'code-refused') await countFailure(tools, account);
    return { kind: 'refused', code: factor };
  }
  if (account.failures > 0)
    await tools.store.people.changeAccount(account.farm, account.person, { failures: 0, waitUntil: null });
  if (tools.passwords.isWeak(account.passwordHash))
    await tools.store.people.changeAccount(account.farm, account.person, {
      passwordHash: await tools.passwords.hash(wish.password),
    });
  return { kind: 'signed-in', account, ...(await openSession(tools, account, wish.device)) };
}

async function accountOf(store: Store, { farm, person }: SignInWish): Promise<Account | null> {
  const farmId = readId<FarmId>(farm);
  const personId = readId<PersonId>(person);
  return farmId === null || personId === null ? null : store.people.account(farmId, personId);
}

let nobodysHash: Promise<string> | null = null;

/** Of a name that is not known a password is tried too, so that the time it takes does not tell which names are. */
async function isPasswordOf(account: Account | null, password: string, passwords: Passwords): Promise<boolean> {
  nobodysHash ??= passwords.hash('nobody has this password');
  const isRight = await passwords.isRight(password, account?.passwordHash ?? (await nobodysHash));
  return account !== null && isRight;
}

/** Whole seconds to wait; 0 = none. */
export function waitOf({ waitUntil }: Account, nowMs: number): number {
  return waitUntil === null ? 0 : Math.max(0, Math.ceil((Date.parse(waitUntil) - nowMs) / 1000));
}

export async function countFailure({ store, nowMs }: Pick<SignInTools, 'store' | 'nowMs'>, { farm, person }: Account) {
  const failures = await store.people.countFailure(farm, person);
  if (failures < freeFailures) return;
  const waitS = Math.min(longestWaitS, firstWaitS * 2 ** Math.min(20, failures - freeFailures));
  await store.people.changeAccount(farm, person, { waitUntil: new Date(nowMs() + waitS * 1000).toISOString() });
}

export async function factorOf(
  { store, nowMs }: Pick<SignInTools, 'store' | 'nowMs'>,
  { farm, person, secondFactor }: Account,
  code: string | null,
): Promise<'right' | 'code-needed' | 'code-refused'> {
  if (secondFactor?.isOn !== true) return 'right';
  if (code === null || code.trim() === '') return 'code-needed';
  const step = stepOfCode(bytesOfBase32(secondFactor.secret), code, nowMs());
  const isRight =
    step === null
      ? await store.people.takeRecoveryCode(farm, person, hashOfRecoveryCode(code))
      : await store.people.takeStep(farm, person, step);
  return isRight ? 'right' : 'code-refused';
}

async function openSession({ store, random, nowMs }: SignInTools, { farm, person }: Account, device: string) {
  const { tokenHash, text } = newTicket(farm, random);
  const now = new Date(nowMs()).toISOString();
  const session: Session = {
    farm,
    tokenHash,
    id: Buffer.from(random(9)).toString('hex'),
    person,
    madeAt: now,
    seenAt: now,
    endsAt: new Date(nowMs() + longestDays * dayMs).toISOString(),
    device: device.replace(/[^\x20-\x7e]/g, '').slice(0, deviceChars),
  };
  await store.people.dropEnded(farm, now);
  await store.people.addSession(session);
  return { session, cookie: text };
}
