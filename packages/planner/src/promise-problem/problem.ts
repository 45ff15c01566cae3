/**
 * What the promise planner is asked: crops and the successions they may be sown in, what the boxes promise week by week, and the ground,
 * stores and hands there are.
 *
 * Terms   A succession is one sowing of a crop: when it takes up its ground, and how much of it becomes ready in each week of its harvest. A
 *         slot is a kind of crop the box promises so many kilos of. The ground of a succession is that of a course, or the tunnels.
 * Holds   weeks are counted from 0; when the year is cyclic, the week after the last is the first again.
 */

export interface PromiseCrop {
  readonly id: string;
  /** Kind of crop the box promises so much of. */
  readonly slot: string;
  /** Course whose ground it stands on, or the tunnels. */
  readonly ground: string;
  /** What a box that carries the crop has of it. */
  readonly portionLeastKg: number;
  readonly portionMostKg: number;
  /** In the farm's money; 1 where no prices are given. */
  readonly worthPerKg: number;
  /** No box has it more weeks running than this. */
  readonly mostRunWeeks: number;
  /** Null for a crop that is not put into store. */
  readonly store: CropStore | null;
  readonly harvestHoursPerKg: number;
  /** How well it is liked in each week, from 0 to 1. */
  readonly likedShare: readonly number[];
  /** In store before the first week; only where the year is not cyclic. */
  readonly openingStoreKg: number;
}

export interface CropStore {
  readonly kind: string;
  /** Of what lay there, in a week. */
  readonly lossShare: number;
}

export interface PromiseSuccession {
  readonly id: string;
  /** Place in the list of crops. */
  readonly cropIndex: number;
  readonly sowWeek: number;
  readonly groundFromWeek: number;
  readonly harvestFromWeek: number;
  /** What becomes ready in each week of its harvest; it holds its ground to the last of them. */
  readonly readyKgM2: readonly number[];
  /** Of what stands ready at the end of a week, what is still good in the next. */
  readonly keepShare: number;
  readonly costPerM2: number;
  readonly plantHoursPerM2: number;
  /** Ground comes in beds of this size where plans are to be in whole beds. */
  readonly bedM2: number;
  /** Fewest beds when any is sown. */
  readonly leastBeds: number;
  /** Pinned by the grower, or already sown; null leaves it free. */
  readonly pinnedM2: number | null;
}

export interface PromiseSlot {
  readonly id: string;
  /** By week. */
  readonly needKgHousehold: readonly number[];
}

export interface BoxLimits {
  readonly leastKg: number;
  readonly mostKg: number;
  readonly leastItems: number;
  readonly mostItems: number;
  readonly leastWorthPerBox: number;
}

export interface PromiseHands {
  /** By week. */
  readonly hours: readonly number[];
  readonly packHoursPerBox: number;
  readonly wagePerH: number;
  readonly overtimeMostH: number;
  readonly overtimeWagePerH: number;
}

/** What a shortfall counts against a plan, in the farm's money. */
export interface ShortPrices {
  readonly slotPerKg: number;
  readonly boxPerKg: number;
  readonly missingPerItem: number;
  readonly worthWeight: number;
}

export interface PromiseProblem {
  readonly name: string;
  readonly weeks: number;
  readonly isCyclic: boolean;
  /** Boxes by week; none in a closed week. */
  readonly households: readonly number[];
  readonly crops: readonly PromiseCrop[];
  readonly successions: readonly PromiseSuccession[];
  readonly slots: readonly PromiseSlot[];
  /** A slot has at most so many times what is promised of it. */
  readonly slotMostFactor: number;
  readonly box: BoxLimits;
  readonly groundM2: Readonly<Record<string, number>>;
  readonly storesKg: Readonly<Record<string, number>>;
  readonly hands: PromiseHands;
  readonly groundCostWeight: number;
  readonly shortPrices: ShortPrices;
  readonly gradedOutShare: number;
  /** Trimmed off what comes out of store. */
  readonly trimmedShare: number;
}

/** A week of the year; in a cyclic year those past its end come round again. */
export function weekInYear(problem: PromiseProblem, week: number): number {
  return ((week % problem.weeks) + problem.weeks) % problem.weeks;
}

/** How often a succession holds its ground in each week: once, or twice where a stand is longer than a year. */
export function heldWeeks(problem: PromiseProblem, succession: PromiseSuccession): ReadonlyMap<number, number> {
  const held = new Map<number, number>();
  const end = succession.harvestFromWeek + succession.readyKgM2.length;
  for (let week = succession.groundFromWeek; week < end; week += 1) {
    const at = weekInYear(problem, week);
    held.set(at, (held.get(at) ?? 0) + 1);
  }
  return held;
}
