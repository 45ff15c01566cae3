/** What an error of SQLite means to a person. Its words are part of its interface (`sqlite3_errstr`) and the same in both bindings. */
import { messageOf, type StoreTroubleCode } from '../trouble.ts';

const meanings: readonly (readonly [RegExp, StoreTroubleCode])[] = [
  [/disk is full/i, 'disk-full'],
  [/readonly database|read-only/i, 'read-only-store'],
  [/is locked/i, 'store-busy'],
  [/malformed|corrupt|not a database/i, 'damaged-database'],
];

export function troubleOfSqlite(error: unknown): StoreTroubleCode | null {
  const said = messageOf(error);
  return meanings.find(([words]) => words.test(said))?.[1] ?? null;
}
