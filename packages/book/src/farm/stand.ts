/** A stand: one living occupation of part of a plot between two days; and the rotation that proposes stands. */
import type { CourseId, CropId, Day, MonthDay, PlotId, StandId, SuccessionId } from '@leywright/measures';
import type { Span } from './land.ts';

export const standKinds = ['crop', 'cover', 'ley'] as const;
export type StandKind = (typeof standKinds)[number];

export const standStates = ['pencil', 'agreed', 'recorded'] as const;
export type StandState = (typeof standStates)[number];

export const standEnds = ['lifted', 'turned-in', 'cut', 'frost-killed', 'failed', 'lost'] as const;
export type StandEnd = (typeof standEnds)[number];

export interface Stand {
  readonly id: StandId;
  readonly succession: SuccessionId | null;
  readonly plot: PlotId;
  readonly span: Span;
  /** What stands there: a crop id (own or reference) or a cover id, by `kind`. */
  readonly what: string;
  readonly kind: StandKind;
  readonly variety: string | null;
  readonly state: StandState;
  /** Day sown in the field (or in modules, when `plantedOn` is given too). */
  readonly sownOn: Day | null;
  readonly plantedOn: Day | null;
  /** First day it holds its ground: field sowing or planting, or the day it was undersown. */
  readonly from: Day;
  /** First day the ground is free again. Half-open: [from, to). */
  readonly to: Day;
  /** What was planned, kept when a record moved the stand; left out while nothing has moved it. */
  readonly plannedFrom?: Day;
  readonly plannedTo?: Day;
  readonly undersownIn: StandId | null;
  readonly course: CourseId | null;
  readonly courseYear: number | null;
  /** Share of the stand that took (0..1); null = not looked at. */
  readonly establishedShare: number | null;
  readonly endedBy: StandEnd | null;
  /** Why a broken rule was accepted; shown, never hides the finding. */
  readonly reason: string | null;
  /** Own yield figure for this stand, marketable t/ha; null = the crop's. */
  readonly yieldTHa: number | null;
}

/** What one course puts on its plot, as months and days from the course's year. */
export interface CourseStand {
  readonly key: string;
  readonly what: string;
  readonly kind: StandKind;
  readonly variety: string | null;
  readonly span: Span;
  readonly sow: MonthDay | null;
  readonly plant: MonthDay | null;
  /** Years from the course's year to the day it takes its ground, and to the day it leaves it. */
  readonly startYearOffset: number;
  readonly end: MonthDay;
  readonly endYearOffset: number;
  /** Key of the stand of the same course it is sown into. */
  readonly undersownIn: string | null;
}

export interface Course {
  readonly id: CourseId;
  readonly name: string;
  readonly stands: readonly CourseStand[];
  /** Field hours per hectare, when the farm counts by course instead of by job; null = by job. */
  readonly hoursPerHa: number | null;
  /** Whether those hours grow with the households fed, or with the course's ground. */
  readonly hoursFollow: 'need' | 'ground';
}

/** A plot's course in one year, where it is another than the order brings. */
export interface CoursePlacement {
  readonly plot: PlotId;
  readonly year: number;
  /** Null: outside the rotation in that year, because what stands there stays, or the land is not ours. */
  readonly course: CourseId | null;
  readonly state: 'pencil' | 'agreed';
  /** Why a broken rule was accepted; null when none is. */
  readonly reason: string | null;
}

/** Courses in order; each year every plot moves one course on, but where a placement says otherwise. */
export interface Rotation {
  readonly firstYear: number;
  readonly courses: readonly Course[];
  readonly state: 'pencil' | 'agreed';
  readonly agreedOn: Day | null;
  /** By plot and year; left out while the order alone holds. */
  readonly placed?: readonly CoursePlacement[];
}

/** An own rest, over or beside the reference: years between two plantings of what it names. */
export interface OwnRest {
  readonly id: string;
  readonly name: string;
  /** A family, or crop and cover ids: what counts as a host. */
  readonly family: string | null;
  readonly hosts: readonly string[];
  readonly years: number;
  readonly force: 'hard' | 'warn' | 'info';
  readonly countsCovers: boolean;
  readonly countsUndersown: boolean;
}

/** A crop of the farm's own, or its own figures over a reference crop. Null = the reference's figure (or not known). */
export interface OwnCrop {
  readonly id: CropId;
  readonly basedOn: CropId | null;
  readonly name: string | null;
  readonly family: string | null;
  readonly variety: string | null;
  readonly unit: 'kg' | 'head' | 'bunch' | null;
  readonly unitKg: number | null;
  /** Three ways to say a yield; at most one is given. Gross = lifted, before grading; packed = net, as it leaves in a box. */
  readonly yieldGrossTHa: number | null;
  readonly yieldMarketableTHa: number | null;
  readonly yieldPackedTHa: number | null;
  readonly gradingLossShare: number | null;
  readonly packingLossShare: number | null;
  /** Loss over the whole time in store, when the farm knows only that. */
  readonly storeLossTotalShare: number | null;
  readonly bedCentresM: number | null;
  readonly rowsPerBed: number | null;
  readonly plantsPerRowM: number | null;
  readonly germinationShare: number | null;
  readonly fieldFactorShare: number | null;
  readonly thousandSeedG: number | null;
  readonly seedMarginShare: number | null;
  readonly packSeeds: number | null;
  readonly hoursPerHa: number | null;
}
