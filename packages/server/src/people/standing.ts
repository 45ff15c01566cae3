/** Who can sign in, so that a farm never loses its last grower and never answers beyond its machine without one. */
import type { FarmId, PersonId } from '@leywright/measures';
import type { Account, Store } from '@leywright/store';

/** Growers of a farm that can sign in. */
export async function growersOf(store: Store, farm: FarmId): Promise<readonly Account[]> {
  return (await store.people.accounts(farm)).filter(({ role, endedAt }) => role === 'grower' && endedAt === null);
}

export async function isLastGrower(store: Store, farm: FarmId, person: PersonId): Promise<boolean> {
  const growers = await growersOf(store, farm);
  return growers.length === 1 && growers[0]?.person === person;
}

export interface Standing {
  /** Accounts of all farms here that can sign in. */
  readonly people: number;
  /** Growers who can sign in, and those who were invited and have not come yet. */
  readonly growers: number;
  readonly invitedGrowers: number;
}

/** Asked once, when the server starts. */
export async function standingOf(store: Store, nowMs: number): Promise<Standing> {
  const people = (await store.people.everyone()).filter(({ endedAt }) => endedAt === null);
  let invitedGrowers = 0;
  for (const { id } of await store.farms())
    for (const { role, endsAt } of await store.people.invitations(id))
      if (role === 'grower' && Date.parse(endsAt) > nowMs) invitedGrowers += 1;
  return { people: people.length, growers: people.filter(({ role }) => role === 'grower').length, invitedGrowers };
}
