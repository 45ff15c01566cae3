/** What every route works with. The clock and chance are made once, in `main.ts`, and handed in. */
import type { Day } from '@leywright/measures';
import type { Store } from '@leywright/store';
import type { FarmShelf } from '../farm/shelf.ts';
import type { Plans } from '../plans/kept-plans.ts';

export interface Clock {
  readonly today: () => Day;
  /** Whether the day was given, and does not follow the machine's clock. */
  readonly isDaySaid: boolean;
  /** UTC instant, ISO 8601. */
  readonly now: () => string;
}

export interface Desk {
  readonly store: Store;
  readonly shelf: FarmShelf;
  readonly plans: Plans;
  readonly clock: Clock;
  /** Chance, for ids and for the secret of each body's digest. */
  readonly random: (bytes: number) => Uint8Array;
  readonly version: string;
}

export function hexOf(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString('hex');
}
