/** The sentence a farm begins with: "We have 6 plots, 5.2 ha, near Taastrup; we promise 7 items to 260 households, 49 weeks." */
import type { Day } from '@leywright/measures';

export interface FirstSentence {
  readonly name: string | null;
  readonly plots: number;
  /** All plots together, to their boundaries. */
  readonly areaHa: number;
  /** Plot by plot, where they are known; their sum then counts, not `areaHa`. */
  readonly plotAreasHa: readonly number[] | null;
  readonly near: string | null;
  /** South is negative. Typed degrees count before the name of a place. */
  readonly latDeg: number | null;
  readonly lonDeg: number | null;
  readonly items: number;
  readonly households: number;
  readonly weeks: number;
}

export interface FirstProblem {
  readonly code: 'not-as-asked' | 'place-unknown';
  readonly field: keyof FirstSentence;
  readonly found: string | null;
  readonly figures: Readonly<Record<string, string | number>>;
}

/** What the builder must be told besides: it knows no clock and makes no names. */
export interface FirstStamp {
  readonly id: string;
  readonly today: Day;
}
