/** Steps from an empty database to today's, numbered from 1 without gaps. A step that was ever published is never edited. */
import { type Kysely, sql } from 'kysely';
import type { StoreTables } from './tables.ts';

export interface Migration {
  readonly number: number;
  readonly name: string;
  readonly up: (db: Kysely<StoreTables>) => Promise<void>;
}

export const migrations: readonly Migration[] = [{ number: 1, name: 'farms and their books', up: createBooks }];

/** The number of the newest step this program knows. */
export const newestMigration = migrations.length;

export type Migrated = { readonly kind: 'current' } | { readonly kind: 'newer'; readonly found: number };

/** Brings the database up to date, all steps or none. A database from a newer program is left as it is. */
export async function migrate(db: Kysely<StoreTables>): Promise<Migrated> {
  await db.schema
    .createTable('migrations')
    .ifNotExists()
    .addColumn('number', 'integer', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .execute();
  return db.transaction().execute(async (step) => {
    const { done } = await step
      .selectFrom('migrations')
      .select(({ fn }) => fn.max('number').as('done'))
      .executeTakeFirstOrThrow();
    const found = Number(done ?? 0);
    if (found > newestMigration) return { kind: 'newer', found };
    for (const migration of migrations.slice(found)) {
      await migration.up(step);
      await step.insertInto('migrations').values({ number: migration.number, name: migration.name }).execute();
    }
    return { kind: 'current' };
  });
}

async function createBooks(db: Kysely<StoreTables>): Promise<void> {
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
  await guardEntries(db);
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
