/** What is done about people at the machine itself: whoever reaches the store's folder needs no leave of anyone. */
import type { FarmId, PersonId } from '@leywright/measures';
import { asId } from '@leywright/measures';
import type { Account, Store } from '@leywright/store';
import { type InvitedOrNot, type InviteWish, invite, linkOf } from './invite.ts';
import { isLastGrower } from './standing.ts';
import type { Chance } from './ticket.ts';

export interface MachineTools {
  readonly store: Store;
  readonly random: Chance;
  readonly nowMs: () => number;
}

const atTheMachine = asId<PersonId>('at-the-machine');

/** The invitation with its link, which is shown once. */
export async function inviteAtMachine(
  tools: MachineTools,
  wish: Omit<InviteWish, 'madeBy'>,
  origin: string,
): Promise<InvitedOrNot & { readonly link: string | null }> {
  const invited = await invite(tools, { ...wish, madeBy: atTheMachine });
  return { ...invited, link: invited.kind === 'invited' ? linkOf(origin, invited.ticket) : null };
}

export const accountDeeds = ['end', 'give-back', 'sign-out', 'factor-off'] as const;
export type AccountDeed = (typeof accountDeeds)[number];

/** Does one thing to an account; answers the code of a refusal, or null when it is done. */
export async function doToAccount(
  { store, nowMs }: MachineTools,
  { farm, person }: { readonly farm: FarmId; readonly person: PersonId },
  deed: AccountDeed,
): Promise<'no-such-person' | 'last-grower' | null> {
  const account = await store.people.account(farm, person);
  if (account === null) return 'no-such-person';
  if (deed === 'end' && (await isLastGrower(store, farm, person))) return 'last-grower';
  await store.people.changeAccount(farm, person, changeOf(deed, new Date(nowMs()).toISOString()));
  if (deed === 'factor-off') await store.people.putRecoveryCodes(farm, person, []);
  // Whoever holds an open session of an account that is mended or ended is put out.
  if (deed !== 'give-back') await store.people.endSessions(farm, person);
  return null;
}

function changeOf(deed: AccountDeed, now: string): Partial<Account> {
  if (deed === 'end') return { endedAt: now };
  if (deed === 'give-back') return { endedAt: null, failures: 0, waitUntil: null };
  return deed === 'factor-off' ? { secondFactor: null } : {};
}
