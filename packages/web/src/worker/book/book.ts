/** A farm's book on this machine: what came from the server, and what was entered here and waits to be sent. */
import { type Entry, type EntryBody, newEntryId, type ReceivedEntry } from '@leywright/book';
import type { Day, DeviceId, EntryId, FarmId, PersonId } from '@leywright/measures';
import type { Clock } from './clock.ts';
import type { Keep, Who } from './keep.ts';
import type { Answer, Server, ServerProblem } from './server.ts';

export interface LocalBook {
  readonly entries: readonly ReceivedEntry[];
  readonly unsent: readonly Entry[];
}

export interface BookTools {
  readonly server: Server;
  readonly keep: Keep;
  readonly clock: Clock;
}

export async function keptBook({ keep }: BookTools, farm: string): Promise<LocalBook> {
  return { entries: await keep.entries(farm), unsent: await keep.unsent(farm) };
}

export type Pulled =
  | { readonly kind: 'pulled'; readonly book: LocalBook; readonly isNew: boolean }
  | { readonly kind: 'unreachable' }
  | { readonly kind: 'gone' };

/**
 * Brings what the server has and this machine has not. The last entry kept here is asked for again: where the server has another in
 * its place, it holds another book under this name, and the one kept here is dropped for it.
 */
export async function pullBook(tools: BookTools, farm: string, book: LocalBook): Promise<Pulled> {
  const last = book.entries.at(-1);
  const first = await tools.server.entriesAfter(farm, last === undefined ? 0 : last.seq - 1);
  if (first.kind === 'unreachable') return { kind: 'unreachable' };
  if (first.kind === 'refused') return { kind: 'gone' };
  const [repeated, ...after] = first.value.entries;
  if (last !== undefined && repeated?.hash !== last.hash) {
    await tools.keep.dropEntries(farm);
    return pullBook(tools, farm, { ...book, entries: [] });
  }
  const came = last === undefined ? [...first.value.entries] : after;
  let { more, readTo } = first.value;
  while (more) {
    const page = await tools.server.entriesAfter(farm, readTo);
    if (page.kind !== 'answered') return { kind: 'unreachable' };
    came.push(...page.value.entries);
    ({ more, readTo } = page.value);
  }
  if (came.length > 0) await tools.keep.putEntries(farm, came);
  return { kind: 'pulled', book: { ...book, entries: [...book.entries, ...came] }, isNew: came.length > 0 };
}

export type Sent =
  | { readonly kind: 'sent'; readonly book: LocalBook }
  | { readonly kind: 'unreachable' }
  | { readonly kind: 'refused'; readonly book: LocalBook; readonly problems: readonly ServerProblem[] };

/** Sends what was entered here. What the server refuses is taken off the list, and told. */
export async function sendBook(tools: BookTools, farm: string, book: LocalBook): Promise<Sent> {
  const who = await tools.keep.fact('who');
  const { own, others } = ofWho(book.unsent, who);
  if (own.length === 0) return { kind: 'sent', book };
  const answer = await tools.server.addEntries(farm, own);
  if (answer.kind === 'unreachable' || isForLater(answer)) return { kind: 'unreachable' };
  if (answer.kind === 'refused' && own.length > 1) return sendOneByOne(tools, farm, { book, own });
  await tools.keep.dropUnsent(own);
  const left = { ...book, unsent: others };
  return answer.kind === 'answered'
    ? { kind: 'sent', book: left }
    : { kind: 'refused', book: left, problems: answer.problems };
}

/** What hands and the bench made themselves; what another made on this device waits until they are signed in again. */
function ofWho(unsent: readonly Entry[], who: Who | null) {
  const isOwn = ({ by }: Entry) => who === null || who.role === 'grower' || who.role === 'office' || by === who.person;
  return { own: unsent.filter(isOwn), others: unsent.filter((entry) => !isOwn(entry)) };
}

/**
 * Learns who is signed in. Where somebody else was before, or the same person in another role, what they could see is taken off this device;
 * records that wait to be sent stay.
 */
export async function learnWho({ server, keep }: BookTools): Promise<void> {
  const answer = await server.me();
  if (answer.kind !== 'answered' || answer.value.visitor === null) return;
  const { person, role } = answer.value.visitor;
  const before = await keep.fact('who');
  if (before !== null && before.person === person && before.role === role) return;
  for (const farm of await keep.farms()) await keep.dropEntries(farm.id);
  await keep.putFact('who', { person, role });
}

/** Signed out, too often, a full disk: nothing is wrong with the records, and they stay here until they can go. */
function isForLater(answer: Answer<unknown>): boolean {
  return answer.kind === 'refused' && answer.status !== 409 && answer.status !== 422;
}

/** One that is refused must not keep the others here, nor take them with it. */
async function sendOneByOne(
  tools: BookTools,
  farm: string,
  { book, own }: { readonly book: LocalBook; readonly own: readonly Entry[] },
): Promise<Sent> {
  const problems: ServerProblem[] = [];
  let left = book.unsent;
  for (const entry of own) {
    const sent = await sendBook(tools, farm, { ...book, unsent: [entry] });
    if (sent.kind === 'unreachable') return { kind: 'unreachable' };
    if (sent.kind === 'refused') problems.push(...sent.problems);
    left = left.filter(({ id }) => id !== entry.id);
  }
  return { kind: 'refused', book: { ...book, unsent: left }, problems };
}

/** Who enters on a machine without sign-in. */
const atTheDesk = 'desk' as PersonId;

export interface ToEnter {
  readonly farm: string;
  readonly doneOn: Day;
  readonly body: EntryBody;
  readonly doneAt?: string | null;
  readonly amends?: EntryId | null;
  readonly reason?: string | null;
  /** The moment, when several are entered at one. */
  readonly now?: string;
}

/** Enters something here; it is sent when the server is next reached. */
export async function enter(
  tools: BookTools,
  book: LocalBook,
  { farm, doneOn, body, doneAt = null, amends = null, reason = null, now = tools.clock.now() }: ToEnter,
): Promise<LocalBook> {
  const { keep, clock } = tools;
  const device = (await keep.fact('device')) ?? { id: `web-${hex(clock.random(6))}`, made: 0 };
  const entry: Entry = {
    v: 1,
    id: newEntryId(clock.random(10), Date.parse(now)),
    farm: farm as FarmId,
    doneOn,
    doneAt,
    // Where the server was told its day, the hour is this machine's and the day the farm's.
    enteredAt: clock.today() === doneOn ? now : `${doneOn}${now.slice(10)}`,
    by: ((await keep.fact('who'))?.person as PersonId | undefined) ?? atTheDesk,
    device: device.id as DeviceId,
    deviceSeq: device.made + 1,
    body,
    amends,
    reason,
  };
  await keep.putFact('device', { id: device.id, made: device.made + 1 });
  await keep.putUnsent(entry);
  return { ...book, unsent: [...book.unsent, entry] };
}

function hex(bytes: Uint8Array): string {
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
