/** Makes a link that makes one person's account, or gives them a new password, once. From a page or at the machine. */
import type { Role } from '@leywright/book';
import { type Day, type FarmId, type PersonId, readId } from '@leywright/measures';
import type { Invitation, Store } from '@leywright/store';
import { type Chance, newTicket } from './ticket.ts';

export interface InviteTools {
  readonly store: Store;
  readonly random: Chance;
  readonly nowMs: () => number;
}

export interface InviteWish {
  readonly farm: FarmId;
  readonly person: string;
  readonly name: string;
  readonly role: Role;
  readonly asKnownOn: Day | null;
  readonly days: number;
  readonly madeBy: PersonId;
}

export type InvitedOrNot =
  | { readonly kind: 'invited'; readonly invitation: Invitation; readonly ticket: string }
  | { readonly kind: 'refused'; readonly code: InviteRefusal };
export type InviteRefusal = 'not-a-person-id' | 'day-for-lookers' | 'person-ended';

export const usualInviteDays = 7;
const dayMs = 86_400_000;

export async function invite(tools: InviteTools, wish: InviteWish): Promise<InvitedOrNot> {
  const person = readId<PersonId>(wish.person);
  if (person === null) return { kind: 'refused', code: 'not-a-person-id' };
  if (wish.asKnownOn !== null && wish.role !== 'looker') return { kind: 'refused', code: 'day-for-lookers' };
  const account = await tools.store.people.account(wish.farm, person);
  if (account !== null && account.endedAt !== null) return { kind: 'refused', code: 'person-ended' };
  const { tokenHash, text } = newTicket(wish.farm, tools.random);
  const now = tools.nowMs();
  const invitation: Invitation = {
    farm: wish.farm,
    tokenHash,
    id: Buffer.from(tools.random(9)).toString('hex'),
    person,
    // Who has an account keeps name and role: the link is for a new password.
    name: account?.name ?? wish.name,
    role: account?.role ?? wish.role,
    asKnownOn: account === null ? wish.asKnownOn : account.asKnownOn,
    madeBy: wish.madeBy,
    madeAt: new Date(now).toISOString(),
    endsAt: new Date(now + wish.days * dayMs).toISOString(),
  };
  await tools.store.people.addInvitation(invitation);
  return { kind: 'invited', invitation, ticket: text };
}

/** What follows # stays in the browser: it is in no request line, no log and no Referer. */
export function linkOf(origin: string, ticket: string): string {
  return `${origin}/invitation#${ticket}`;
}
