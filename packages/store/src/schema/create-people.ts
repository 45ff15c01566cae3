/** The step that adds people who sign in and households. As any step that was ever published, it is never edited. */
import type { ColumnDefinitionBuilder, Kysely } from 'kysely';

const needed = (column: ColumnDefinitionBuilder) => column.notNull();
const ofFarm = (column: ColumnDefinitionBuilder) => column.notNull().references('farms.farm_id');

export async function createPeople<T>(db: Kysely<T>): Promise<void> {
  await createAccounts(db);
  await createSessions(db);
  await createHouseholds(db);
}

async function createAccounts<T>(db: Kysely<T>): Promise<void> {
  await db.schema
    .createTable('accounts')
    .addColumn('farm_id', 'text', ofFarm)
    .addColumn('person_id', 'text', needed)
    .addColumn('name', 'text', needed)
    .addColumn('role', 'text', needed)
    .addColumn('as_known_on', 'text')
    .addColumn('password_hash', 'text', needed)
    .addColumn('factor_secret', 'text')
    .addColumn('factor_is_on', 'integer', needed)
    .addColumn('factor_last_step', 'bigint', needed)
    .addColumn('failures', 'integer', needed)
    .addColumn('wait_until', 'text')
    .addColumn('made_at', 'text', needed)
    .addColumn('ended_at', 'text')
    .addPrimaryKeyConstraint('accounts_by_person', ['farm_id', 'person_id'])
    .execute();
  await db.schema
    .createTable('recovery_codes')
    .addColumn('farm_id', 'text', ofFarm)
    .addColumn('person_id', 'text', needed)
    .addColumn('code_hash', 'text', needed)
    .addPrimaryKeyConstraint('recovery_codes_by_person', ['farm_id', 'person_id', 'code_hash'])
    .execute();
}

async function createSessions<T>(db: Kysely<T>): Promise<void> {
  await db.schema
    .createTable('sessions')
    .addColumn('farm_id', 'text', ofFarm)
    .addColumn('token_hash', 'text', needed)
    .addColumn('session_id', 'text', needed)
    .addColumn('person_id', 'text', needed)
    .addColumn('made_at', 'text', needed)
    .addColumn('seen_at', 'text', needed)
    .addColumn('ends_at', 'text', needed)
    .addColumn('device', 'text', needed)
    .addPrimaryKeyConstraint('sessions_by_token', ['farm_id', 'token_hash'])
    .addUniqueConstraint('sessions_by_id', ['farm_id', 'session_id'])
    .execute();
  await db.schema
    .createTable('invitations')
    .addColumn('farm_id', 'text', ofFarm)
    .addColumn('token_hash', 'text', needed)
    .addColumn('invitation_id', 'text', needed)
    .addColumn('person_id', 'text', needed)
    .addColumn('name', 'text', needed)
    .addColumn('role', 'text', needed)
    .addColumn('as_known_on', 'text')
    .addColumn('made_by', 'text', needed)
    .addColumn('made_at', 'text', needed)
    .addColumn('ends_at', 'text', needed)
    .addPrimaryKeyConstraint('invitations_by_token', ['farm_id', 'token_hash'])
    .addUniqueConstraint('invitations_by_id', ['farm_id', 'invitation_id'])
    .execute();
}

async function createHouseholds<T>(db: Kysely<T>): Promise<void> {
  await db.schema
    .createTable('households')
    .addColumn('farm_id', 'text', ofFarm)
    .addColumn('household_id', 'text', needed)
    .addColumn('size_id', 'text', needed)
    .addColumn('drop_name', 'text')
    .addColumn('from_day', 'text', needed)
    .addColumn('to_day', 'text')
    .addColumn('erased_at', 'text')
    .addPrimaryKeyConstraint('households_by_id', ['farm_id', 'household_id'])
    .execute();
  await db.schema
    .createTable('household_persons')
    .addColumn('farm_id', 'text', ofFarm)
    .addColumn('household_id', 'text', needed)
    .addColumn('name', 'text', needed)
    .addColumn('email', 'text')
    .addColumn('phone', 'text')
    .addColumn('address', 'text')
    .addColumn('without_json', 'text', needed)
    .addColumn('note', 'text')
    .addPrimaryKeyConstraint('household_persons_by_id', ['farm_id', 'household_id'])
    .execute();
}
