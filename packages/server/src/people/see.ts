/** Cuts what is handed out to what a role may see, by the table in `sight.ts`. */
import { asKnownOn, type Entry, type ReceivedEntry } from '@leywright/book';
import { addMonths, type Day, type EntryId } from '@leywright/measures';
import type { Household } from '@leywright/store';
import type { Sight } from './sight.ts';

export interface Eyes {
  readonly sight: Sight;
  /** First day whose records are seen; null = all. */
  readonly from: Day | null;
  readonly knownOn: Day | null;
  readonly timeZone: string;
}

export function eyesOf(
  sight: Sight,
  at: { readonly today: Day; readonly knownOn: Day | null; readonly timeZone: string },
): Eyes {
  const { today, knownOn, timeZone } = at;
  const from = sight.readsMonths === null ? null : addMonths(knownOn ?? today, -sight.readsMonths);
  return { sight, from, knownOn, timeZone };
}

/** Whether these eyes see the whole book. */
export function seesAll({ sight, from, knownOn }: Eyes): boolean {
  return from === null && knownOn === null && sight.readsMoney;
}

export type FindEntries = (ids: readonly EntryId[]) => Promise<readonly ReceivedEntry[]>;

/** The entries of a page that may be seen. A strike-out and a withdrawal are seen by those who see what they name. */
export async function seenOf(
  page: readonly ReceivedEntry[],
  eyes: Eyes,
  find: FindEntries,
): Promise<readonly ReceivedEntry[]> {
  if (seesAll(eyes)) return page;
  const known = eyes.knownOn === null ? page : asKnownOn(page, eyes.knownOn, eyes.timeZone);
  const named = await namedEntries(known, find);
  return known.filter((entry) => isSeen(entry, named, eyes));
}

/** Chains of strike-outs are short; a ring of them must not hold us. */
const mostLinks = 12;

function isSeen(entry: ReceivedEntry, named: ReadonlyMap<string, ReceivedEntry>, eyes: Eyes): boolean {
  let at = entry;
  for (let link = 0; link < mostLinks; link += 1) {
    const name = nameIn(at);
    const target = name === null ? undefined : named.get(name);
    if (target === undefined) return isSeenByItself(at, eyes);
    at = target;
  }
  return false;
}

/** The entry that this one only says something about. */
function nameIn({ body, amends }: Entry): string | null {
  if (body?.kind === 'withdrawn') return body.entry;
  return body?.kind === 'struck-out' ? amends : null;
}

function isSeenByItself({ body, doneOn }: Entry, { sight, from }: Eyes): boolean {
  if (body?.kind === 'set') return sight.readsSubjects.includes(body.subject);
  if (body?.kind === 'rotation-agreed' || body?.kind === 'organism-found') return true;
  return from === null || doneOn >= from;
}

async function namedEntries(
  page: readonly ReceivedEntry[],
  find: FindEntries,
): Promise<ReadonlyMap<string, ReceivedEntry>> {
  const known = new Map<string, ReceivedEntry>(page.map((entry) => [entry.id, entry]));
  let asking = page;
  for (let link = 0; link < mostLinks && asking.length > 0; link += 1) {
    const missing = new Set(asking.map(nameIn).filter((name): name is string => name !== null && !known.has(name)));
    asking = missing.size === 0 ? [] : await find([...missing] as EntryId[]);
    for (const entry of asking) known.set(entry.id, entry);
  }
  return known;
}

/** Figures of money are named by their unit, minor units of the farm's money. */
const isMoney = /Minor/;

/** The same answer with every figure of money taken out: null, and a finding that holds one is left out. */
export function withoutMoney<T>(answer: T): T {
  return cut(answer) as T;
}

function cut(value: unknown): unknown {
  if (Array.isArray(value)) return value.filter((one) => !isMoneyFinding(one)).map(cut);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, inner]) => [name, isMoney.test(name) ? null : cut(inner)]),
  );
}

function isMoneyFinding(value: unknown): boolean {
  if (value === null || typeof value !== 'object' || !('code' in value) || !('figures' in value)) return false;
  return Object.keys(value.figures as object).some((name) => isMoney.test(name));
}

/** A household as a role may see it; null = not at all. */
export function seenHousehold(household: Household, sees: Sight['households']): Household | null {
  if (sees === 'all' || household.person === null) return sees === 'none' ? null : household;
  if (sees === 'none') return null;
  const { name, without } = household.person;
  return { ...household, person: { name, email: null, phone: null, address: null, without, note: null } };
}
