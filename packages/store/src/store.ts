/** The seam: what a store of farms and their books can do, whichever database is under it. `storeCases` in the tests is its law. */
import type { Entry, ReceivedEntry } from '@leywright/book';
import type { EntryId, FarmId } from '@leywright/measures';
import type { AccountStore, HouseholdStore, InvitationStore, SessionStore } from './people/seam.ts';
import type { StoreTroubleCode } from './trouble.ts';

export interface StoredFarm {
  readonly id: FarmId;
  readonly name: string;
  readonly sample: boolean;
  /** UTC instant, ISO 8601. */
  readonly createdAt: string;
  /** Entries in its book; the last entry has this `seq`. */
  readonly lastSeq: number;
}

/** What the book adds on receipt that is not in the entry: the server's instant, and a fresh secret for each body's digest. */
export interface Receipt {
  readonly receivedAt: string;
  readonly newSalt: () => string;
}

export interface NewFarm {
  readonly id: FarmId;
  readonly name: string;
  readonly sample: boolean;
  /** A book that came with the farm: kept with its seq, receivedAt and hash. */
  readonly book: readonly ReceivedEntry[];
  /** Entries that follow it. */
  readonly entries: readonly Entry[];
}

export type Founded = { readonly kind: 'founded'; readonly farm: StoredFarm } | { readonly kind: 'id-taken' };

export type Appended =
  /** `already` were received before, word for word; sending them again is no fault. */
  | {
      readonly kind: 'appended';
      readonly received: readonly ReceivedEntry[];
      readonly already: readonly EntryId[];
      readonly lastSeq: number;
    }
  /** Nothing was written: these ids stand in the book with other contents, or belong to another farm. */
  | { readonly kind: 'refused'; readonly differing: readonly EntryId[]; readonly ofOtherFarm: readonly EntryId[] }
  | { readonly kind: 'no-such-farm' };

export interface Store {
  /** Who may sign in. */
  readonly people: AccountStore & SessionStore & InvitationStore;
  /** Apart from the book, so that they can be erased. */
  readonly households: HouseholdStore;
  farms(): Promise<readonly StoredFarm[]>;
  farm(id: FarmId): Promise<StoredFarm | null>;
  /** Makes the farm and its whole book, or nothing. */
  foundFarm(farm: NewFarm, receipt: Receipt): Promise<Founded>;
  /** Chains and writes the entries in the order given, all or none. Idempotent by id. */
  appendEntries(farm: FarmId, entries: readonly Entry[], receipt: Receipt): Promise<Appended>;
  /** Entries with a greater `seq`, in order, at most `limit`. */
  entriesAfter(farm: FarmId, seq: number, limit: number): Promise<readonly ReceivedEntry[]>;
  /** Those of these entries that are in the book. */
  entriesById(farm: FarmId, ids: readonly EntryId[]): Promise<readonly ReceivedEntry[]>;
  /** Copies the whole store to a new file while it is in use; the copy is checked and on the disk when this resolves. */
  backupTo(path: string): Promise<void>;
  close(): Promise<void>;
}

/** Why a store cannot be used, for the words of whoever opens it. */
export type StoreProblem =
  | { readonly code: 'newer-database'; readonly found: number; readonly known: number }
  /** The database is set to answer before its disk has what was written; `found` is the setting. */
  | { readonly code: 'forgetful-database'; readonly found: string }
  | { readonly code: StoreTroubleCode; readonly found: string }
  | { readonly code: 'not-a-database' }
  | { readonly code: 'no-such-store'; readonly found: string }
  | { readonly code: 'cannot-open'; readonly found: string };

export type Opened =
  | { readonly kind: 'open'; readonly store: Store }
  | { readonly kind: 'refused'; readonly problem: StoreProblem };
