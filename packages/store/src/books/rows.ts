/** Rows of the database to what the rest of the program knows, and back. */
import type { Entry, EntryBody, ReceivedEntry } from '@leywright/book';
import { asId, type EntryId, type FarmId } from '@leywright/measures';
import type { Kysely, Selectable } from 'kysely';
import type { EntriesTable, StoreTables } from '../schema/tables.ts';
import type { StoredFarm } from '../store.ts';

export type Envelope = Omit<Entry, 'body'>;

export function storedFarms(db: Kysely<StoreTables>) {
  return db
    .selectFrom('farms')
    .select(['farms.farm_id', 'farms.name', 'farms.is_sample', 'farms.created_at'])
    .select((row) =>
      row
        .selectFrom('entries')
        .select(({ fn }) => fn.max('entries.seq').as('last'))
        .whereRef('entries.farm_id', '=', 'farms.farm_id')
        .as('last_seq'),
    );
}

type FarmRow = Awaited<ReturnType<ReturnType<typeof storedFarms>['execute']>>[number];

export function farmOfRow(row: FarmRow): StoredFarm {
  return {
    id: asId<FarmId>(row.farm_id),
    name: row.name,
    sample: row.is_sample === 1,
    createdAt: row.created_at,
    lastSeq: Number(row.last_seq ?? 0),
  };
}

export function receivedOfRow(row: Selectable<EntriesTable>): ReceivedEntry {
  const body = row.body === null ? null : (JSON.parse(row.body) as EntryBody);
  const received = {
    receivedAt: row.received_at,
    seq: Number(row.seq),
    salt: row.salt,
    bodyDigest: row.body_digest,
    hash: row.hash,
  };
  return { ...(JSON.parse(row.envelope) as Envelope), body, ...received };
}

export function rowOfReceived(received: ReceivedEntry): EntriesTable {
  const { body, receivedAt, seq, salt, bodyDigest, hash, ...envelope } = received;
  return {
    farm_id: received.farm,
    seq,
    entry_id: received.id as EntryId,
    received_at: receivedAt,
    salt,
    body_digest: bodyDigest,
    hash,
    envelope: JSON.stringify(envelope),
    body: body === null ? null : JSON.stringify(body),
  };
}
