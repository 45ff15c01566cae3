/** Farms and their books, kept so that what was acknowledged is not lost. */
export { openStore } from './open-store.ts';
export type {
  Account,
  AccountChange,
  Household,
  HouseholdPerson,
  Invitation,
  NewAccount,
  SecondFactor,
  Session,
} from './people/seam.ts';
export type { Appended, Founded, NewFarm, Opened, Receipt, Store, StoredFarm, StoreProblem } from './store.ts';
export { StoreTrouble, type StoreTroubleCode, storeTroubles } from './trouble.ts';
