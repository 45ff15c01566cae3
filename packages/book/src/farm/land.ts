/**
 * Land as the farm knows it: field (what law measures) → plot (what rotates) → part (what a stand occupies).
 *
 * A plot is read from side to side, across its beds, as the stretch 0..1. Everything that lies on part of a plot (half a
 * plot, beds 3 to 5, a strip of parsnips beside the carrots) is a `Span` of that stretch, so overlap is one subtraction.
 */
import type { CourseId, Day, FieldId, PartId, PlotId } from '@leywright/measures';

/** Shares of a plot's width, 0 ≤ from < to ≤ 1. */
export interface Span {
  readonly fromShare: number;
  readonly toShare: number;
}

export const wholePlot: Span = { fromShare: 0, toShare: 1 };

export interface Field {
  readonly id: FieldId;
  readonly name: string;
  /** What the law measures; null = not known. Used for the two-hectare limit of the hedge buffer. */
  readonly areaM2: number | null;
  /** Whether its hedges are five years old or more, where the rule asks; null = not known. */
  readonly hedgesOver5Years: boolean | null;
}

export const plotKinds = ['rotation', 'tunnel', 'permanent'] as const;
export type PlotKind = (typeof plotKinds)[number];

export interface Plot {
  readonly id: PlotId;
  /** Shown large in pictures; never used in a sentence. */
  readonly letter: string;
  readonly name: string;
  readonly field: FieldId | null;
  readonly kind: PlotKind;
  /** To the boundary, hedge centre included. From geometry when there is one and no figure was typed. */
  readonly grossM2: number;
  readonly measuredBy: 'typed' | 'geometry';
  /** Boundary that runs along a hedge's centre. */
  readonly hedgeM: number;
  readonly bankM2: number;
  /** Share of what is left after buffer and bank that goes to headlands and bed ends; null = the farm's own convention. */
  readonly headlandShare: number | null;
  readonly soil: string | null;
  readonly bedCentresM: number | null;
  readonly bedCount: number | null;
  /** The course this plot is on in the rotation's first year; null = outside the rotation. */
  readonly courseAtStart: CourseId | null;
  /** First day this plot is part of the farm; null = before all records. */
  readonly from: Day | null;
  /** First day it is no longer; archived, never deleted. */
  readonly to: Day | null;
  readonly status: 'organic' | 'in-conversion' | 'unknown';
  readonly statusSince: Day | null;
  /** Outer ring in degrees [lon, lat], closed; null = no map. */
  readonly ring: readonly (readonly [number, number])[] | null;
}

/** Where a part's ground came from, by share of its area. */
export interface PartParent {
  readonly plot: PlotId;
  readonly span: Span;
  /** Share of the new part's area that lies on the parent. */
  readonly share: number;
}

/**
 * A piece of a plot between two days. Plots that were never divided need none. Splits, merges, a boundary moved between
 * plots and a mistake found late are all this: records from before `from` come to the part through its parents, by share.
 */
export interface Part {
  readonly id: PartId;
  readonly plot: PlotId;
  readonly span: Span;
  readonly from: Day;
  readonly to: Day | null;
  readonly parents: readonly PartParent[];
  readonly why: string | null;
}

export const featureKinds = ['hedge', 'beetle-bank', 'margin', 'windbreak', 'pond', 'trees'] as const;
export type FeatureKind = (typeof featureKinds)[number];

export interface Feature {
  readonly id: string;
  readonly kind: FeatureKind;
  readonly name: string;
  readonly lengthM: number | null;
  readonly areaM2: number | null;
  readonly line: readonly (readonly [number, number])[] | null;
}

/** An organism recorded on ground: from that day its longer rest applies there. */
export interface OrganismMark {
  readonly organism: string;
  readonly plot: PlotId;
  readonly span: Span;
  readonly foundOn: Day;
  readonly clearedOn: Day | null;
  readonly note: string | null;
}

export interface SoilSample {
  readonly plot: PlotId;
  readonly takenOn: Day;
  readonly method: string;
  readonly ph: number | null;
  readonly pMgL: number | null;
  readonly kMgL: number | null;
  readonly mgMgL: number | null;
  readonly organicMatterPct: number | null;
}
