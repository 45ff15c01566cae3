/** Those who may sign in, and how often they tried. */
import type { Role } from '@leywright/book';
import { asDay, asId, type FarmId, type PersonId } from '@leywright/measures';
import type { Kysely, Selectable, Updateable } from 'kysely';
import type { AccountsTable } from '../schema/people-tables.ts';
import type { StoreTables } from '../schema/tables.ts';
import type { Account, AccountChange, AccountStore, NewAccount } from './seam.ts';

export function accountsOver(db: Kysely<StoreTables>): AccountStore {
  const rows = () => db.selectFrom('accounts').selectAll().orderBy('farm_id').orderBy('person_id');
  return {
    everyone: async () => (await rows().execute()).map(accountOfRow),
    accounts: async (farm) => (await rows().where('farm_id', '=', farm).execute()).map(accountOfRow),
    account: async (farm, person) => {
      const row = await rows().where('farm_id', '=', farm).where('person_id', '=', person).executeTakeFirst();
      return row === undefined ? null : accountOfRow(row);
    },
    addAccount: (account) => db.transaction().execute((step) => addAccount(step, account)),
    changeAccount: async (farm, person, change) => {
      const columns = columnsOf(change);
      if (Object.keys(columns).length === 0) return;
      await db
        .updateTable('accounts')
        .set(columns)
        .where('farm_id', '=', farm)
        .where('person_id', '=', person)
        .execute();
    },
    countFailure: async (farm, person) => {
      const row = await db
        .updateTable('accounts')
        .set((row) => ({ failures: row('failures', '+', 1) }))
        .where('farm_id', '=', farm)
        .where('person_id', '=', person)
        .returning('failures')
        .executeTakeFirst();
      return Number(row?.failures ?? 0);
    },
    takeStep: async (farm, person, step) => {
      const changed = await db
        .updateTable('accounts')
        .set({ factor_last_step: step })
        .where('farm_id', '=', farm)
        .where('person_id', '=', person)
        .where('factor_last_step', '<', step)
        .executeTakeFirst();
      return changed.numUpdatedRows > 0n;
    },
    ...recoveryCodesOver(db),
  };
}

function recoveryCodesOver(
  db: Kysely<StoreTables>,
): Pick<AccountStore, 'putRecoveryCodes' | 'recoveryCodesLeft' | 'takeRecoveryCode'> {
  return {
    putRecoveryCodes: (farm, person, hashes) =>
      db.transaction().execute(async (step) => {
        await step.deleteFrom('recovery_codes').where('farm_id', '=', farm).where('person_id', '=', person).execute();
        const rows = hashes.map((code_hash) => ({ farm_id: farm, person_id: person, code_hash }));
        if (rows.length > 0) await step.insertInto('recovery_codes').values(rows).execute();
      }),
    recoveryCodesLeft: async (farm, person) =>
      (
        await db
          .selectFrom('recovery_codes')
          .select('code_hash')
          .where('farm_id', '=', farm)
          .where('person_id', '=', person)
          .execute()
      ).length,
    takeRecoveryCode: async (farm, person, hash) => {
      const gone = await db
        .deleteFrom('recovery_codes')
        .where('farm_id', '=', farm)
        .where('person_id', '=', person)
        .where('code_hash', '=', hash)
        .executeTakeFirst();
      return gone.numDeletedRows > 0n;
    },
  };
}

/** Inside a transaction of the caller. */
export async function addAccount(step: Kysely<StoreTables>, account: NewAccount): Promise<'added' | 'id-taken'> {
  const taken = await step
    .selectFrom('accounts')
    .select('person_id')
    .where('farm_id', '=', account.farm)
    .where('person_id', '=', account.person)
    .executeTakeFirst();
  if (taken !== undefined) return 'id-taken';
  await step
    .insertInto('accounts')
    .values({
      farm_id: account.farm,
      person_id: account.person,
      name: account.name,
      role: account.role,
      as_known_on: account.asKnownOn,
      password_hash: account.passwordHash,
      factor_secret: null,
      factor_is_on: 0,
      factor_last_step: 0,
      failures: 0,
      wait_until: null,
      made_at: account.madeAt,
      ended_at: null,
    })
    .execute();
  return 'added';
}

function columnsOf({ secondFactor, ...change }: AccountChange): Updateable<AccountsTable> {
  return {
    ...(change.name === undefined ? {} : { name: change.name }),
    ...(change.role === undefined ? {} : { role: change.role }),
    ...(change.asKnownOn === undefined ? {} : { as_known_on: change.asKnownOn }),
    ...(change.passwordHash === undefined ? {} : { password_hash: change.passwordHash }),
    ...(secondFactor === undefined
      ? {}
      : { factor_secret: secondFactor?.secret ?? null, factor_is_on: secondFactor?.isOn === true ? 1 : 0 }),
    ...(change.failures === undefined ? {} : { failures: change.failures }),
    ...(change.waitUntil === undefined ? {} : { wait_until: change.waitUntil }),
    ...(change.endedAt === undefined ? {} : { ended_at: change.endedAt }),
  };
}

function accountOfRow(row: Selectable<AccountsTable>): Account {
  return {
    farm: asId<FarmId>(row.farm_id),
    person: asId<PersonId>(row.person_id),
    name: row.name,
    role: row.role as Role,
    asKnownOn: row.as_known_on === null ? null : asDay(row.as_known_on),
    passwordHash: row.password_hash,
    secondFactor:
      row.factor_secret === null ? null : { secret: row.factor_secret, isOn: Number(row.factor_is_on) === 1 },
    failures: Number(row.failures),
    waitUntil: row.wait_until,
    madeAt: row.made_at,
    endedAt: row.ended_at,
  };
}
