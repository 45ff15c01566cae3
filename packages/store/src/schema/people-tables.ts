/** Tables of those who may sign in, and of households. Both lie apart from the book: what stands here can be changed and erased. */

export interface AccountsTable {
  readonly farm_id: string;
  readonly person_id: string;
  readonly name: string;
  readonly role: string;
  /** For lookers: they see what was known by the end of this day. */
  readonly as_known_on: string | null;
  readonly password_hash: string;
  /** Secret of the second factor, base32; null = none. */
  readonly factor_secret: string | null;
  /** 1 once a code of it was given. */
  readonly factor_is_on: number;
  /** Time step of the last code taken, so that no code is taken twice. */
  readonly factor_last_step: number;
  readonly failures: number;
  /** UTC instant until which no sign-in is tried. */
  readonly wait_until: string | null;
  readonly made_at: string;
  /** UTC instant from which this person may no longer sign in. */
  readonly ended_at: string | null;
}

export interface RecoveryCodesTable {
  readonly farm_id: string;
  readonly person_id: string;
  readonly code_hash: string;
}

export interface SessionsTable {
  readonly farm_id: string;
  readonly token_hash: string;
  /** Name of the session for lists; opens nothing. */
  readonly session_id: string;
  readonly person_id: string;
  readonly made_at: string;
  readonly seen_at: string;
  readonly ends_at: string;
  /** What the browser calls itself, shortened. */
  readonly device: string;
}

export interface InvitationsTable {
  readonly farm_id: string;
  readonly token_hash: string;
  readonly invitation_id: string;
  readonly person_id: string;
  readonly name: string;
  readonly role: string;
  readonly as_known_on: string | null;
  readonly made_by: string;
  readonly made_at: string;
  readonly ends_at: string;
}

/** What counts, without a person: it stays when the household's personal facts are erased. */
export interface HouseholdsTable {
  readonly farm_id: string;
  readonly household_id: string;
  readonly size_id: string;
  readonly drop_name: string | null;
  readonly from_day: string;
  /** Last day with a box; null = still a household of ours. */
  readonly to_day: string | null;
  readonly erased_at: string | null;
}

export interface HouseholdPersonsTable {
  readonly farm_id: string;
  readonly household_id: string;
  readonly name: string;
  readonly email: string | null;
  readonly phone: string | null;
  readonly address: string | null;
  /** JSON list of what they will not have. */
  readonly without_json: string;
  readonly note: string | null;
}

export interface PeopleTables {
  readonly accounts: AccountsTable;
  readonly recovery_codes: RecoveryCodesTable;
  readonly sessions: SessionsTable;
  readonly invitations: InvitationsTable;
  readonly households: HouseholdsTable;
  readonly household_persons: HouseholdPersonsTable;
}
