import type { Kysely } from 'kysely';
import type { StoreTables } from '../schema/tables.ts';
import { accountsOver } from './accounts.ts';
import { invitationsOver } from './invitations.ts';
import type { AccountStore, InvitationStore, SessionStore } from './seam.ts';
import { sessionsOver } from './sessions.ts';

/** All about those who may sign in. */
export function peopleOver(db: Kysely<StoreTables>): AccountStore & SessionStore & InvitationStore {
  return { ...accountsOver(db), ...sessionsOver(db), ...invitationsOver(db) };
}
