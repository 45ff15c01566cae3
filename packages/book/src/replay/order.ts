/** The order in which records count: by the day done, then by the time, then as entered. Arrival plays no part. */
import { dayNumber } from '@leywright/measures';
import type { Entry, ReceivedEntry } from '../entry/entry.ts';
import { instantMs } from '../entry/instant.ts';
import { type BookFinding, bookFinding } from './findings.ts';

/** An entry's place in the order, in numbers: thousands are compared. */
export interface Place {
  /** Minutes since 1970 by the farm's own days, each day beginning with a minute for records without a time. */
  readonly doneMinute: number;
  readonly enteredMs: number;
  readonly device: string;
  readonly deviceSeq: number;
  readonly id: string;
}

const minutesADay = 1441;

/** The place of a record whose version in force is `entry`, entered first as `root`. */
export function placeOf(entry: Entry, root: Entry): Place {
  const { doneAt } = entry;
  const minute = doneAt === null ? 0 : 1 + Number(doneAt.slice(0, 2)) * 60 + Number(doneAt.slice(3));
  const { device, deviceSeq, id } = root;
  return {
    doneMinute: dayNumber(entry.doneOn) * minutesADay + minute,
    enteredMs: enteredMs(root),
    device,
    deviceSeq,
    id,
  };
}

/** Negative when `a` comes first. Within one moment a device's own count decides before the ids' chance. */
export function byPlace(a: Place, b: Place): number {
  if (a.doneMinute !== b.doneMinute) return a.doneMinute - b.doneMinute;
  if (a.enteredMs !== b.enteredMs) return a.enteredMs - b.enteredMs;
  if (a.device !== b.device) return a.device < b.device ? -1 : 1;
  if (a.deviceSeq !== b.deviceSeq) return a.deviceSeq - b.deviceSeq;
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}

const tenMinutesMs = 600_000;
const dayMs = 86_400_000;
/** Nobody keeps a record on a phone for longer than this before it is sent. */
const longestWithoutSignalMs = 400 * dayMs;

/** Whether the device's clock cannot have been right when the entry was made. */
export function clockIsWrong(entry: Entry): boolean {
  const entered = instantMs(entry.enteredAt);
  // Entered two days before it was done, wherever on earth that day began.
  if (dayNumber(entry.doneOn) * dayMs - entered > 2 * dayMs) return true;
  if (!isReceived(entry)) return false;
  const received = instantMs(entry.receivedAt);
  return entered - received > tenMinutesMs || received - entered > longestWithoutSignalMs;
}

export function isReceived(entry: Entry): entry is ReceivedEntry {
  return 'receivedAt' in entry;
}

/** When an entry was entered, by its device, or by its receipt where the device's clock was wrong. */
function enteredMs(entry: Entry): number {
  return instantMs(isReceived(entry) && clockIsWrong(entry) ? entry.receivedAt : entry.enteredAt);
}

/** One finding a device whose clock was wrong. */
export function clockFindings(wrong: readonly Entry[]): BookFinding[] {
  const byDevice = new Map<string, string[]>();
  for (const { device, id } of wrong)
    byDevice
      .set(device, byDevice.get(device) ?? [])
      .get(device)
      ?.push(id);
  return [...byDevice].map(([device, entries]) => {
    const ids = entries.sort();
    return bookFinding('device-clock-wrong', ids, { figures: { device, entries: ids.length } });
  });
}
