/** The farm while a replay builds it: tables by key, changed in place, and never seen outside the replay. */
import type { Farm } from '../farm/farm.ts';
import type { Stand } from '../farm/stand.ts';
import { keyOf, type ListSubject, listSubjects, type RowOf } from '../farm/subjects.ts';
import { byDays } from '../rows/stands.ts';
import type { BookFinding } from './findings.ts';

type Tables = { [S in ListSubject]?: Map<string, RowOf<S>> };

export interface Draft {
  readonly base: Farm;
  about: Farm['about'];
  rotation: Farm['rotation'];
  promise: Farm['promise'];
  aliases: Map<string, Farm['aliases'][string]> | null;
  /** Only the tables that a replay has touched. */
  readonly tables: Tables;
  /** The stands again, by plot, made with the first look: a sowing asks what stands there. */
  standsOfPlot: Map<string, Map<string, Stand>> | null;
  readonly harvests: Map<string, Farm['harvests'][number]>;
  readonly weighings: Map<string, Farm['weighings'][number]>;
  readonly jobsDone: Map<string, Farm['jobsDone'][number]>;
  readonly findings: BookFinding[];
}

export function openDraft(base: Farm): Draft {
  const byEntry = <T extends { readonly entry: string }>(rows: readonly T[]) =>
    new Map(rows.map((row) => [row.entry, row]));
  return {
    base,
    about: base.about,
    rotation: base.rotation,
    promise: base.promise,
    aliases: null,
    tables: {},
    standsOfPlot: null,
    harvests: byEntry(base.harvests),
    weighings: byEntry(base.weighings),
    jobsDone: byEntry(base.jobsDone),
    findings: [],
  };
}

/** A table of the draft by key, copied from the base on the first look. */
export function tableOf<S extends ListSubject>(draft: Draft, subject: S): Map<string, RowOf<S>> {
  const tables = draft.tables as { [T in S]?: Map<string, RowOf<S>> };
  const rows =
    tables[subject] ?? new Map((draft.base[subject] as readonly RowOf<S>[]).map((row) => [keyOf(subject, row), row]));
  tables[subject] = rows;
  return rows;
}

export function putStand(draft: Draft, stand: Stand): void {
  const stands = tableOf(draft, 'stands');
  const before = stands.get(stand.id);
  if (before !== undefined && before.plot !== stand.plot) standsOn(draft, before.plot).delete(stand.id);
  standsOn(draft, stand.plot).set(stand.id, stand);
  stands.set(stand.id, stand);
}

export function dropStand(draft: Draft, id: string): void {
  const stand = tableOf(draft, 'stands').get(id);
  if (stand === undefined) return;
  standsOn(draft, stand.plot).delete(id);
  tableOf(draft, 'stands').delete(id);
}

/** Stands of a plot by id. */
export function standsOn(draft: Draft, plot: string): Map<string, Stand> {
  if (draft.standsOfPlot === null) {
    draft.standsOfPlot = new Map();
    for (const stand of tableOf(draft, 'stands').values()) standsOn(draft, stand.plot).set(stand.id, stand);
  }
  const stands = draft.standsOfPlot.get(plot) ?? new Map<string, Stand>();
  draft.standsOfPlot.set(plot, stands);
  return stands;
}

/** The farm as built. Tables that nothing touched are the base's own, so that whoever compares them sees no change. */
export function closeDraft(draft: Draft): Farm {
  const { base, about, rotation, promise, aliases } = draft;
  const touched = listSubjects.filter((subject) => draft.tables[subject] !== undefined);
  const tables = Object.fromEntries(
    touched.map((subject) => [subject, [...(draft.tables[subject]?.values() ?? [])]]),
  ) as unknown as Pick<Farm, ListSubject>;
  if (draft.tables.stands !== undefined)
    (tables as { stands: readonly Stand[] }).stands = [...draft.tables.stands.values()].sort(byDays);
  return {
    ...base,
    about,
    rotation,
    promise,
    ...tables,
    aliases: aliases === null ? base.aliases : Object.fromEntries(aliases),
    harvests: [...draft.harvests.values()],
    weighings: [...draft.weighings.values()],
    jobsDone: [...draft.jobsDone.values()],
  };
}
