/** How this farm itself does a job, where jobs.csv says so. */
import type { Farm, JobKind, OwnJob } from '@leywright/book';
import type { CropBook } from '../plan/inputs.ts';

/** The farm's own row for a job of a plant: its own, else that of the crop it is based on, else the one for all. Null: as usual. */
export function ownWay(
  farm: Farm,
  job: JobKind,
  plant: { readonly what: string; readonly crops: CropBook } | null,
): OwnJob | null {
  const rows = farm.ownJobs.filter((row) => row.job === job);
  if (rows.length === 0) return null;
  const ids = plant === null ? [] : plant.crops.idsOf(plant.what);
  return [...ids, null].map((id) => rows.find((row) => row.what === id)).find((row) => row !== undefined) ?? null;
}

/** Jobs that few farms do: only where jobs.csv asks for them. */
export const onlyWhenSaid: readonly JobKind[] = ['lay-mulch', 'brush', 'irrigate'];
