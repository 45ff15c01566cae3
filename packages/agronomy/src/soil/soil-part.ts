/** What a part of the ground is and what is done on it: the soil run's input, in dated stands. */
import type { CanopyCurve } from '../cover/canopy-curve.ts';
import type { DilutionCurve } from '../nitrogen/critical-nitrogen.ts';
import type { MulchWay } from '../nitrogen/mulch-ammonia.ts';
import type { CoefficientCurve } from '../water/crop-coefficient.ts';
import type { SoilProfile } from './soil-profile.ts';

/** How a stand ends: sold and its residue left or worked in, all turned in, cut off and left (or killed), or never come to much. */
export const standEndings = ['sold', 'sold-residue-worked-in', 'turned-in', 'left', 'failed'] as const;
export type StandEnding = (typeof standEndings)[number];

/** What becomes of a ley's cut: left where it grew, or taken to another part. */
export const cutUses = ['left', 'taken'] as const;
export type CutUse = (typeof cutUses)[number];

export interface StandCut {
  readonly dayNumber: number;
  readonly use: CutUse;
}

/** What a crop, cover or ley is to the soil. `standFromTables` fills it from the reference tables. */
export interface StandHabit {
  readonly canopy: CanopyCurve;
  readonly checkDays: number;
  /** Basal coefficient at full cover; by stages of thermal time where they are known. */
  readonly fullKcb: number;
  readonly stagesKc: CoefficientCurve | null;
  /** Base of the stages and of growth. */
  readonly growthBaseC: number;
  /** Growth ends after so much warmth; null for what grows on. */
  readonly matureCd: number | null;
  /** What a day counts that is under ten hours long: 0 for leafy crops. */
  readonly shortDayShare: number;
  readonly heightM: number;
  readonly depletionFraction: number;
  readonly waterRootM: number;
  readonly nitrogenRootM: number;
  /** Warmth (above the growth base) until the roots are down. */
  readonly rootsDownCd: number;
  /** Shoot dry matter gained by full cover on a degree-day (t/ha). */
  readonly gainPerCdTHa: number;
  /** What it gains of that while its warmth is under `youngCd`: a ley in its first year. */
  readonly youngGainShare: number;
  readonly youngCd: number;
  readonly dilution: DilutionCurve;
  /** How much more than its critical content it stores where nitrate is plenty: 1 is none. */
  readonly storesRatio: number;
  /** Roots as shares of what the shoot has: mass and nitrogen. */
  readonly rootMassShare: number;
  readonly rootNShare: number;
  /** Share of the stand's nitrogen need that falls to legumes, and their usual share from the air. */
  readonly legumeShare: number;
  readonly airShare: number;
  /** What is carried off at harvest, as shares of shoot dry matter and nitrogen. */
  readonly soldMassShare: number;
  readonly soldNShare: number;
  /** The air that kills it; null for the hardy. */
  readonly frostKillC: number | null;
  /** Yield response to water, where published (FAO 33); null where not. */
  readonly yieldResponseFactor: number | null;
}

export interface SoilStand {
  readonly id: string;
  /** The day it has come up or is planted; and the first day it is no longer there. */
  readonly startDayNumber: number;
  readonly endDayNumber: number;
  readonly ending: StandEnding;
  readonly habit: StandHabit;
  /** Nitrogen in seed, tubers, sets or modules. */
  readonly seedNKgHa: number;
  /** Share of the stand that came up; 1 unless it was seen to fail. */
  readonly establishedShare: number;
  readonly cuts: readonly StandCut[];
  /** The ground is worked before it: what lies on the surface goes in. Not for what is undersown. */
  readonly groundWorked: boolean;
}

/** Compost, carried mulch and whatever else is brought on. */
export interface SoilBrought {
  readonly dayNumber: number;
  readonly nKgHa: number;
  readonly carbonKgHa: number;
  readonly way: MulchWay;
}

export type SoilIrrigation =
  | { readonly kind: 'none' }
  | { readonly kind: 'dated'; readonly amounts: readonly { readonly dayNumber: number; readonly waterMm: number }[] }
  /** The morning after the easy water of the first stand is gone, back to what leaves room for rain. */
  | { readonly kind: 'rule'; readonly roomForRainMm: number; readonly mostADayMm: number };

export interface SoilPart {
  readonly id: string;
  readonly profile: SoilProfile;
  readonly latDeg: number;
  readonly stands: readonly SoilStand[];
  readonly brought: readonly SoilBrought[];
  readonly irrigation: SoilIrrigation;
  /** Under plastic: no rain, 3 °C warmer (common practice). */
  readonly tunnel: boolean;
  readonly depositionKgHaYear: number;
  /** Mineral nitrogen in the whole profile on the first day, spread as farms find it: most near the top. */
  readonly startMineralNKgHa: number;
  /** Water on the first day: 1 is field capacity throughout, 0 the wilting point. */
  readonly startAvailableShare: number;
}

/** Weather by day; index 0 is `startDayNumber`. One set serves all parts of a farm. */
export interface SoilWeather {
  readonly startDayNumber: number;
  readonly dayCount: number;
  readonly tMaxC: Float64Array;
  readonly tMinC: Float64Array;
  readonly rainMm: Float64Array;
  readonly etoMm: Float64Array;
  /** 1 where the day is under ten hours long. */
  readonly shortDayCount: Uint8Array;
  readonly yearMeanC: number;
}
