/** entries.jsonl: the book, one entry a line. */

import { chain } from '../entry/chain.ts';
import type { Entry, ReceivedEntry } from '../entry/entry.ts';
import { bookFile, readEntry, readReceivedEntry } from '../entry/read-entry.ts';
import { verifyBook } from '../entry/verify-book.ts';
import type { Problem, ProblemList } from './problem.ts';

/** Entries in the order of their lines. Entries that no book has received yet (written by hand, say) are received here, and told. */
export function readBookLines(text: string, problems: ProblemList): ReceivedEntry[] {
  const before = problems.stopping();
  const read: { readonly entry: Entry | ReceivedEntry; readonly line: number }[] = [];
  for (const [at, written] of text.split('\n').entries()) {
    if (written.trim() === '') continue;
    const entry = readLine(written, at + 1, problems);
    if (entry !== null) read.push({ entry, line: at + 1 });
  }
  if (problems.stopping() !== before) return [];
  const received = read.filter((one): one is { entry: ReceivedEntry; line: number } => 'hash' in one.entry);
  const verified = verifyBook(received.map((one) => one.entry));
  if (!verified.ok) {
    const { at, seq, how } = verified.firstBad;
    problems.add(
      'book-broken',
      { file: bookFile, line: received[at]?.line ?? null, column: null },
      { found: how, figures: { seq, how } },
    );
    return [];
  }
  return [...received.map((one) => one.entry), ...sealed(read, received.at(-1)?.entry ?? null, problems)];
}

function readLine(written: string, line: number, problems: ProblemList): Entry | ReceivedEntry | null {
  let json: unknown;
  try {
    json = JSON.parse(written);
  } catch {
    problems.add('not-json', { file: bookFile, line, column: null }, { found: written });
    return null;
  }
  const isReceived = typeof json === 'object' && json !== null && Object.hasOwn(json, 'hash');
  const entry = isReceived ? readReceivedEntry(json, line) : readEntry(json, line);
  if (!isProblems(entry)) return entry;
  for (const { code, line: at, column, ...fault } of entry)
    problems.add(code, { file: bookFile, line: at, column }, fault);
  return null;
}

function isProblems(entry: Entry | readonly Problem[]): entry is readonly Problem[] {
  return Array.isArray(entry);
}

/** Received as of the moment they say they were entered; without a salt, since there is nobody here to draw one. */
function sealed(
  read: readonly { readonly entry: Entry; readonly line: number }[],
  last: ReceivedEntry | null,
  problems: ProblemList,
): ReceivedEntry[] {
  const loose = read.filter((one) => !('hash' in one.entry));
  if (loose.length > 0)
    problems.add(
      'book-not-sealed',
      { file: bookFile, line: loose[0]?.line ?? null, column: null },
      { gravity: 'look', figures: { entries: loose.length } },
    );
  let previous = last;
  return loose.map(({ entry }) => {
    previous = chain(previous?.hash ?? null, entry, {
      receivedAt: entry.enteredAt,
      seq: (previous?.seq ?? 0) + 1,
      salt: '',
    });
    return previous;
  });
}

/** The book as lines, every entry with what it got on receipt. */
export function writeBookLines(entries: readonly ReceivedEntry[]): string {
  return entries.map((entry) => `${JSON.stringify(entry)}\n`).join('');
}
