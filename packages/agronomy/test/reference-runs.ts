import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';

/** A folder that holds `carbon-turnover/` with the authors' own run; their files are not copied here. */
const folder = process.env['LEYWRIGHT_REFERENCE_RUNS'];

/** Why the authors' runs cannot be held against ours; null when they can. */
export const noReferenceRuns: string | null =
  folder === undefined
    ? 'LEYWRIGHT_REFERENCE_RUNS names no folder with carbon-turnover/, the published run of the authors of RothC'
    : null;

/** The text of one of the authors' files by the path a table of checks gives it; null when there is none. */
export function referenceRun(path: string): string | null {
  if (folder === undefined) return null;
  try {
    return readFileSync(join(folder, 'carbon-turnover', basename(path)), 'utf8');
  } catch {
    return null;
  }
}
