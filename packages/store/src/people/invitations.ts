/** Links that each make one account, or give a person a new password, once. */
import type { Role } from '@leywright/book';
import { asDay, asId, type FarmId, type PersonId } from '@leywright/measures';
import type { Kysely, Selectable } from 'kysely';
import type { InvitationsTable } from '../schema/people-tables.ts';
import type { StoreTables } from '../schema/tables.ts';
import { addAccount } from './accounts.ts';
import type { Invitation, InvitationStore } from './seam.ts';

export function invitationsOver(db: Kysely<StoreTables>): InvitationStore {
  const rows = (farm: FarmId) => db.selectFrom('invitations').selectAll().where('farm_id', '=', farm);
  return {
    addInvitation: async (invitation) => {
      await db.insertInto('invitations').values(rowOfInvitation(invitation)).execute();
    },
    invitation: async (farm, tokenHash) => {
      const row = await rows(farm).where('token_hash', '=', tokenHash).executeTakeFirst();
      return row === undefined ? null : invitationOfRow(row);
    },
    invitations: async (farm) =>
      (await rows(farm).orderBy('made_at').orderBy('invitation_id').execute()).map(invitationOfRow),
    dropInvitation: async (farm, id) => {
      const gone = await db
        .deleteFrom('invitations')
        .where('farm_id', '=', farm)
        .where('invitation_id', '=', id)
        .executeTakeFirst();
      return gone.numDeletedRows > 0n;
    },
    acceptInvitation: (invitation, passwordHash, at) =>
      db.transaction().execute((step) => accept(step, { invitation, passwordHash, at })),
  };
}

interface Accepting {
  readonly invitation: Invitation;
  readonly passwordHash: string;
  readonly at: string;
}

async function accept(
  step: Kysely<StoreTables>,
  { invitation, passwordHash, at }: Accepting,
): Promise<'accepted' | 'gone'> {
  const { farm, tokenHash, person, name, role, asKnownOn } = invitation;
  const gone = await step
    .deleteFrom('invitations')
    .where('farm_id', '=', farm)
    .where('token_hash', '=', tokenHash)
    .executeTakeFirst();
  if (gone.numDeletedRows === 0n) return 'gone';
  const added = await addAccount(step, { farm, person, name, role, asKnownOn, passwordHash, madeAt: at });
  if (added === 'id-taken') await putPassword(step, invitation, passwordHash);
  return 'accepted';
}

/** Someone who has an account gets a new password by it; role and second factor stay, and whoever is signed in as them is signed out. */
async function putPassword(
  step: Kysely<StoreTables>,
  { farm, person }: Invitation,
  passwordHash: string,
): Promise<void> {
  await step
    .updateTable('accounts')
    .set({ password_hash: passwordHash, failures: 0, wait_until: null })
    .where('farm_id', '=', farm)
    .where('person_id', '=', person)
    .execute();
  await step.deleteFrom('sessions').where('farm_id', '=', farm).where('person_id', '=', person).execute();
}

function rowOfInvitation(invitation: Invitation): InvitationsTable {
  return {
    farm_id: invitation.farm,
    token_hash: invitation.tokenHash,
    invitation_id: invitation.id,
    person_id: invitation.person,
    name: invitation.name,
    role: invitation.role,
    as_known_on: invitation.asKnownOn,
    made_by: invitation.madeBy,
    made_at: invitation.madeAt,
    ends_at: invitation.endsAt,
  };
}

function invitationOfRow(row: Selectable<InvitationsTable>): Invitation {
  return {
    farm: asId<FarmId>(row.farm_id),
    tokenHash: row.token_hash,
    id: row.invitation_id,
    person: asId<PersonId>(row.person_id),
    name: row.name,
    role: row.role as Role,
    asKnownOn: row.as_known_on === null ? null : asDay(row.as_known_on),
    madeBy: asId<PersonId>(row.made_by),
    madeAt: row.made_at,
    endsAt: row.ends_at,
  };
}
