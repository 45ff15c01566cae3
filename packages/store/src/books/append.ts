/** Receipt: entries get their place in the farm's chain inside one transaction, all or none. */
import { chain, type Entry, type ReceivedEntry } from '@leywright/book';
import type { EntryId, FarmId } from '@leywright/measures';
import type { Kysely, Transaction } from 'kysely';
import type { StoreTables } from '../schema/tables.ts';
import type { Appended, Founded, NewFarm, Receipt } from '../store.ts';
import { farmOfRow, receivedOfRow, rowOfReceived, storedFarms } from './rows.ts';

type Step = Transaction<StoreTables>;

interface Head {
  readonly seq: number;
  readonly hash: string | null;
}

/** SQLite takes 32,766 values a statement; an entry has ten. */
const ROWS_A_STATEMENT = 500;

export async function foundFarm(step: Step, farm: NewFarm, receipt: Receipt): Promise<Founded> {
  const made = await step
    .insertInto('farms')
    .values({ farm_id: farm.id, name: farm.name, is_sample: farm.sample ? 1 : 0, created_at: receipt.receivedAt })
    .onConflict((taken) => taken.column('farm_id').doNothing())
    .executeTakeFirst();
  if (Number(made.numInsertedOrUpdatedRows ?? 0) === 0) return { kind: 'id-taken' };
  const last = farm.book.at(-1);
  const head = last === undefined ? { seq: 0, hash: null } : { seq: last.seq, hash: last.hash };
  await write(step, [...farm.book, ...chained(head, farm.entries, receipt)]);
  const row = await storedFarms(step).where('farms.farm_id', '=', farm.id).executeTakeFirstOrThrow();
  return { kind: 'founded', farm: farmOfRow(row) };
}

export async function appendEntries(
  step: Step,
  farm: FarmId,
  arriving: { readonly entries: readonly Entry[]; readonly receipt: Receipt },
): Promise<Appended> {
  const row = await storedFarms(step).where('farms.farm_id', '=', farm).executeTakeFirst();
  if (row === undefined) return { kind: 'no-such-farm' };
  const ofOtherFarm = arriving.entries.filter((entry) => entry.farm !== farm).map((entry) => entry.id);
  const known = await receivedById(
    step,
    farm,
    arriving.entries.map((entry) => entry.id),
  );
  const sorted = sortArriving(arriving.entries, known);
  if (sorted.differing.length + ofOtherFarm.length > 0)
    return { kind: 'refused', differing: sorted.differing, ofOtherFarm };
  const received = chained(await headOf(step, farm), sorted.fresh, arriving.receipt);
  await write(step, received);
  await followWords(step, farm, received);
  return {
    kind: 'appended',
    received,
    already: sorted.already,
    lastSeq: received.at(-1)?.seq ?? farmOfRow(row).lastSeq,
  };
}

async function headOf(step: Step, farm: FarmId): Promise<Head> {
  const last = await step
    .selectFrom('entries')
    .select(['seq', 'hash'])
    .where('farm_id', '=', farm)
    .orderBy('seq', 'desc')
    .limit(1)
    .executeTakeFirst();
  return last === undefined ? { seq: 0, hash: null } : { seq: Number(last.seq), hash: last.hash };
}

function chained(head: Head, entries: readonly Entry[], receipt: Receipt): readonly ReceivedEntry[] {
  let { seq, hash } = head;
  return entries.map((entry) => {
    seq += 1;
    const received = chain(hash, entry, { receivedAt: receipt.receivedAt, seq, salt: receipt.newSalt() });
    hash = received.hash;
    return received;
  });
}

async function write(step: Step, received: readonly ReceivedEntry[]): Promise<void> {
  for (let at = 0; at < received.length; at += ROWS_A_STATEMENT) {
    const rows = received.slice(at, at + ROWS_A_STATEMENT).map(rowOfReceived);
    await step.insertInto('entries').values(rows).execute();
  }
}

export async function receivedById(
  step: Kysely<StoreTables>,
  farm: FarmId,
  wanted: readonly EntryId[],
): Promise<ReadonlyMap<EntryId, ReceivedEntry>> {
  const known = new Map<EntryId, ReceivedEntry>();
  for (let at = 0; at < wanted.length; at += ROWS_A_STATEMENT) {
    const ids = wanted.slice(at, at + ROWS_A_STATEMENT);
    const rows = await step
      .selectFrom('entries')
      .selectAll()
      .where('farm_id', '=', farm)
      .where('entry_id', 'in', ids)
      .execute();
    for (const received of rows.map(receivedOfRow)) known.set(received.id, received);
  }
  return known;
}

/** Parts what is new from what was sent before; the same id with other contents is kept out, also within one sending. */
function sortArriving(entries: readonly Entry[], known: ReadonlyMap<EntryId, Entry>) {
  const fresh: Entry[] = [];
  const already: EntryId[] = [];
  const differing: EntryId[] = [];
  const seen = new Map<EntryId, Entry>(known);
  for (const entry of entries) {
    const before = seen.get(entry.id);
    if (before === undefined) {
      seen.set(entry.id, entry);
      fresh.push(entry);
    } else if (isSame(before, entry)) already.push(entry.id);
    else differing.push(entry.id);
  }
  return { fresh, already, differing };
}

/** Word for word the same; of an entry whose body was withdrawn, the envelope alone can be compared. */
function isSame(before: Entry, again: Entry): boolean {
  const keys = ['v', 'farm', 'doneOn', 'doneAt', 'enteredAt', 'by', 'device', 'deviceSeq', 'amends', 'reason'] as const;
  return (
    keys.every((key) => before[key] === again[key]) &&
    (before.body === null || ordered(before.body) === ordered(again.body))
  );
}

function ordered(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}

/** What an entry asks of the store itself: a new name of the farm, or a body taken away for good. */
async function followWords(step: Step, farm: FarmId, received: readonly ReceivedEntry[]): Promise<void> {
  for (const { body } of received) {
    if (body?.kind === 'withdrawn') {
      await step
        .updateTable('entries')
        .set({ body: null, salt: '' })
        .where('farm_id', '=', farm)
        .where('entry_id', '=', body.entry)
        .execute();
    }
    const name = body?.kind === 'set' && body.subject === 'about' ? nameIn(body.value) : null;
    if (name !== null) await step.updateTable('farms').set({ name }).where('farm_id', '=', farm).execute();
  }
}

function nameIn(value: unknown): string | null {
  const name = value !== null && typeof value === 'object' && 'name' in value ? value.name : null;
  return typeof name === 'string' ? name : null;
}
