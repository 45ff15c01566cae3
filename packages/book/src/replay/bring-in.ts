/** Entries about what came off the ground and what was done: harvests, weighings, jobs. */
import type { CropId, PlotId, StoreId } from '@leywright/measures';
import type { EntryBody } from '../entry/entry.ts';
import type { InForce } from './amendments.ts';
import type { Draft } from './draft.ts';
import { bookFinding } from './findings.ts';
import { standNamed } from './grow.ts';

export type BringingIn = Extract<EntryBody, { kind: 'harvest' | 'weighing' | 'job-done' }>;

export function bringIn(draft: Draft, body: BringingIn, record: InForce): void {
  const { id: entry, doneOn: on } = record.entry;
  switch (body.kind) {
    case 'harvest':
      harvest(draft, body, record);
      return;
    case 'weighing':
      draft.weighings.set(entry, {
        entry,
        crop: body.crop as CropId,
        store: body.store as StoreId | null,
        on,
        kg: body.kg,
      });
      return;
    case 'job-done':
      draft.jobsDone.set(entry, { entry, job: body.job, on, share: body.share, hours: body.hours });
  }
}

/** A harvest counts even when its stand is not known: the kilos are there. */
function harvest(
  draft: Draft,
  body: Extract<BringingIn, { kind: 'harvest' }>,
  { entry: { id, doneOn } }: InForce,
): void {
  const stand = body.stand === null ? null : standNamed(draft, body.stand);
  if (body.stand !== null && stand === null)
    draft.findings.push(
      bookFinding('record-without-stand', [id], {
        plot: body.plot,
        stand: body.stand,
        figures: { on: doneOn, what: body.crop, standingThere: null },
      }),
    );
  const { crop, grossKg, count, unit, gradedOutShare, into, store } = body;
  draft.harvests.set(id, {
    entry: id,
    crop: crop as CropId,
    plot: (body.plot as PlotId | null) ?? stand?.plot ?? null,
    stand: body.stand,
    on: doneOn,
    grossKg,
    count,
    unit,
    gradedOutShare,
    into,
    store: store as StoreId | null,
  });
}
