/** The seam for those who may sign in and for households, whichever database is under it. `peopleCases` in the tests is its law. */
import type { Role } from '@leywright/book';
import type { Day, FarmId, PersonId } from '@leywright/measures';

export interface SecondFactor {
  /** Base32, as an authenticator takes it. */
  readonly secret: string;
  /** Whether a code of it was given once; only then is it asked for. */
  readonly isOn: boolean;
}

/** Someone who may sign in to one farm. Instants are UTC, ISO 8601. */
export interface Account {
  readonly farm: FarmId;
  readonly person: PersonId;
  readonly name: string;
  readonly role: Role;
  /** For a looker: what was known by the end of this day. */
  readonly asKnownOn: Day | null;
  readonly passwordHash: string;
  readonly secondFactor: SecondFactor | null;
  readonly failures: number;
  readonly waitUntil: string | null;
  readonly madeAt: string;
  readonly endedAt: string | null;
}

export type NewAccount = Pick<Account, 'farm' | 'person' | 'name' | 'role' | 'asKnownOn' | 'passwordHash' | 'madeAt'>;
export type AccountChange = Partial<Omit<Account, 'farm' | 'person' | 'madeAt'>>;

/** A browser that is signed in. Its token is known to the browser alone; here lies its hash. */
export interface Session {
  readonly farm: FarmId;
  readonly tokenHash: string;
  readonly id: string;
  readonly person: PersonId;
  readonly madeAt: string;
  readonly seenAt: string;
  readonly endsAt: string;
  readonly device: string;
}

/** A link that makes one person's account, or gives them a new password, once. */
export interface Invitation {
  readonly farm: FarmId;
  readonly tokenHash: string;
  readonly id: string;
  readonly person: PersonId;
  readonly name: string;
  readonly role: Role;
  readonly asKnownOn: Day | null;
  readonly madeBy: PersonId;
  readonly madeAt: string;
  readonly endsAt: string;
}

export interface AccountStore {
  /** Everyone who may or might sign in anywhere here: asked once, when the server starts. */
  everyone(): Promise<readonly Account[]>;
  accounts(farm: FarmId): Promise<readonly Account[]>;
  account(farm: FarmId, person: PersonId): Promise<Account | null>;
  addAccount(account: NewAccount): Promise<'added' | 'id-taken'>;
  changeAccount(farm: FarmId, person: PersonId, change: AccountChange): Promise<void>;
  /** Counts one more failure and answers how many there are now, in one step. */
  countFailure(farm: FarmId, person: PersonId): Promise<number>;
  /** True once for each time step, and for none before the last one taken. */
  takeStep(farm: FarmId, person: PersonId, step: number): Promise<boolean>;
  /** Puts these in the place of all recovery codes there were. */
  putRecoveryCodes(farm: FarmId, person: PersonId, hashes: readonly string[]): Promise<void>;
  recoveryCodesLeft(farm: FarmId, person: PersonId): Promise<number>;
  /** True once for each code. */
  takeRecoveryCode(farm: FarmId, person: PersonId, hash: string): Promise<boolean>;
}

export interface SessionStore {
  addSession(session: Session): Promise<void>;
  session(farm: FarmId, tokenHash: string): Promise<Session | null>;
  sessions(farm: FarmId, person: PersonId): Promise<readonly Session[]>;
  seen(farm: FarmId, tokenHash: string, at: string): Promise<void>;
  /** False when the person has no such session. */
  endSession(farm: FarmId, person: PersonId, id: string): Promise<boolean>;
  /** Ends all sessions of a person but the one named. */
  endSessions(farm: FarmId, person: PersonId, except?: string): Promise<void>;
  /** Takes away sessions and invitations that ended before an instant. */
  dropEnded(farm: FarmId, before: string): Promise<void>;
}

export interface InvitationStore {
  addInvitation(invitation: Invitation): Promise<void>;
  invitation(farm: FarmId, tokenHash: string): Promise<Invitation | null>;
  invitations(farm: FarmId): Promise<readonly Invitation[]>;
  dropInvitation(farm: FarmId, id: string): Promise<boolean>;
  /**
   * Makes the account and takes the invitation away, both or neither. A person who has an account gets the new password by it, keeps role and
   * second factor, and is signed out everywhere.
   */
  acceptInvitation(invitation: Invitation, passwordHash: string, at: string): Promise<'accepted' | 'gone'>;
}

/** A household by its code, size, drop and days. `person` is null once it was erased. */
export interface Household {
  readonly id: string;
  readonly size: string;
  readonly drop: string | null;
  readonly from: Day;
  /** Last day with a box. */
  readonly to: Day | null;
  readonly erasedAt: string | null;
  readonly person: HouseholdPerson | null;
}

export interface HouseholdPerson {
  readonly name: string;
  readonly email: string | null;
  readonly phone: string | null;
  readonly address: string | null;
  /** What they will not have. It may say something of their health, so it is personal. */
  readonly without: readonly string[];
  readonly note: string | null;
}

export interface HouseholdStore {
  households(farm: FarmId): Promise<readonly Household[]>;
  household(farm: FarmId, id: string): Promise<Household | null>;
  /** Writes a new household, or over the one of this id. One that was erased stays erased: false. */
  putHousehold(farm: FarmId, household: Omit<Household, 'erasedAt'>): Promise<boolean>;
  /** Takes all personal facts away for good; code, size, drop and days stay. False when there is no such household. */
  eraseHousehold(farm: FarmId, id: string, at: string): Promise<boolean>;
  /** The same for every household whose last box was before the day. Answers how many. */
  eraseLeftBefore(farm: FarmId, day: Day, at: string): Promise<number>;
}
