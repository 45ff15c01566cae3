/** Entries that describe the farm: rows set, the rotation agreed, organisms found. */
import type { CropId, Day } from '@leywright/measures';
import type { EntryBody } from '../entry/entry.ts';
import type { About } from '../farm/farm.ts';
import type { Plot } from '../farm/land.ts';
import type { BoxPromise } from '../farm/promise.ts';
import type { Rotation, Stand } from '../farm/stand.ts';
import { keyOf, type ListSubject, type RowOf } from '../farm/subjects.ts';
import type { InForce } from './amendments.ts';
import { type Draft, dropStand, putStand, tableOf } from './draft.ts';
import { bookFinding } from './findings.ts';

export type Describing = Extract<EntryBody, { kind: 'set' | 'rotation-agreed' | 'organism-found' }>;

export function isDescribing(body: EntryBody): body is Describing {
  return body.kind === 'set' || body.kind === 'rotation-agreed' || body.kind === 'organism-found';
}

export function describe(draft: Draft, body: Describing, record: InForce): void {
  switch (body.kind) {
    case 'set':
      setRow(draft, body, record.entry.doneOn);
      return;
    case 'rotation-agreed':
      agreeRotation(draft, body, record);
      return;
    case 'organism-found':
      tableOf(draft, 'marks').set(keyOf('marks', body.mark), body.mark);
  }
}

function setRow(draft: Draft, { subject, key, value }: Extract<EntryBody, { kind: 'set' }>, doneOn: Day): void {
  switch (subject) {
    case 'about':
      draft.about = (value as About | null) ?? draft.about;
      return;
    case 'rotation':
      draft.rotation = value as Rotation | null;
      return;
    case 'promise':
      draft.promise = value as BoxPromise | null;
      return;
    case 'aliases':
      draft.aliases ??= new Map(Object.entries(draft.base.aliases));
      if (value === null) draft.aliases.delete(key);
      else draft.aliases.set(key, value as CropId);
      return;
    case 'stands':
      if (value === null) dropStand(draft, key);
      else putStand(draft, value as Stand);
      return;
    case 'plots':
      if (value === null) archivePlot(draft, key, doneOn);
      else setListed(draft, subject, key, value as Plot);
      return;
    default:
      setListed(draft, subject, key, value as RowOf<typeof subject> | null);
  }
}

function setListed<S extends ListSubject>(draft: Draft, subject: S, key: string, row: RowOf<S> | null): void {
  if (row === null) tableOf(draft, subject).delete(key);
  else tableOf(draft, subject).set(key, row);
}

/** A plot is never taken out of the farm's past: it ends. One entered by mistake is struck out instead. */
function archivePlot(draft: Draft, id: string, endsOn: Day): void {
  const plots = tableOf(draft, 'plots');
  const plot = plots.get(id);
  if (plot !== undefined) plots.set(id, { ...plot, to: plot.to ?? endsOn });
}

function agreeRotation(
  draft: Draft,
  { reasons }: Extract<EntryBody, { kind: 'rotation-agreed' }>,
  { entry }: InForce,
): void {
  if (draft.rotation === null) {
    draft.findings.push(bookFinding('no-rotation-to-agree', [entry.id]));
    return;
  }
  const { placed } = draft.rotation;
  draft.rotation = {
    ...draft.rotation,
    state: 'agreed',
    agreedOn: entry.doneOn,
    ...(placed === undefined ? {} : { placed: placed.map((one) => ({ ...one, state: 'agreed' as const })) }),
  };
  for (const [id, reason] of Object.entries(reasons)) {
    const stand = tableOf(draft, 'stands').get(id);
    if (stand !== undefined) putStand(draft, { ...stand, reason });
  }
}
