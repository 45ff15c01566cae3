/** Who asks. */
import type { Role } from '@leywright/book';
import type { Day, FarmId, PersonId } from '@leywright/measures';
import type { Account, Session, Store } from '@leywright/store';
import { readTicket } from './ticket.ts';

export interface SignedIn {
  readonly kind: 'signed-in';
  readonly account: Account;
  readonly session: Session;
}

export type Visitor =
  /** Nothing is asked on this machine: whoever sits at it counts as the grower of every farm here. */
  { readonly kind: 'at-the-machine' } | SignedIn | { readonly kind: 'stranger' };

declare module 'fastify' {
  interface FastifyRequest {
    visitor: Visitor;
  }
}

/** Longest time without a word from a browser, and longest time of all. A phone may be without signal for three weeks. */
const idleDays = 30;
export const longestDays = 90;
const dayMs = 86_400_000;
/** A session's last word is written down no oftener than this. */
const seenEveryMs = 3_600_000;

/** The visitor behind a cookie. What was ended, ran out or belongs to nobody any more opens nothing. */
export async function visitorOf(store: Store, cookie: string | null, nowMs: number): Promise<Visitor> {
  const ticket = cookie === null ? null : readTicket(cookie);
  if (ticket === null) return { kind: 'stranger' };
  const session = await store.people.session(ticket.farm, ticket.tokenHash);
  if (session === null || isOver(session, nowMs)) return { kind: 'stranger' };
  const account = await store.people.account(session.farm, session.person);
  if (account === null || account.endedAt !== null) return { kind: 'stranger' };
  if (nowMs - Date.parse(session.seenAt) > seenEveryMs)
    await store.people.seen(session.farm, session.tokenHash, new Date(nowMs).toISOString());
  return { kind: 'signed-in', account, session };
}

function isOver({ endsAt, seenAt }: Session, nowMs: number): boolean {
  return Date.parse(endsAt) <= nowMs || Date.parse(seenAt) + idleDays * dayMs <= nowMs;
}

/** Growers hold everything, so they have a second factor; until it is set up, a grower reaches their own account alone. */
export function lacksFactor({ role, secondFactor }: Account): boolean {
  return role === 'grower' && secondFactor?.isOn !== true;
}

/** The role a visitor acts in; null for a stranger. */
export function roleOf(visitor: Visitor): Role | null {
  if (visitor.kind === 'at-the-machine') return 'grower';
  return visitor.kind === 'signed-in' ? visitor.account.role : null;
}

/** The farm a visitor is held to; null = any. */
export function ownFarm(visitor: Visitor): FarmId | null {
  return visitor.kind === 'signed-in' ? visitor.account.farm : null;
}

/** The day by whose end a visitor sees what was known; null = now. */
export function knownOnOf(visitor: Visitor): Day | null {
  return visitor.kind === 'signed-in' ? visitor.account.asKnownOn : null;
}

/** null for whoever sits at the machine. */
export function personOf(visitor: Visitor): PersonId | null {
  return visitor.kind === 'signed-in' ? visitor.account.person : null;
}
