/** Jobs that follow from stands, and the hours they ask for against the hands there are. */
import type { Day, IsoWeek } from '@leywright/measures';

export const jobKinds = [
  'sow',
  'sow-modules',
  'plant',
  'hoe',
  'hand-weed',
  'net',
  'unnet',
  'undersow',
  'lift',
  'cut',
  'turn-in',
  'mow',
  'sow-cover',
  'make-beds',
  'pack',
  'deliver',
  'whole-course',
] as const;
export type JobKind = (typeof jobKinds)[number];

export interface Job {
  readonly id: string;
  readonly kind: JobKind;
  readonly plot: string | null;
  readonly letter: string | null;
  readonly stand: string | null;
  readonly crop: string | null;
  readonly name: string;
  readonly from: Day;
  readonly to: Day;
  readonly week: IsoWeek;
  readonly areaM2: number | null;
  readonly rowM: number | null;
  readonly amount: number | null;
  readonly amountUnit: 'kg' | 'plants' | 'g' | 'trays' | 'boxes' | 'seeds' | null;
  readonly hours: { readonly low: number; readonly typ: number; readonly high: number };
  /** Row of the labour or weeding table. */
  readonly basis: string;
  readonly doneShare: number;
  readonly caution: string | null;
}

export interface WorkWeek {
  readonly week: IsoWeek;
  readonly hours: { readonly low: number; readonly typ: number; readonly high: number };
  readonly handsH: number | null;
  readonly byKind: Readonly<Partial<Record<JobKind, number>>>;
  readonly why: string;
}

export interface Work {
  readonly year: number;
  readonly jobs: readonly Job[];
  readonly weeks: readonly WorkWeek[];
  readonly yearH: number;
}
