/**
 * A replay written a second time, as plainly as can be and as slow as it likes: for the kinds that `many-devices.ts` makes. It shares no line with
 * the real one; where the two differ, one of them is wrong.
 */
import type { Entry, EntryBody, ReceivedEntry } from '../src/index.ts';

export interface PlainFarm {
  readonly aliases: Readonly<Record<string, string>>;
  readonly harvests: readonly unknown[];
  readonly weighings: readonly unknown[];
  readonly jobsDone: readonly unknown[];
}

export function plainReplay(book: readonly ReceivedEntry[]): PlainFarm {
  const amendmentsOf = (entry: Entry) => book.filter((one) => one.amends === entry.id);

  /** The version that holds; null when the record was struck out. */
  const versionOf = (entry: ReceivedEntry): ReceivedEntry | null => {
    const standing = amendmentsOf(entry).filter((one) => versionOf(one) !== null);
    if (standing.length !== 1) return entry; // none, or rivals that nobody chose between
    const version = versionOf(standing[0] as ReceivedEntry);
    return version?.body?.kind === 'struck-out' ? null : version;
  };

  const withdrawn = book.flatMap(({ body }) => (body?.kind === 'withdrawn' ? [body.entry] : []));
  const records: { readonly id: string; readonly body: EntryBody; readonly order: readonly (string | number)[] }[] = [];
  for (const root of book.filter((one) => one.amends === null)) {
    const version = versionOf(root);
    if (version === null || version.body === null || withdrawn.includes(version.id)) continue;
    records.push({ id: version.id, body: version.body, order: orderOf(version, root) });
  }
  records.sort((a, b) => compare(a.order, b.order));

  const aliases: Record<string, string> = {};
  for (const { body } of records) {
    if (body.kind !== 'set') continue;
    if (body.value === null) delete aliases[body.key];
    else aliases[body.key] = body.value as string;
  }
  const of = (kind: string) =>
    records.filter(({ body }) => body.kind === kind).map(({ id, body }) => ({ id, ...body }));
  return { aliases, harvests: of('harvest'), weighings: of('weighing'), jobsDone: of('job-done') };
}

function orderOf(version: ReceivedEntry, root: ReceivedEntry): readonly (string | number)[] {
  return [
    version.doneOn,
    version.doneAt ?? '', // a record without a time comes first in its day
    Date.parse(isClockWrong(root) ? root.receivedAt : root.enteredAt),
    root.device,
    root.deviceSeq,
    root.id,
  ];
}

/** Entered two days or more before it was done, more than ten minutes after it was received, or more than 400 days before. */
export function isClockWrong({ doneOn, enteredAt, receivedAt }: ReceivedEntry): boolean {
  const [done, entered, received] = [Date.parse(`${doneOn}T00:00:00Z`), Date.parse(enteredAt), Date.parse(receivedAt)];
  const day = 24 * 60 * 60 * 1000;
  return done - entered > 2 * day || entered - received > 10 * 60 * 1000 || received - entered > 400 * day;
}

function compare(a: readonly (string | number)[], b: readonly (string | number)[]): number {
  for (const [at, one] of a.entries()) {
    const other = b[at] as string | number;
    if (one < other) return -1;
    if (one > other) return 1;
  }
  return 0;
}
