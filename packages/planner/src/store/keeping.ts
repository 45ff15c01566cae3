/**
 * How a crop keeps on this farm: in which store, what it loses in a week, and how long it lasts.
 *
 * Source  storage.csv: life and loss a month by crop and kind of store; own weekly losses (store_losses.csv) go before it.
 * Checks  test/store/keeping.test.ts
 * Leaves out  what one crop's ethylene does to another, temperature of the store, sorting.
 */

import { reference, type StorageRow, storeLoss } from '@leywright/agronomy';
import type { Farm, OwnStoreLoss, StorePlace } from '@leywright/book';
import { dayNumber } from '@leywright/measures';
import type { PlannedCrop } from '../plan/inputs.ts';
import { yieldSaid } from '../promise/known.ts';
import type { Bounds } from '../supply/lot.ts';
import type { WeekAxis } from '../supply/week-axis.ts';

export interface Keeping {
  readonly store: StorePlace | null;
  readonly row: StorageRow | null;
  readonly basis: 'own' | 'reference';
  /** By place of the axis: share of the opening stock lost in that week. */
  readonly lossShare: (bounds: Bounds) => Float64Array;
  /** Whole weeks a lot may lie. The farm's own losses say what is left of it, but no lot is eaten a second year. */
  readonly lifeWeeks: (bounds: Bounds) => number | null;
}

/** Null when the farm has no store this crop can lie in. */
export function keepingOf(
  farm: Farm,
  crop: PlannedCrop,
  axis: WeekAxis,
  idsOf: (id: string) => readonly string[],
): Keeping | null {
  const ids = [crop.id, ...idsOf(crop.id)];
  const own = farm.storeLosses.filter((loss) => ids.includes(loss.crop));
  const place = storeFor(farm.stores, crop, ids, own.length > 0 || crop.storeLossTotalShare !== null);
  if (place === null) return null;
  const free = freeWeeks(farm, axis);
  if (own.length > 0) return keeping(place, 'own', datedLosses(own, axis, free));
  if (yieldSaid(crop)?.measure === 'packed') return keeping(place, 'own', () => 0);
  if (crop.storeLossTotalShare !== null) {
    const share = spreadLoss(crop.storeLossTotalShare.value);
    return keeping(place, 'own', (_, week) => (free(week) ? 0 : share));
  }
  const { row } = place;
  if (row === null) return null;
  const weekly = (bounds: Bounds) => storeLoss.weeklyLossFraction(monthlyPct(row, bounds) / 100);
  const shares = { low: weekly('low'), typ: weekly('typ'), high: weekly('high') };
  return keeping(place, 'reference', (bounds, week) => (free(week) ? 0 : shares[bounds]));

  function keeping(
    where: Place,
    basis: 'own' | 'reference',
    lossAt: (bounds: Bounds, week: number) => number,
  ): Keeping {
    return {
      store: where.store,
      row: where.row,
      basis,
      lossShare: (bounds) => Float64Array.from({ length: axis.weeks }, (_, week) => lossAt(bounds, week)),
      lifeWeeks: (bounds) =>
        basis === 'own' || where.row === null ? longestOwnWeeks : Math.floor(lifeWeeks(where.row, bounds)),
    };
  }
}

/** Common practice: what is left when the same crop is ripe again, a year on, is not sold. */
const longestOwnWeeks = 51;

interface Place {
  readonly store: StorePlace;
  readonly row: StorageRow | null;
}

/** Of the stores that may take the crop, the one it keeps longest in; a store without a list of crops takes any the table keeps there. */
function storeFor(
  stores: readonly StorePlace[],
  crop: PlannedCrop,
  ids: readonly string[],
  ownLossKnown: boolean,
): Place | null {
  const rows = (crop.reference?.storageIds ?? []).flatMap((id) => reference.storage.get(id) ?? []);
  const places = stores.flatMap((store): Place[] => {
    const isNamed = store.crops.some((id) => ids.includes(id));
    if (!isNamed && store.crops.length > 0) return [];
    const row = rows.find((one) => one.store === store.kind) ?? null;
    return row !== null || (isNamed && ownLossKnown) ? [{ store, row }] : [];
  });
  const life = (place: Place) => (place.row === null ? 0 : lifeWeeks(place.row, 'typ'));
  return places.toSorted((a, b) => life(b) - life(a))[0] ?? null;
}

function lifeWeeks(row: StorageRow, bounds: Bounds): number {
  if (bounds === 'typ') return (row.lifeLowWeeks + row.lifeHighWeeks) / 2;
  return bounds === 'low' ? row.lifeLowWeeks : row.lifeHighWeeks;
}

/** A poor year loses the table's high figure. */
function monthlyPct(row: StorageRow, bounds: Bounds): number {
  if (bounds === 'typ') return (row.lossLowPctMonth + row.lossHighPctMonth) / 2;
  return bounds === 'low' ? row.lossHighPctMonth : row.lossLowPctMonth;
}

/** Own losses are dated; a week goes by the figure in force on its Thursday, the day that gives an ISO week its year. */
function datedLosses(
  losses: readonly OwnStoreLoss[],
  axis: WeekAxis,
  free: (week: number) => boolean,
): (bounds: Bounds, week: number) => number {
  const inOrder = losses
    .map((loss) => ({ fromDay: loss.from === null ? -Infinity : dayNumber(loss.from), share: loss.lossShareWeek }))
    .toSorted((a, b) => b.fromDay - a.fromDay);
  return (_, week) => (free(week) ? 0 : (inOrder.find((loss) => loss.fromDay <= axis.dayOf(week) + 3)?.share ?? 0));
}

/** Weeks before the farm's first week of loss (curing), in that one season. */
function freeWeeks(farm: Farm, axis: WeekAxis): (week: number) => boolean {
  const from = farm.about.conventions.storeLossFrom;
  if (from === null) return () => false;
  const first = axis.weekOf(dayNumber(from));
  const season = first - 26;
  return (week) => week < first && week >= season;
}

/** A farm that knows only the loss of a whole winter: the same share each week of half a year. */
const winterWeeks = 26;
function spreadLoss(totalShare: number): number {
  return 1 - (1 - totalShare) ** (1 / winterWeeks);
}

/** Whether the table has some kind of store the crop would lie in for so many weeks. */
export function keepsSomewhere(crop: PlannedCrop, weeks: number): boolean {
  return bestKind(crop).some((row) => row.lifeHighWeeks >= weeks);
}

/** Kinds of store the table knows for the crop, other than the field itself, the longest life first. */
export function bestKind(crop: PlannedCrop): readonly StorageRow[] {
  const rows = (crop.reference?.storageIds ?? []).flatMap((id) => reference.storage.get(id) ?? []);
  return rows.filter((row) => row.store !== 'field').toSorted((a, b) => lifeWeeks(b, 'typ') - lifeWeeks(a, 'typ'));
}
