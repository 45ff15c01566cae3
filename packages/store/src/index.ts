/** Farms and their books, kept so that what was acknowledged is not lost. */
export { type BackedUpFarm, type BackupProblem, type Inspected, inspectBackup } from './backup/inspect.ts';
export { backupName, backupsToTakeAway } from './backup/keep.ts';
export type { Restored } from './backup/restore.ts';
export { restoreStore } from './backup/restore-store.ts';
export { openStore, storeFile } from './open-store.ts';
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
