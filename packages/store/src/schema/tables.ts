import type { PeopleTables } from './people-tables.ts';

/** Tables as Kysely sees them. Every key begins with `farm_id`: no question in the request path crosses farms. */

export interface FarmsTable {
  readonly farm_id: string;
  readonly name: string;
  /** 1 for the invented sample farm. */
  readonly is_sample: number;
  readonly created_at: string;
}

export interface EntriesTable {
  readonly farm_id: string;
  /** 1, 2, 3 … within the farm, without gaps. */
  readonly seq: number;
  readonly entry_id: string;
  readonly received_at: string;
  /** Empty once the body is withdrawn, so that the digest no longer gives a short body away. */
  readonly salt: string;
  readonly body_digest: string;
  readonly hash: string;
  /** The entry as JSON, without its body. */
  readonly envelope: string;
  /** JSON; null when it was withdrawn. */
  readonly body: string | null;
}

export interface MigrationsTable {
  readonly number: number;
  readonly name: string;
}

export interface StoreTables extends PeopleTables {
  readonly farms: FarmsTable;
  readonly entries: EntriesTable;
  readonly migrations: MigrationsTable;
}
