/** The odds that the promise is kept: what they say of each week, of the whole year, and of what holds the worst weeks up. */
import type { IsoWeek } from '@leywright/measures';

/** A chance that was counted, and how far the count may be off. */
export interface CountedOdds {
  readonly keptShare: number;
  /** sqrt(P (1 - P) / n). */
  readonly standardErrorShare: number;
  /** Wilson's interval at 95 %. */
  readonly lowShare: number;
  readonly highShare: number;
}

export interface WeekOdds extends CountedOdds {
  readonly week: IsoWeek;
  /** Items an average box is promised. */
  readonly promised: number;
  /** Items in an average box: 8 years out of 10 fall between low and high. */
  readonly items: { readonly low: number; readonly mid: number; readonly high: number };
  /** What most often lacks in this week, the most frequent first. */
  readonly heldUpBy: readonly SlotLack[];
}

export interface SlotLack {
  readonly slot: string;
  readonly crops: readonly string[];
  /** Share of the years in which more than one box in fifty goes without it this week. */
  readonly yearsShare: number;
}

export interface BoxOdds {
  readonly seed: number;
  readonly samples: number;
  /** Items a box may lack, as a share of those promised, and the promise still be kept. */
  readonly toleratedShare: number;
  readonly weeks: readonly WeekOdds[];
  /** Weeks missed in a year, counted year by year and never multiplied. */
  readonly missedWeeks: {
    readonly mean: number;
    readonly low: number;
    readonly mid: number;
    readonly high: number;
    /** Share of the years with this many weeks missed, from none on. */
    readonly yearsShare: readonly number[];
  };
  readonly allKept: CountedOdds;
  readonly atMostTwoMissed: CountedOdds;
}
