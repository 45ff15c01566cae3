/** Jobs that follow from stands, and the hours they ask for against the hands there are. */
import { type JobKind, type Skill, working } from '@leywright/book';
import type { Day, IsoWeek } from '@leywright/measures';

export type { JobKind, Skill } from '@leywright/book';

export const jobKinds = working.jobKinds;

/** What a job is done with. */
export const tools = [
  'bed-former',
  'boxes',
  'brush',
  'crates',
  'drill',
  'flail',
  'flame',
  'grader',
  'hand',
  'hand-hoe',
  'harrow',
  'hoe',
  'knife',
  'lifter',
  'mix',
  'mulch',
  'nets',
  'planter',
  'plough',
  'ridger',
  'seeder',
  'sprinklers',
  'stakes',
  'strings',
  'trailer',
  'trays',
  'van',
] as const;
export type Tool = (typeof tools)[number];

/** What a job waits for besides other jobs. */
export const waitings = [
  'fit-soil',
  'dry-day',
  'plants-ready',
  'pest-dates',
  'crop-stage',
  'rain-to-come',
  'water-need',
  'lawful-window',
  'nest-check',
] as const;
export type Waiting = (typeof waitings)[number];

export interface Job {
  readonly id: string;
  readonly kind: JobKind;
  readonly plot: string | null;
  readonly letter: string | null;
  readonly stand: string | null;
  readonly crop: string | null;
  readonly name: string;
  /** Course of its stand. */
  readonly course: string | null;
  /** Days it is meant for. */
  readonly from: Day;
  readonly to: Day;
  /** Days in which it may be done. */
  readonly window: { readonly from: Day; readonly to: Day };
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
  readonly tools: readonly Tool[];
  /** Who may do it: null = anyone. */
  readonly skill: Skill | null;
  /** Ids of the jobs that come first. */
  readonly after: readonly string[];
  readonly waitsFor: readonly Waiting[];
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
