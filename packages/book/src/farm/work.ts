/** How this farm works: which jobs it does and how long they take it, when its people are away, what seed it has, is offered and may use. */
import type { Day, PersonId } from '@leywright/measures';

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
  'false-seedbed',
  'sow-seedbed',
  'prick-out',
  'tend-plants',
  'harden-off',
  'chit',
  'lay-mulch',
  'flame',
  'brush',
  'ridge',
  'irrigate',
  'stake',
  'train',
  'top',
  'haulm-off',
  'into-store',
  'grade',
  'cut-hedge',
  'mow-margin',
] as const;
export type JobKind = (typeof jobKinds)[number];

/** What not everyone may or can do. */
export const skills = ['tractor', 'flame', 'driving'] as const;
export type Skill = (typeof skills)[number];

/** How this farm does a job, for one plant or for all; it stands over the tables. */
export interface OwnJob {
  /** A crop or cover; null = all. A row of its own plant wins over one for all. */
  readonly what: string | null;
  readonly job: JobKind;
  /** False: this farm does not do it. True also brings in what few farms do, such as mulch or a brush weeder. */
  readonly done: boolean;
  /** Hours of all hands a hectare each time; null = the table's. */
  readonly hoursPerHa: number | null;
  /** How often in a season; null = the table's. */
  readonly times: number | null;
  /** Days it may wait; null = the usual ones. */
  readonly windowDays: number | null;
}

/** Days on which somebody is not there, both inclusive. */
export interface Absence {
  readonly person: PersonId;
  readonly from: Day;
  readonly to: Day;
  readonly why: string | null;
}

export const seedStatuses = ['organic', 'in-conversion', 'untreated', 'own', 'unknown'] as const;
export type SeedStatus = (typeof seedStatuses)[number];

/** Seed, sets or tubers that lie here. */
export interface SeedLot {
  readonly lot: string;
  /** A crop or cover. */
  readonly what: string;
  readonly variety: string | null;
  readonly massKg: number | null;
  readonly seeds: number | null;
  /** Share that came up in its last test. */
  readonly germinationShare: number | null;
  readonly testedOn: Day | null;
  readonly harvestYear: number | null;
  readonly status: SeedStatus;
  /** Where its certificate or label is kept. */
  readonly proof: string | null;
}

/** What a supplier offers. */
export interface SeedOffer {
  readonly id: string;
  readonly what: string;
  readonly variety: string | null;
  readonly supplier: string;
  readonly status: SeedStatus;
  readonly packKg: number | null;
  readonly packSeeds: number | null;
  /** False: sold out, or not to be had. */
  readonly available: boolean;
  readonly seenOn: Day | null;
}

/** A derogation, authorisation or documented search for seed that is not organic. */
export interface SeedAuthorisation {
  readonly id: string;
  readonly what: string;
  readonly variety: string | null;
  readonly askedOn: Day | null;
  readonly grantedOn: Day | null;
  readonly until: Day | null;
  readonly reason: string | null;
  /** Number and where the paper is kept. */
  readonly proof: string | null;
}
