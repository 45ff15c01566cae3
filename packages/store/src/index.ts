/** Farms and their books, kept so that what was acknowledged is not lost. */
export { openStore } from './open-store.ts';
export type { Appended, Founded, NewFarm, Opened, Receipt, Store, StoredFarm, StoreProblem } from './store.ts';
