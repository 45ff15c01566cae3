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
  /** Ids of stands by plot, made with the first look. */
  standsOfPlot: Map<string, Set<string>> | null;
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
  tableOf(draft, 'stands').set(stand.id, stand);
  standIdsOf(draft, stand.plot).add(stand.id);
}

/** Ids of stands that are, or have been, on a plot; look at each stand's own plot again. */
export function standIdsOf(draft: Draft, plot: string): Set<string> {
  if (draft.standsOfPlot === null) {
    draft.standsOfPlot = new Map();
    for (const stand of tableOf(draft, 'stands').values()) standIdsOf(draft, stand.plot).add(stand.id);
  }
  const ids = draft.standsOfPlot.get(plot) ?? new Set();
  draft.standsOfPlot.set(plot, ids);
  return ids;
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
