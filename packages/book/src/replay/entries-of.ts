/** A whole farm as entries: how a folder's tables come into a book. */
import type { Day, DeviceId, EntryId, FarmId, PersonId } from '@leywright/measures';
import type { Entry, Subject } from '../entry/entry.ts';
import type { Farm } from '../farm/farm.ts';
import { keyOf, type ListSubject, listSubjects, type RowOf } from '../farm/subjects.ts';

/** Who says so, when, on which device. */
export interface Stamp {
  readonly farm: FarmId;
  readonly by: PersonId;
  readonly device: DeviceId;
  /** Number of the first entry on that device. */
  readonly deviceSeqFrom: number;
  readonly doneOn: Day;
  /** UTC instant, ISO 8601. */
  readonly enteredAt: string;
  /** A new id for each entry, by its place from 0. */
  readonly newId: (at: number) => EntryId;
}

/**
 * The `set` entries that describe a farm, one a row: `replay(emptyFarm(about), entriesOf(farm, stamp))` is that farm. Harvests, weighings and jobs
 * done are records, not descriptions; they come with their own entries.
 */
export function entriesOf(farm: Farm, stamp: Stamp): Entry[] {
  const rows: readonly { readonly subject: Subject; readonly key: string; readonly value: unknown }[] = [
    { subject: 'about', key: '', value: farm.about },
    ...listSubjects.flatMap((subject) => rowsOf(farm, subject)),
    ...(farm.rotation === null ? [] : [{ subject: 'rotation' as const, key: '', value: farm.rotation }]),
    ...(farm.promise === null ? [] : [{ subject: 'promise' as const, key: '', value: farm.promise }]),
    ...Object.entries(farm.aliases).map(([key, value]) => ({ subject: 'aliases' as const, key, value })),
  ];
  const { newId, deviceSeqFrom, ...envelope } = stamp;
  return rows.map((row, at) => ({
    v: 1,
    id: newId(at),
    ...envelope,
    doneAt: null,
    deviceSeq: deviceSeqFrom + at,
    body: { kind: 'set', ...row },
    amends: null,
    reason: null,
  }));
}

function rowsOf<S extends ListSubject>(farm: Farm, subject: S) {
  return (farm[subject] as readonly RowOf<S>[]).map((value) => ({ subject, key: keyOf(subject, value), value }));
}
