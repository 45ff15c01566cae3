/** Steps from an empty database to today's, numbered from 1 without gaps. A step that was ever published is never edited. */
import { type Kysely, sql } from 'kysely';
import { createPeople } from './create-people.ts';
import type { StoreTables } from './tables.ts';

export interface Migration {
  readonly number: number;
  readonly name: string;
  readonly up: (db: Kysely<StoreTables>, database: Database) => Promise<void>;
}

export type Database = 'sqlite' | 'postgres';

export const migrations: readonly Migration[] = [
  { number: 1, name: 'farms and their books', up: createBooks },
  { number: 2, name: 'people who sign in, and households', up: createPeople },
];

/** The number of the newest step this program knows. */
export const newestMigration = migrations.length;

/** Any number, always the same: the lock that says somebody is bringing the database up. */
const MIGRATING = 4517;

export type Migrated = { readonly kind: 'current' } | { readonly kind: 'newer'; readonly found: number };

/** Brings the database up to date, all steps or none. A database from a newer program is left as it is. */
export async function migrate(db: Kysely<StoreTables>, database: Database): Promise<Migrated> {
  return db.transaction().execute(async (step) => {
    // Two servers that start at once bring it up one after the other. SQLite's lock is held already.
    if (database === 'postgres') await sql`select pg_advisory_xact_lock(${MIGRATING})`.execute(step);
    await step.schema
      .createTable('migrations')
      .ifNotExists()
      .addColumn('number', 'integer', (column) => column.primaryKey())
      .addColumn('name', 'text', (column) => column.notNull())
      .execute();
    const { done } = await step
      .selectFrom('migrations')
      .select(({ fn }) => fn.max('number').as('done'))
      .executeTakeFirstOrThrow();
    const found = Number(done ?? 0);
    if (found > newestMigration) return { kind: 'newer', found };
    for (const migration of migrations.slice(found)) {
      await migration.up(step, database);
      await step.insertInto('migrations').values({ number: migration.number, name: migration.name }).execute();
    }
    return { kind: 'current' };
  });
}

async function createBooks(db: Kysely<StoreTables>, database: Database): Promise<void> {
  await db.schema
    .createTable('farms')
    .addColumn('farm_id', 'text', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('is_sample', 'integer', (column) => column.notNull())
    .addColumn('created_at', 'text', (column) => column.notNull())
    .execute();
  await db.schema
    .createTable('entries')
    .addColumn('farm_id', 'text', (column) => column.notNull().references('farms.farm_id'))
    .addColumn('seq', 'integer', (column) => column.notNull())
    .addColumn('entry_id', 'text', (column) => column.notNull())
    .addColumn('received_at', 'text', (column) => column.notNull())
    .addColumn('salt', 'text', (column) => column.notNull())
    .addColumn('body_digest', 'text', (column) => column.notNull())
    .addColumn('hash', 'text', (column) => column.notNull())
    .addColumn('envelope', 'text', (column) => column.notNull())
    .addColumn('body', 'text')
    .addPrimaryKeyConstraint('entries_by_seq', ['farm_id', 'seq'])
    .addUniqueConstraint('entries_by_id', ['farm_id', 'entry_id'])
    .execute();
  await (database === 'sqlite' ? guardEntries(db) : guardEntriesInPostgres(db));
}

/** The book is append-only in the database itself, whatever program holds the file. Only a body (with its salt) may be taken away. */
async function guardEntries(db: Kysely<StoreTables>): Promise<void> {
  await sql`
    create trigger entries_stay before delete on entries
    begin select raise(abort, 'an entry of the book is never taken out'); end`.execute(db);
  await sql`
    create trigger entries_are_not_changed before update on entries
    when not (new.body is null and new.salt = '' and new.farm_id = old.farm_id and new.seq = old.seq and new.entry_id = old.entry_id
      and new.received_at = old.received_at and new.body_digest = old.body_digest and new.hash = old.hash and new.envelope = old.envelope)
    begin select raise(abort, 'an entry of the book is never changed'); end`.execute(db);
}

async function guardEntriesInPostgres(db: Kysely<StoreTables>): Promise<void> {
  await sql`
    create function refuse_entries_taken_out() returns trigger language plpgsql as $$
    begin raise exception 'an entry of the book is never taken out'; end $$`.execute(db);
  await sql`
    create function refuse_entries_changed() returns trigger language plpgsql as $$
    begin raise exception 'an entry of the book is never changed'; end $$`.execute(db);
  await sql`
    create trigger entries_stay before delete on entries for each row execute function refuse_entries_taken_out()`.execute(
    db,
  );
  await sql`
    create trigger entries_are_not_emptied before truncate on entries execute function refuse_entries_taken_out()`.execute(
    db,
  );
  await sql`
    create trigger entries_are_not_changed before update on entries for each row
    when (not (new.body is null and new.salt = '' and new.farm_id = old.farm_id and new.seq = old.seq and new.entry_id = old.entry_id
      and new.received_at = old.received_at and new.body_digest = old.body_digest and new.hash = old.hash and new.envelope = old.envelope))
    execute function refuse_entries_changed()`.execute(db);
}
