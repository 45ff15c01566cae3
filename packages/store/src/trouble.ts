/** What keeps a store from writing or reading that a person can put right. Nothing was written when it is thrown. */

export const storeTroubles = [
  /** No room is left on the disk. */
  'disk-full',
  /** The disk, the file or the database may only be read. */
  'read-only-store',
  /** Another program holds the file for longer than we wait. */
  'store-busy',
  /** What is read is not what was written. */
  'damaged-database',
  /** The database cannot be reached, or does not let us in. */
  'store-unreachable',
] as const;
export type StoreTroubleCode = (typeof storeTroubles)[number];

export class StoreTrouble extends Error {
  readonly code: StoreTroubleCode;

  constructor(code: StoreTroubleCode, cause: unknown) {
    super(`${code}: ${messageOf(cause)}`, { cause });
    this.name = 'StoreTrouble';
    this.code = code;
  }
}

/** Of several tries in one (a name with two addresses), the first says enough. */
export function messageOf(error: unknown): string {
  if (error instanceof AggregateError && error.message === '') return messageOf(error.errors[0]);
  return error instanceof Error ? error.message : String(error);
}
