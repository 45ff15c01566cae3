/** What the farm has promised: boxes, sizes, weeks, and what goes in; and what it has to keep the promise with. */
import type { CropId, Day, IsoWeek, MonthDay, PersonId, PlotId, StoreId } from '@leywright/measures';
import type { Skill } from './work.ts';

export interface BoxSize {
  readonly id: string;
  readonly name: string;
  readonly households: number;
}

/** Every year from one month-day to another (may wrap over new year), or once between two days. `to` is inclusive. */
export type SlotWindow =
  | { readonly kind: 'yearly'; readonly from: MonthDay; readonly to: MonthDay }
  | { readonly kind: 'once'; readonly from: Day; readonly to: Day };

export type SaleUnit = 'kg' | 'head' | 'bunch';

/** One place in the box: filled by the first crop of the list that can, then the next. */
export interface Slot {
  readonly id: string;
  readonly crops: readonly CropId[];
  readonly window: SlotWindow;
  /** 1 = every box week of the window, 2 = every other, counted from the window's first box week. */
  readonly everyWeeks: number;
  readonly unit: SaleUnit;
  /** Portion by size id, in `unit`; a size that is not named gets none. */
  readonly portions: Readonly<Record<string, number>>;
}

/** What a household needs in a year, when that is how the farm counts. Exactly one of kg and m2 is given. */
export interface YearNeed {
  readonly crop: CropId;
  readonly kgHousehold: number | null;
  readonly m2Household: number | null;
}

export interface BoxPromise {
  readonly sizes: readonly BoxSize[];
  readonly itemsPerBox: number | null;
  /** ISO weekday of packing, 1 = Monday. */
  readonly packWeekday: number;
  /** First and last week with a box; null = all years of the plan. */
  readonly from: Day | null;
  readonly to: Day | null;
  /** Weeks without a box, by the ISO week; a yearly closed week is given for each year. */
  readonly closedWeeks: readonly IsoWeek[];
  /** ISO week numbers closed every year (53 only where the year has it). */
  readonly closedEveryYear: readonly number[];
  /** A pack day moved: same box, other day. */
  readonly movedPackDays: readonly { readonly week: IsoWeek; readonly packOn: Day }[];
  readonly slots: readonly Slot[];
  readonly needs: readonly YearNeed[];
  /** Box weeks a year, when the farm states only that. */
  readonly boxWeeksPerYear: number | null;
}

export interface StorePlace {
  readonly id: StoreId;
  readonly name: string;
  /** As in the storage table: cold, cool, ambient_frost_free, ambient_warm, clamp, field. */
  readonly kind: string;
  readonly crops: readonly CropId[];
  readonly capacityKg: number | null;
}

/** Own weekly loss of a crop in store from a day on; replaces the table's monthly figure. */
export interface OwnStoreLoss {
  readonly crop: CropId;
  readonly from: Day | null;
  readonly lossShareWeek: number;
}

export interface Price {
  readonly crop: CropId;
  readonly from: Day | null;
  readonly unit: SaleUnit;
  /** Minor units of the farm's money (pence, cents) for one unit. */
  readonly priceMinor: number;
}

export const roles = ['grower', 'office', 'bench', 'hand', 'looker'] as const;
export type Role = (typeof roles)[number];

export interface Person {
  readonly id: PersonId;
  readonly name: string;
  readonly role: Role;
  readonly hoursWeek: number | null;
  /** Hours in a year, when that is what is known (seasonal hands). */
  readonly hoursYear: number | null;
  readonly from: MonthDay | null;
  readonly to: MonthDay | null;
  readonly paid: boolean;
  /** ISO weekdays they work on, 1 = Monday; empty or left out = any. */
  readonly weekdays?: readonly number[];
  /** What they may do that not everyone may; empty or left out: nothing is asked (a farm that names no skills lets everyone do everything). */
  readonly skills?: readonly Skill[];
}

/** A day's weather as measured; null = not measured. */
export interface WeatherDay {
  readonly day: Day;
  readonly tMaxC: number | null;
  readonly tMinC: number | null;
  readonly rainMm: number | null;
  readonly sunH: number | null;
  readonly radiationMjM2: number | null;
  readonly windMS: number | null;
  readonly humidityPct: number | null;
}

/** A harvest as the farm sees it after replay. */
export interface HarvestRecord {
  readonly entry: string;
  readonly crop: CropId;
  readonly plot: PlotId | null;
  readonly stand: string | null;
  readonly on: Day;
  readonly grossKg: number | null;
  readonly count: number | null;
  readonly unit: SaleUnit;
  readonly gradedOutShare: number | null;
  readonly into: 'box' | 'store' | 'sale' | 'own-use' | 'compost';
  readonly store: StoreId | null;
}

export interface WeighingRecord {
  readonly entry: string;
  readonly crop: CropId;
  readonly store: StoreId | null;
  readonly on: Day;
  readonly kg: number;
}
