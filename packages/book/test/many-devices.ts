/** A farm with several devices, played through from a seed: records made on line and off, clocks that are wrong, sendings cut off and repeated. */
import { addDays, asDay, asId, type EntryId } from '@leywright/measures';
import { chain, type Entry, type EntryBody, newEntryId, type ReceivedEntry } from '../src/index.ts';

export interface Device {
  readonly name: string;
  /** How far its clock is off, in hours. */
  readonly clockOffH: number;
  readonly unsent: Entry[];
  readonly pulled: ReceivedEntry[];
  isOnLine: boolean;
  made: number;
}

export interface Played {
  readonly devices: readonly Device[];
  /** The server's book, in the order of its seals. */
  readonly book: readonly ReceivedEntry[];
  /** Everything that was ever made, on whatever device. */
  readonly made: readonly Entry[];
}

interface Farmyard extends Played {
  readonly book: ReceivedEntry[];
  readonly made: Entry[];
  readonly draw: (below: number) => number;
  hour: number;
}

const crops = ['carrot-maincrop', 'kale', 'leek-mid'];
const plots = ['a', 'b', 'c'];
const start = asDay('2027-03-01');
const startMs = Date.UTC(2027, 2, 1);
const hourMs = 3_600_000;

/** Plays so many steps, then puts every device on line until all have everything. */
export function play(seed: number, steps: number): Played {
  const draw = drawing(seed);
  const offs = [0, 0, draw(3) - 1, 3, -100_000, 9000];
  const devices = Array.from({ length: 2 + draw(4) }, (_, at) => device(`phone-${at}`, offs[draw(offs.length)] ?? 0));
  const yard: Farmyard = { devices, book: [], made: [], draw, hour: 0 };
  for (let step = 0; step < steps; step += 1) takeStep(yard);
  for (const one of devices) one.isOnLine = true;
  while (devices.some((one) => one.unsent.length > 0 || one.pulled.length < yard.book.length))
    for (const one of devices) exchange(yard, one, 50);
  return yard;
}

function device(name: string, clockOffH: number): Device {
  return { name, clockOffH, unsent: [], pulled: [], isOnLine: true, made: 0 };
}

function takeStep(yard: Farmyard): void {
  const { draw } = yard;
  yard.hour += draw(12);
  const here = yard.devices[draw(yard.devices.length)];
  if (here === undefined) return;
  const what = draw(10);
  if (what === 0) here.isOnLine = !here.isOnLine;
  else if (what < 4) exchange(yard, here, 1 + draw(4));
  else make(yard, here);
}

/** Sends a few, perhaps loses the answer, and pulls a few: each may stop half-way, and the next time goes on from there. */
function exchange(yard: Farmyard, here: Device, most: number): void {
  if (!here.isOnLine) return;
  const sending = here.unsent.slice(0, most);
  receive(yard, sending);
  // The answer may be lost on a bad line: then the same is sent again.
  if (most >= 50 || yard.draw(4) > 0) here.unsent.splice(0, sending.length);
  here.pulled.push(...yard.book.slice(here.pulled.length, here.pulled.length + most));
}

function receive(yard: Farmyard, sending: readonly Entry[]): void {
  for (const entry of sending) {
    if (yard.book.some(({ id }) => id === entry.id)) continue;
    const receipt = { receivedAt: instant(yard.hour), seq: yard.book.length + 1, salt: `${yard.book.length}` };
    yard.book.push(chain(yard.book.at(-1)?.hash ?? null, entry, receipt));
  }
}

function make(yard: Farmyard, here: Device): void {
  const { draw } = yard;
  const known = [...here.pulled, ...here.unsent];
  const amended = draw(4) === 0 ? known[draw(known.length)] : undefined;
  here.made += 1;
  const today = addDays(start, Math.floor(yard.hour / 24));
  const entry: Entry = {
    v: 1,
    id: newEntryId(
      Uint8Array.from({ length: 10 }, () => draw(256)),
      startMs + Math.max(0, yard.hour) * hourMs,
    ),
    farm: asId('garth'),
    doneOn: addDays(today, -draw(5)),
    doneAt: draw(2) === 0 ? null : `${String(draw(24)).padStart(2, '0')}:30`,
    enteredAt: instant(yard.hour + here.clockOffH),
    by: asId('ann'),
    device: asId(here.name),
    deviceSeq: here.made,
    body: body(draw, amended?.id ?? null, known),
    amends: amended?.id ?? null,
    reason: amended === undefined ? null : 'misread',
  };
  here.unsent.push(entry);
  yard.made.push(entry);
}

function body(draw: Farmyard['draw'], amends: EntryId | null, known: readonly Entry[]): EntryBody {
  const crop = crops[draw(crops.length)] ?? 'kale';
  if (amends !== null && draw(3) === 0) return { kind: 'struck-out' };
  const withdrawn = known[draw(known.length * 20 + 20)];
  if (amends === null && withdrawn !== undefined) return { kind: 'withdrawn', entry: withdrawn.id };
  switch (draw(4)) {
    case 0:
      return { kind: 'weighing', crop, store: 'barn', kg: draw(900) };
    case 1:
      return { kind: 'job-done', job: `hoe-${draw(5)}`, share: 1, hours: draw(9) };
    case 2:
      return { kind: 'set', subject: 'aliases', key: `name-${draw(6)}`, value: draw(5) === 0 ? null : crop };
    default:
      return {
        ...{ kind: 'harvest', stand: null, plot: plots[draw(plots.length)] ?? 'a', crop, grossKg: draw(2000) },
        ...{ count: null, unit: 'kg', gradedOutShare: null, into: 'store', store: 'barn' },
      } as EntryBody;
  }
}

function instant(hour: number): string {
  return `${new Date(startMs + hour * hourMs).toISOString().slice(0, 19)}Z`;
}

/** The same numbers from the same seed (mulberry32). */
function drawing(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return below <= 0 ? 0 : ((mixed ^ (mixed >>> 14)) >>> 0) % below;
  };
}
