/**
 * Which version of each record is in force.
 *
 * An amendment stands in the place of what it amends; amended again, its own amendment stands in its place. A strike-out takes out the one entry it
 * names: struck out, a record is gone, and an amendment struck out is as if it had never been made. Two amendments of one entry are rivals: neither
 * is applied until one of them is struck out.
 */
import type { Entry } from '../entry/entry.ts';
import { type BookFinding, bookFinding } from './findings.ts';

/** A record in force: `entry` is the version that holds, `root` the entry first made, whose place in time it keeps. */
export interface InForce {
  readonly entry: Entry;
  readonly root: Entry;
}

export interface Settled {
  readonly inForce: readonly InForce[];
  readonly findings: readonly BookFinding[];
}

/** Settles all amendments. Bodies that were withdrawn count for nothing. */
export function settle(byId: ReadonlyMap<string, Entry>): Settled {
  const amendments = new Map<string, Entry[]>();
  const withdrawn = new Set<string>();
  const roots: Entry[] = [];
  for (const entry of byId.values()) {
    if (entry.amends === null) roots.push(entry);
    else
      amendments
        .set(entry.amends, amendments.get(entry.amends) ?? [])
        .get(entry.amends)
        ?.push(entry);
    if (entry.body?.kind === 'withdrawn') withdrawn.add(entry.body.entry);
  }
  if (amendments.size === 0)
    return { inForce: roots.flatMap((root) => applied({ entry: root, root }, withdrawn)), findings: [] };
  const settling: Settling = { amendments, findings: [], seen: new Set() };
  const own = roots.flatMap((root) => {
    const entry = versionOf(root, settling);
    return entry === null ? [] : [{ entry, root }];
  });
  const orphans = [...amendments]
    .filter(([id]) => !byId.has(id))
    .flatMap(([id, rivals]) => orphaned(id, rivals, settling));
  const ring = [...byId.keys()].filter((id) => !settling.seen.has(id)).sort();
  if (ring.length > 0) settling.findings.push(bookFinding('amendments-in-a-ring', ring));
  return { inForce: [...own, ...orphans].flatMap((one) => applied(one, withdrawn)), findings: settling.findings };
}

interface Settling {
  readonly amendments: ReadonlyMap<string, readonly Entry[]>;
  readonly findings: BookFinding[];
  readonly seen: Set<string>;
}

/** The version in force of an entry; null when it was struck out. Walks down without recursion: a chain of corrections may be long. */
function versionOf(entry: Entry, settling: Settling): Entry | null {
  if (!settling.amendments.has(entry.id)) {
    settling.seen.add(entry.id);
    return entry;
  }
  const order: Entry[] = [entry];
  for (let at = 0; at < order.length; at += 1) {
    const here = order[at];
    if (here === undefined) break;
    settling.seen.add(here.id);
    order.push(...(settling.amendments.get(here.id) ?? []));
  }
  const versions = new Map<string, Entry | null>();
  for (const here of order.reverse()) versions.set(here.id, resolved(here, versions, settling));
  return versions.get(entry.id) ?? null;
}

function resolved(entry: Entry, versions: ReadonlyMap<string, Entry | null>, settling: Settling): Entry | null {
  const standing = (settling.amendments.get(entry.id) ?? []).filter((one) => versions.get(one.id) !== null);
  if (standing.length > 1)
    settling.findings.push(bookFinding('rival-amendments', [entry.id, ...standing.map((one) => one.id).sort()]));
  const [only, ...more] = standing;
  if (only === undefined || more.length > 0) return entry;
  const version = versions.get(only.id) ?? null;
  return version?.body?.kind === 'struck-out' ? null : version;
}

/** An amendment whose original has not come yet holds by itself; the original, when it comes, only gives it its place. */
function orphaned(missing: string, rivals: readonly Entry[], settling: Settling): InForce[] {
  const standing = rivals
    .map((root) => ({ root, entry: versionOf(root, settling) }))
    .filter((one): one is InForce => one.entry !== null);
  settling.findings.push(bookFinding('original-not-received', [missing, ...rivals.map((one) => one.id).sort()]));
  if (standing.length > 1)
    settling.findings.push(bookFinding('rival-amendments', [missing, ...standing.map((one) => one.root.id).sort()]));
  return standing.length === 1 ? standing : [];
}

function applied(one: InForce, withdrawn: ReadonlySet<string>): InForce[] {
  const { body, id } = one.entry;
  return body === null || body.kind === 'struck-out' || body.kind === 'withdrawn' || withdrawn.has(id) ? [] : [one];
}
