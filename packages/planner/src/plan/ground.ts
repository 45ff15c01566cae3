/** What stands where and how well the ground is covered. Dates are days; weeks are counted from the plan's first Monday. */

import type { PlotKind, Span, StandEnd, StandKind, StandState } from '@leywright/book';
import type { Day } from '@leywright/measures';

/** Groups a picture draws alike: by botanical family for crops, by purpose for ground that feeds itself. */
export const looks = [
  'ley',
  'cover',
  'undersown',
  'potato',
  'brassica',
  'allium',
  'root',
  'beet',
  'squash',
  'salad',
  'pulse',
] as const;
export type Look = (typeof looks)[number];

export interface NetArea {
  readonly grossM2: number;
  readonly bufferM2: number;
  readonly bufferBy: 'law' | 'own-policy' | 'none' | 'unknown';
  readonly bankM2: number;
  readonly headlandM2: number;
  readonly netM2: number;
  /** Figure id. */
  readonly why: string;
}

export interface PlacedStand {
  readonly id: string;
  readonly succession: string | null;
  readonly plot: string;
  readonly span: Span;
  readonly areaM2: number;
  readonly what: string;
  readonly kind: StandKind;
  readonly look: Look;
  readonly family: string | null;
  readonly name: string;
  readonly variety: string | null;
  readonly state: StandState;
  /** Laid out from the rotation, or said by the grower. */
  readonly origin: 'rotation' | 'said' | 'recorded';
  readonly from: Day;
  readonly to: Day;
  readonly sownOn: Day | null;
  readonly plantedOn: Day | null;
  /** Days of first and last harvest as planned or recorded; null for covers and leys. */
  readonly harvestFrom: Day | null;
  readonly harvestTo: Day | null;
  /** Moved from what was planned, in days; 0 = as planned. */
  readonly driftDays: number;
  readonly undersownIn: string | null;
  readonly course: string | null;
  readonly courseYear: number | null;
  readonly endedBy: StandEnd | null;
  readonly establishedShare: number | null;
  readonly reason: string | null;
  /** Cover share of its own ground at each week from `coverFromWeek`. */
  readonly coverFromWeek: number;
  readonly coverShare: readonly number[];
  readonly coverBasis: 'published' | 'common-practice' | 'derived' | 'unknown';
}

/** Ground under the bare limit for longer than the farm's limit. */
export interface BareSpell {
  readonly plot: string;
  readonly span: Span;
  readonly from: Day;
  readonly to: Day;
  readonly days: number;
  /** Days of it inside the leaching season. */
  readonly leachingDays: number;
  readonly areaM2: number;
  readonly before: string | null;
  readonly after: string | null;
  /** Past, answered by a reason in the book. */
  readonly answered: string | null;
}

/** One return of a host to ground that carried one before. */
export interface Visit {
  readonly rule: string;
  readonly ruleName: string;
  readonly scope: 'family' | 'organism' | 'own';
  readonly plot: string;
  readonly stand: string;
  readonly year: number;
  readonly previous: string;
  readonly previousName: string;
  readonly previousYear: number;
  readonly gapYears: number;
  readonly needYears: number;
  readonly force: 'hard' | 'warn' | 'info';
  readonly infested: boolean;
  readonly earliestYear: number;
  /** Share of the later stand's ground that carried the earlier one. */
  readonly sharedShare: number;
  readonly kept: boolean;
  readonly why: string;
}

export interface BareCount {
  readonly plot: string;
  /** Winter named by the year it ends in. */
  readonly winter: number;
  /** Area-weighted days under the bare limit inside the leaching season. */
  readonly bareDays: number;
}

export interface PlotGround {
  readonly plot: string;
  readonly letter: string;
  readonly name: string;
  readonly kind: PlotKind;
  readonly area: NetArea;
  readonly soil: string | null;
  readonly courses: readonly { readonly year: number; readonly course: string; readonly name: string }[];
  readonly stands: readonly PlacedStand[];
  /** Share of the plot's net ground under living cover, per week of the plan, stands combined as 1 - product(1 - c). */
  readonly coverShare: readonly number[];
  readonly bare: readonly BareSpell[];
  readonly bareCounts: readonly BareCount[];
  readonly visits: readonly Visit[];
  readonly findings: readonly import('./finding.ts').Finding[];
}
