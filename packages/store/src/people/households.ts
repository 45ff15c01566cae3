/** Households: what counts in one table, who they are in another that can be emptied. Neither is in the book. */
import { asDay, type Day, type FarmId } from '@leywright/measures';
import type { Kysely } from 'kysely';
import type { StoreTables } from '../schema/tables.ts';
import type { Household, HouseholdPerson, HouseholdStore } from './seam.ts';

export function householdsOver(db: Kysely<StoreTables>, settle: () => Promise<void>): HouseholdStore {
  return {
    households: async (farm) => (await joined(db, farm).orderBy('households.household_id').execute()).map(householdOf),
    household: async (farm, id) => {
      const row = await joined(db, farm).where('households.household_id', '=', id).executeTakeFirst();
      return row === undefined ? null : householdOf(row);
    },
    putHousehold: (farm, household) => db.transaction().execute((step) => put(step, farm, household)),
    eraseHousehold: async (farm, id, at) => {
      const wasThere = await db.transaction().execute((step) => erase(step, farm, { ids: [id], at }));
      await settle();
      return wasThere === 1;
    },
    eraseLeftBefore: async (farm, day, at) => {
      const erased = await db.transaction().execute(async (step) => {
        const ids = await leftBefore(step, farm, day);
        return ids.length === 0 ? 0 : erase(step, farm, { ids, at });
      });
      if (erased > 0) await settle();
      return erased;
    },
  };
}

function joined(db: Kysely<StoreTables>, farm: FarmId) {
  return db
    .selectFrom('households')
    .leftJoin('household_persons as person', (join) =>
      join
        .onRef('person.farm_id', '=', 'households.farm_id')
        .onRef('person.household_id', '=', 'households.household_id'),
    )
    .select(['households.household_id', 'size_id', 'drop_name', 'from_day', 'to_day', 'erased_at'])
    .select(['person.name', 'person.email', 'person.phone', 'person.address', 'person.without_json', 'person.note'])
    .where('households.farm_id', '=', farm);
}

type Row = Awaited<ReturnType<ReturnType<typeof joined>['execute']>>[number];

function householdOf(row: Row): Household {
  return {
    id: row.household_id,
    size: row.size_id,
    drop: row.drop_name,
    from: asDay(row.from_day),
    to: row.to_day === null ? null : asDay(row.to_day),
    erasedAt: row.erased_at,
    person: personOf(row),
  };
}

function personOf({ name, email, phone, address, without_json, note }: Row): HouseholdPerson | null {
  if (name === null) return null;
  return { name, email, phone, address, without: JSON.parse(without_json ?? '[]') as readonly string[], note };
}

async function put(step: Kysely<StoreTables>, farm: FarmId, household: Omit<Household, 'erasedAt'>): Promise<boolean> {
  const { id, size, drop, from, to, person } = household;
  const before = await joined(step, farm).where('households.household_id', '=', id).executeTakeFirst();
  if (before !== undefined && before.erased_at !== null) return false;
  await step.deleteFrom('households').where('farm_id', '=', farm).where('household_id', '=', id).execute();
  await step.deleteFrom('household_persons').where('farm_id', '=', farm).where('household_id', '=', id).execute();
  const key = { farm_id: farm, household_id: id };
  await step
    .insertInto('households')
    .values({ ...key, size_id: size, drop_name: drop, from_day: from, to_day: to, erased_at: null })
    .execute();
  if (person === null) return true;
  const { without, ...facts } = person;
  await step
    .insertInto('household_persons')
    .values({ ...key, ...facts, without_json: JSON.stringify(without) })
    .execute();
  return true;
}

async function leftBefore(step: Kysely<StoreTables>, farm: FarmId, day: Day): Promise<readonly string[]> {
  const rows = await step
    .selectFrom('households')
    .select('household_id')
    .where('farm_id', '=', farm)
    .where('to_day', '<', day)
    .where('erased_at', 'is', null)
    .execute();
  return rows.map((row) => row.household_id);
}

/** How many there were. One that was erased before keeps its first date. */
async function erase(
  step: Kysely<StoreTables>,
  farm: FarmId,
  { ids, at }: { readonly ids: readonly string[]; readonly at: string },
): Promise<number> {
  await step.deleteFrom('household_persons').where('farm_id', '=', farm).where('household_id', 'in', ids).execute();
  await step
    .updateTable('households')
    .set({ erased_at: at })
    .where('farm_id', '=', farm)
    .where('household_id', 'in', ids)
    .where('erased_at', 'is', null)
    .execute();
  const there = await step
    .selectFrom('households')
    .select('household_id')
    .where('farm_id', '=', farm)
    .where('household_id', 'in', ids)
    .execute();
  return there.length;
}
