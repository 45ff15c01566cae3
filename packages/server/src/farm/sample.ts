/** Puts the sample farm into a store that has no farm yet. */
import { readFarmFolder } from '@leywright/book';
import { knownNames } from '@leywright/planner';
import { refusal } from '../app/answer.ts';
import type { Desk } from '../app/desk.ts';
import { sampleFolder } from '../disk/project-folders.ts';
import { readFarmFiles } from '../disk/read-folder.ts';
import { type Founding, foundFromFolder } from './found.ts';

/** A sentence when it could not; null when there is a farm. */
export async function openSample(desk: Desk): Promise<string | null> {
  if ((await desk.store.farms()).length > 0) return null;
  const founding = await foundSample(desk);
  return founding.kind === 'founded'
    ? null
    : `The sample farm cannot be opened: ${founding.problems[0]?.sentence ?? 'it has problems'}`;
}

/** The sample farm of this store: the one that is there, or a new one. */
export async function foundSample(desk: Desk): Promise<Founding> {
  const there = (await desk.store.farms()).find((farm) => farm.sample);
  if (there !== undefined) return { kind: 'founded', farm: there, assumed: [], problems: [] };
  const folder = sampleFolder();
  const read = folder === null ? null : await readFarmFiles(folder);
  if (read === null || read.kind !== 'folder')
    return { kind: 'refused', status: 422, problems: [refusal('no-sample')] };
  return foundFromFolder(desk, readFarmFolder(read.files, knownNames()));
}
