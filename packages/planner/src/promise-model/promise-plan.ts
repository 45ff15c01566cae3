/** A promise plan in kilos, square metres and hours, read from the solver's values. */
import type { PromiseModel } from './promise-model.ts';

const loadKg = 100;

export interface PromisePlan {
  /** By succession. */
  readonly areaM2: readonly number[];
  /** By succession and week of its harvest. */
  readonly cutKg: readonly (readonly number[])[];
  /** By crop and week, as are the next four. */
  readonly boxedFreshKg: readonly (readonly number[])[];
  readonly storedKg: readonly (readonly number[])[];
  /** Taken out of store, before trimming. */
  readonly takenKg: readonly (readonly number[])[];
  /** In store at the end of the week. */
  readonly stockKg: readonly (readonly number[])[];
  readonly boxedKg: readonly (readonly number[])[];
  /** Share of the week's boxes that carry the crop. */
  readonly carriedShare: readonly (readonly number[])[];
  /** By slot and week. */
  readonly slotShortKg: readonly (readonly number[])[];
  /** By week. */
  readonly massShortKg: readonly number[];
  readonly missingItems: readonly number[];
  readonly worthShortWeight: readonly number[];
  readonly overtimeH: readonly number[];
}

export function planOfValues({ problem, places }: PromiseModel, values: Float64Array): PromisePlan {
  const valueAt = (place: number) => (place < 0 ? 0 : Math.max(0, values[place] ?? 0));
  const weeks = Array.from({ length: problem.weeks }, (_, week) => week);
  const scale = places.scaleIndex === null ? 1 : Math.max(valueAt(places.scaleIndex), 1e-9);
  type Places = { readonly at: (row: number, week: number) => number };
  const byCrop = (grid: Places, factor: number) =>
    problem.crops.map((_, crop) => weeks.map((week) => valueAt(grid.at(crop, week)) * factor));
  return {
    areaM2: problem.successions.map((one, at) => valueAt(places.beds[at] ?? -1) * one.bedM2),
    cutKg: places.cutColumns.map((cut) => cut.map((column) => valueAt(column) * loadKg)),
    boxedFreshKg: byCrop(places.boxedFresh, loadKg),
    storedKg: byCrop(places.stored, loadKg),
    takenKg: byCrop(places.taken, loadKg),
    stockKg: byCrop(places.stock, loadKg),
    boxedKg: byCrop(places.boxed, loadKg),
    carriedShare: byCrop(places.carried, 1 / scale),
    slotShortKg: problem.slots.map((_, slot) => weeks.map((week) => valueAt(places.slotShort.at(slot, week)) * loadKg)),
    massShortKg: places.massShortColumns.map((place) => valueAt(place) * loadKg),
    missingItems: places.itemsShortColumns.map(valueAt),
    worthShortWeight: places.worthShortColumns.map((place) => valueAt(place) * loadKg),
    overtimeH: places.overtimeColumns.map(valueAt),
  };
}
