/** What the odds are worked from: lots, stores and slots of a supply run, laid out once so that hundreds of years can be run through them. */
import type { IsoWeek } from '@leywright/measures';

export interface SeasonLot {
  readonly stand: string;
  readonly under: 'field' | 'tunnel';
  readonly harvestYear: number;
  readonly toComeKg: number;
  readonly readyWeek: number;
  readonly readyShare: readonly number[];
  readonly standingWeeks: number;
  readonly lastWeek: number;
  readonly recorded: readonly { readonly week: number; readonly kg: number; readonly into: string }[];
  /** Week from which warmth counts, and the base above which it does. */
  readonly growsFromWeek: number;
  readonly baseC: number;
  /** Warmth it still needs from the first open week, or from when it begins to grow, to its planned week. */
  readonly wantedCd: number;
  /** How far warmth moves it: 1 for crops that ripen by warmth, a half for those that follow day length or cold, and half of that in a tunnel. */
  readonly warmthShare: number;
  /** Deviation of the logarithm of its yield. */
  readonly yieldSd: number;
  readonly standSeed: number;
}

export interface SeasonCrop {
  readonly id: string;
  readonly name: string;
  readonly cropSeed: number;
  readonly lots: readonly SeasonLot[];
  readonly keeps: SeasonKeeping | null;
  readonly weighings: readonly { readonly week: number; readonly kg: number }[];
}

export interface SeasonKeeping {
  /** By week: share of the opening stock lost, typical, and when it keeps badly (8 years out of 10 lose less) or well. */
  readonly lossShare: Float64Array;
  readonly lossShareWorst: Float64Array;
  readonly lossShareBest: Float64Array;
  readonly lifeWeeks: number | null;
  readonly lifeWeeksWorst: number | null;
  readonly lifeWeeksBest: number | null;
}

export interface SeasonSlot {
  readonly id: string;
  /** 1 in the weeks it is due. */
  readonly dueWeeks: Uint8Array;
  readonly boxesShare: number;
  /** Crops in their order, with the kilos a full slot draws of each. */
  readonly offers: readonly { readonly cropIndex: number; readonly drawKg: number }[];
}

export interface Season {
  readonly weeks: number;
  /** First week of the year in focus; odds are told from it on. */
  readonly fromWeek: number;
  /** First week whose weather and yields are not yet known. */
  readonly openWeek: number;
  readonly names: readonly IsoWeek[];
  /** Week has a box. */
  readonly isOpen: readonly boolean[];
  readonly crops: readonly SeasonCrop[];
  readonly slots: readonly SeasonSlot[];
  /** Usual mean temperature of each week. */
  readonly meanC: Float64Array;
  readonly itemsPerBox: number | null;
}

/** One year as it may turn out. */
export interface SeasonDraw {
  /** Warmer than usual by so much, by week. */
  readonly warmerC: Float64Array;
  /** What a lot yields of what is expected of it. */
  readonly yieldFactor: (crop: SeasonCrop, lot: SeasonLot) => number;
  /** How well a crop keeps: 0 as usual, 1.28 as well as the table's best, -1.28 as badly as its worst. */
  readonly keepScore: (crop: SeasonCrop) => number;
}
