/** Browsers that are signed in. */
import { asId, type FarmId, type PersonId } from '@leywright/measures';
import type { Kysely, Selectable } from 'kysely';
import type { SessionsTable } from '../schema/people-tables.ts';
import type { StoreTables } from '../schema/tables.ts';
import type { Session, SessionStore } from './seam.ts';

export function sessionsOver(db: Kysely<StoreTables>): SessionStore {
  const rows = (farm: FarmId) => db.selectFrom('sessions').selectAll().where('farm_id', '=', farm);
  return {
    addSession: async (session) => {
      await db.insertInto('sessions').values(rowOfSession(session)).execute();
    },
    session: async (farm, tokenHash) => {
      const row = await rows(farm).where('token_hash', '=', tokenHash).executeTakeFirst();
      return row === undefined ? null : sessionOfRow(row);
    },
    sessions: async (farm, person) =>
      (await rows(farm).where('person_id', '=', person).orderBy('seen_at', 'desc').orderBy('session_id').execute()).map(
        sessionOfRow,
      ),
    seen: async (farm, tokenHash, at) => {
      await db
        .updateTable('sessions')
        .set({ seen_at: at })
        .where('farm_id', '=', farm)
        .where('token_hash', '=', tokenHash)
        .execute();
    },
    endSession: async (farm, person, id) => {
      const gone = await db
        .deleteFrom('sessions')
        .where('farm_id', '=', farm)
        .where('person_id', '=', person)
        .where('session_id', '=', id)
        .executeTakeFirst();
      return gone.numDeletedRows > 0n;
    },
    endSessions: async (farm, person, except) => {
      await db
        .deleteFrom('sessions')
        .where('farm_id', '=', farm)
        .where('person_id', '=', person)
        .where('session_id', '<>', except ?? '')
        .execute();
    },
    dropEnded: async (farm, before) => {
      await db.deleteFrom('sessions').where('farm_id', '=', farm).where('ends_at', '<', before).execute();
      await db.deleteFrom('invitations').where('farm_id', '=', farm).where('ends_at', '<', before).execute();
    },
  };
}

function rowOfSession(session: Session): SessionsTable {
  return {
    farm_id: session.farm,
    token_hash: session.tokenHash,
    session_id: session.id,
    person_id: session.person,
    made_at: session.madeAt,
    seen_at: session.seenAt,
    ends_at: session.endsAt,
    device: session.device,
  };
}

function sessionOfRow(row: Selectable<SessionsTable>): Session {
  return {
    farm: asId<FarmId>(row.farm_id),
    tokenHash: row.token_hash,
    id: row.session_id,
    person: asId<PersonId>(row.person_id),
    madeAt: row.made_at,
    seenAt: row.seen_at,
    endsAt: row.ends_at,
    device: row.device,
  };
}
