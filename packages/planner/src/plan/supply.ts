/** From the promise to ground, harvest, store and boxes; and from the ground back to households. */

import type { SaleUnit } from '@leywright/book';
import type { Day, IsoWeek } from '@leywright/measures';
import type { Look } from './ground.ts';

/** One step of the chain; each divides what is wanted by what it keeps. */
export interface Keep {
  readonly step: 'packing' | 'store' | 'grading';
  readonly keepShare: number;
  readonly source: string;
}

/** What one crop needs in one box year: the runs of its slots' windows that begin in that year, whole. */
export interface CropNeed {
  readonly crop: string;
  readonly name: string;
  readonly look: Look;
  readonly unit: SaleUnit;
  readonly boxWeeks: number;
  /** In the crop's own unit, and in kilos. */
  readonly demandUnits: number;
  /** Null where the farm says only how much ground a household needs and no yield is known. */
  readonly demandKg: number | null;
  readonly keeps: readonly Keep[];
  readonly keepShare: number;
  readonly liftKg: number | null;
  readonly yieldKgM2: number | null;
  readonly yieldBasis: 'own' | 'reference' | 'unknown';
  readonly needM2: number | null;
  readonly rowM: number | null;
  readonly stations: number | null;
  readonly seedsPerM: number | null;
  readonly seeds: number | null;
  readonly seedsWithMargin: number | null;
  readonly seedKg: number | null;
  readonly setKg: number | null;
  readonly packs: number | null;
  readonly trays: number | null;
  /** Season whose stands have to bring it. */
  readonly harvestYear: number;
  /** Ground the plan gives it in that season, and the plots. */
  readonly plannedM2: number;
  readonly plots: readonly string[];
  readonly why: { readonly area: string; readonly seed: string };
}

export interface StandHarvest {
  readonly stand: string;
  readonly crop: string;
  readonly plot: string;
  readonly from: Day;
  readonly to: Day;
  /** Marketable kilos expected, low / typical / high. */
  readonly kg: { readonly low: number; readonly typ: number; readonly high: number };
  readonly recordedKg: number | null;
  readonly basis: 'own' | 'reference' | 'recorded' | 'unknown';
  /** Kilos cut for boxes and store, by plan week index from `fromWeek`. */
  readonly fromWeek: number;
  readonly weekKg: readonly number[];
  /** Ready and not cut: nobody wanted it and no store takes it, or the stand's end came first. */
  readonly uncutKg: number;
  readonly uncutWhy: 'stand-ended' | 'stood-too-long' | null;
}

export interface StoreWeek {
  readonly week: IsoWeek;
  readonly openKg: number;
  readonly inKg: number;
  readonly lossKg: number;
  readonly outKg: number;
  readonly closeKg: number;
}

export interface StoreRun {
  readonly crop: string;
  readonly name: string;
  readonly store: string | null;
  /** Season whose harvest lies there. */
  readonly harvestYear: number;
  readonly weeks: readonly StoreWeek[];
  readonly intoStoreKg: number;
  readonly lossKg: number;
  readonly fullWeeks: number;
  readonly lastFullWeek: IsoWeek | null;
  readonly firstShortWeek: { readonly week: IsoWeek; readonly stockKg: number; readonly boxesShare: number } | null;
  /** Weeks promised from the first short one to the end of the slot or the next fresh harvest. */
  readonly gapWeeks: number;
  readonly lossBasis: 'own' | 'reference';
  readonly why: string;
}

export interface BoxItem {
  readonly slot: string;
  readonly crop: string;
  readonly name: string;
  readonly look: Look;
  readonly from: 'field' | 'tunnel' | 'store';
  readonly plots: readonly string[];
  /** Share of that week's boxes that carry it, 0..1. */
  readonly boxesShare: number;
  readonly kg: number;
  /** Portion by size id in `unit`. */
  readonly portions: Readonly<Record<string, number>>;
  readonly unit: SaleUnit;
}

export interface BoxWeek {
  readonly week: IsoWeek;
  readonly weekIndex: number;
  readonly packOn: Day | null;
  /** null = a week with a box; else why there is none. */
  readonly closed: 'closed' | 'outside' | null;
  readonly boxes: number;
  readonly promised: number;
  readonly items: readonly BoxItem[];
  /** Slots that nothing fills, with the share of boxes left without. */
  readonly missing: readonly {
    readonly slot: string;
    readonly crops: readonly string[];
    readonly boxesShare: number;
  }[];
  readonly itemsPerBox: number;
  readonly shortItems: number;
  readonly low: number;
  readonly high: number;
  readonly why: string;
}

export interface CourseReach {
  readonly course: string;
  readonly plot: string | null;
  readonly netM2: number;
  readonly m2Household: number;
  /** null = nothing of it is promised, so it binds nobody. */
  readonly households: number | null;
}

export interface ReachYear {
  readonly year: number;
  readonly courses: readonly CourseReach[];
  readonly households: number | null;
  readonly binding: string | null;
}

export interface Reach {
  readonly years: readonly ReachYear[];
  readonly byLand: {
    readonly households: number;
    readonly year: number;
    readonly course: string;
    readonly plot: string | null;
  } | null;
  readonly bestYear: number | null;
  readonly hours: {
    readonly fieldH: number;
    readonly packingH: number;
    readonly deliveryH: number;
    readonly totalH: number;
    readonly availableH: number;
  } | null;
  readonly byLabour: number | null;
  readonly households: number | null;
  readonly binding: 'land' | 'labour' | 'unknown';
  readonly why: string;
}

export interface Supply {
  readonly year: number;
  readonly boxWeeks: number;
  readonly households: number;
  readonly needs: readonly CropNeed[];
  readonly harvests: readonly StandHarvest[];
  readonly stores: readonly StoreRun[];
  readonly boxes: readonly BoxWeek[];
  readonly hungryGap: { readonly from: IsoWeek; readonly to: IsoWeek } | null;
  readonly reach: Reach | null;
}
