/** What in a sending a person may not enter, all of it at once. */
import type { Entry, ReceivedEntry } from '@leywright/book';
import type { EntryId, PersonId } from '@leywright/measures';
import { type HttpProblem, refusal } from '../app/answer.ts';
import type { Sight } from './sight.ts';

export interface Sender {
  readonly person: PersonId;
  readonly sight: Sight;
}

/** `known` are the entries of the book that the sending amends or repeats. */
export function enteringProblems(
  entries: readonly Entry[],
  { person, sight }: Sender,
  known: ReadonlyMap<EntryId, ReceivedEntry>,
): readonly HttpProblem[] {
  const made = new Map<string, Entry>(entries.map((entry) => [entry.id, entry]));
  return entries.flatMap((entry, at) => {
    const code = problemOf(entry, { person, sight }, (id) => known.get(id) ?? made.get(id));
    return code === null ? [] : [{ ...refusal(code, { found: entry.id }), line: at + 1 }];
  });
}

function problemOf(entry: Entry, { person, sight }: Sender, find: (id: EntryId) => Entry | undefined): string | null {
  const { body } = entry;
  if (body !== null && !sight.enters.includes(body.kind)) return 'entry-not-for-your-role';
  if (body?.kind === 'set' && !sight.entersSubjects.includes(body.subject)) return 'entry-not-for-your-role';
  if (sight.entersForOthers) return null;
  if (entry.by !== person) return 'entry-by-another';
  const amended = entry.amends === null ? undefined : find(entry.amends);
  return amended !== undefined && amended.by !== person ? 'amends-of-another' : null;
}

/** Ids that a sending names, to be looked up before it is judged. */
export function namedIds(entries: readonly Entry[]): readonly EntryId[] {
  return [...new Set(entries.flatMap(({ amends }) => (amends === null ? [] : [amends])))];
}
