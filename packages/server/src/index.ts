/** The server's front door. What listens is loaded only when it is started, so that a command which needs the disk alone stays quick. */
export { readServeArguments, type ServeWish, usualPort } from './app/arguments.ts';
export { type FarmFiles, readFarmFiles } from './disk/read-folder.ts';
export { farmOfFolder } from './farm/tables-as-entries.ts';
export { highsKeeper } from './solver/highs-keeper.ts';
export { type HighsSolver, highsSolver } from './solver/highs-solver.ts';
export type { Started } from './start.ts';

export async function loadServer() {
  return import('./start.ts');
}

export async function loadSheets() {
  return import('./sheets/sheets.ts');
}

export async function loadPackSheets() {
  return { ...(await import('./sheets/pack-csv.ts')), ...(await import('./sheets/pack-pdf.ts')) };
}

export async function loadFounding() {
  return import('./farm/found.ts');
}

export async function loadPeople() {
  return { ...(await import('./people/at-the-machine.ts')), ...(await import('./households/keeping.ts')) };
}
