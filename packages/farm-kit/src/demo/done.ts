import type { EntryBody } from '@leywright/book';
import type { Day } from '@leywright/measures';

/** Something done on a day, before it is given to a person and a device. */
export interface Done {
  readonly on: Day;
  readonly body: EntryBody;
  /** Key by which a correction names it. */
  readonly key?: string;
  readonly amends?: string;
  readonly reason?: string;
  /** Days until it was typed in. */
  readonly lateDays?: number;
}
