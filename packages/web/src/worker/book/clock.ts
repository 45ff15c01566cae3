import { asDay, type Day } from '@leywright/measures';

/** Clock and chance of the worker, in one place so that tests can have their own. */
export interface Clock {
  /** The day on this machine. */
  readonly today: () => Day;
  /** UTC instant, ISO 8601. */
  readonly now: () => string;
  readonly random: (bytes: number) => Uint8Array;
}

export function ownClock(): Clock {
  return {
    today: () => {
      const now = new Date();
      const two = (number: number) => String(number).padStart(2, '0');
      return asDay(`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`);
    },
    now: () => new Date().toISOString(),
    random: (bytes) => crypto.getRandomValues(new Uint8Array(bytes)),
  };
}
