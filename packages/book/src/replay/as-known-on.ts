import type { Day } from '@leywright/measures';
import { Temporal } from 'temporal-polyfill';
import type { ReceivedEntry } from '../entry/entry.ts';
import { instantMs } from '../entry/instant.ts';

/**
 * The entries that the book had received by the end of a day, in the farm's own zone (IANA, as Europe/London): what an inspector could have been
 * shown that evening. Replay them to see the farm as it was known.
 */
export function asKnownOn(entries: readonly ReceivedEntry[], day: Day, timeZone = 'UTC'): ReceivedEntry[] {
  const nextMidnightMs = Temporal.PlainDate.from(day).add({ days: 1 }).toZonedDateTime(timeZone).epochMilliseconds;
  return entries.filter((entry) => instantMs(entry.receivedAt) < nextMidnightMs);
}
