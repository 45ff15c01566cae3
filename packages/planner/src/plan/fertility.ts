/** The slow side of a plot's fertility: phosphate, potash, lime, humus and the topsoil's carbon, each against the farm's own soil samples. */
import type { Day } from '@leywright/measures';
import type { Range } from './soil.ts';

/** A soil sample's figure with the index of its method; null where the method has none. */
export interface SampledFigure {
  readonly takenOn: Day;
  readonly method: string;
  readonly amountMgL: number;
  readonly index: string | null;
}

/** Phosphorus or potassium of a plot. What leaves is given as oxide, what a sample shows as element: the two are never added. */
export interface NutrientAccount {
  readonly nutrient: 'phosphorus' | 'potassium';
  /** P2O5 or K2O that leaves with what is sold, a year on the mean of the plan's years. */
  readonly offtakeOxideKgHa: Range;
  /** The same as the element itself, P or K. */
  readonly offtakeElementKgHa: Range;
  /** By one method, the last sample's; figures by other methods lie in no line with them. */
  readonly samples: readonly SampledFigure[];
  readonly otherMethods: number;
  /** Through the samples, with the doubt of a line through so few; null for fewer than two. */
  readonly slopeSampledMgLPerYear: Range | null;
  /** What the off-take alone would do, nothing brought in. */
  readonly slopeReckonedMgLPerYear: Range;
  readonly targetIndex: string;
  readonly targetMgL: number;
  /** Years from the last sample until the figure meets the target; null for never or not within reach of the doubt. */
  readonly untilTarget: {
    readonly soonestYears: number | null;
    readonly likelyYears: number | null;
    readonly latestYears: number | null;
  } | null;
  /** To add a year over the off-take while the index is under 2. */
  readonly buildUpOxideKgHa: number | null;
  readonly doubt: readonly string[];
  readonly why: string;
}

/** Acidity of a plot and the ground limestone it needs. */
export interface LimeAccount {
  readonly takenOn: Day;
  readonly ph: number;
  readonly targetPh: number;
  /** On the plan's day, no lime given since the sample. */
  readonly phNow: Range;
  readonly needTHa: { readonly low: number; readonly typ: number; readonly high: number } | null;
  readonly cautions: readonly string[];
  readonly doubt: readonly string[];
  readonly why: string;
}

/** A small nutrient that may run short under a crop. A warning, never a dose. */
export interface ShortageCaution {
  readonly risk: string;
  readonly stand: string;
  readonly name: string;
  readonly year: number;
}

/** The index of humus used up and brought, a year on the mean of the plan's years. Stands beside the carbon and is never added to it. */
export interface HumusAccount {
  readonly balanceKgCHa: number;
  readonly aimKgCHa: Range;
  /** Share of the ground's crops for which the method has no figure. */
  readonly unknownShare: number;
  readonly doubt: readonly string[];
  readonly why: string;
}

/** Carbon of the topsoil (t/ha to 23 cm) at the end of each year, from the last sample of organic matter on. */
export interface CarbonAccount {
  readonly takenOn: Day;
  readonly stockTHa: number;
  readonly years: readonly { readonly year: number; readonly stockTHa: Range & { readonly typ: number } }[];
  readonly doubt: readonly string[];
  readonly why: string;
}

export interface PlotFertility {
  readonly plot: string;
  readonly phosphorus: NutrientAccount;
  readonly potassium: NutrientAccount;
  readonly lime: LimeAccount | null;
  readonly magnesium: SampledFigure | null;
  readonly cautions: readonly ShortageCaution[];
  readonly humus: HumusAccount | null;
  readonly carbon: CarbonAccount | null;
}
