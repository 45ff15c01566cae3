/** Puts the sample farm into a store that has no farm yet. */
import { readFarmFolder } from '@leywright/book';
import { knownNames } from '@leywright/planner';
import type { Desk } from '../app/desk.ts';
import { sampleFolder } from '../disk/project-folders.ts';
import { readFarmFiles } from '../disk/read-folder.ts';
import { foundFromFolder } from './found.ts';

/** A sentence when it could not; null when there is a farm. */
export async function openSample(desk: Desk): Promise<string | null> {
  if ((await desk.store.farms()).length > 0) return null;
  const folder = sampleFolder();
  const read = folder === null ? null : await readFarmFiles(folder);
  if (read === null || read.kind !== 'folder') return 'The sample farm is not in this copy: there is no demo folder.';
  const founding = await foundFromFolder(desk, readFarmFolder(read.files, knownNames()));
  return founding.kind === 'founded'
    ? null
    : `The sample farm cannot be opened: ${founding.problems[0]?.sentence ?? 'it has problems'}`;
}
