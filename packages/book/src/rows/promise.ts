/** The promise out of its rows. */
import type { BoxPromise, BoxSize, Slot, YearNeed } from '../farm/promise.ts';
import type { Placed } from '../table/read-table.ts';
import type { ClosedRow, SlotRow } from './promise-tables.ts';

export interface PromiseRows {
  readonly sizes: readonly BoxSize[];
  readonly slots: readonly Placed<SlotRow>[];
  readonly needs: readonly Placed<YearNeed>[];
  readonly closed: readonly Placed<ClosedRow>[];
}

export type PromiseHead = Pick<
  BoxPromise,
  'itemsPerBox' | 'packWeekday' | 'from' | 'to' | 'closedEveryYear' | 'boxWeeksPerYear'
>;

/** Null when nothing at all is said of boxes. */
export function promiseOf(head: PromiseHead | null, rows: PromiseRows): BoxPromise | null {
  const { sizes, slots, needs, closed } = rows;
  if (head === null && sizes.length === 0 && slots.length === 0 && needs.length === 0) return null;
  return {
    ...(head ?? {
      itemsPerBox: null,
      packWeekday: usualPackWeekday,
      from: null,
      to: null,
      closedEveryYear: [],
      boxWeeksPerYear: null,
    }),
    sizes,
    closedWeeks: closed.filter((row) => row.value.packOn === null).map((row) => row.value.week),
    movedPackDays: closed.flatMap(({ value }) =>
      value.packOn === null ? [] : [{ week: value.week, packOn: value.packOn }],
    ),
    slots: slotsOf(slots),
    needs: needsOf(needs),
  };
}

/** Thursday, until farm.json says another day: boxes are packed before the weekend. */
export const usualPackWeekday = 4;

function slotsOf(rows: readonly Placed<SlotRow>[]): Slot[] {
  const taken = new Map<string, number>();
  return rows.map((row) => {
    const { id: given, crops } = row.value;
    const id = given ?? freeId(crops[0] ?? 'slot', taken);
    const firstLine = taken.get(id);
    if (firstLine !== undefined) row.fault('id-twice', 'id', { found: id, figures: { firstLine } });
    if (crops.length === 0) row.fault('missing-value', 'crops');
    taken.set(id, row.line);
    return { ...row.value, id, portions: Object.fromEntries(row.growing) };
  });
}

function freeId(wanted: string, taken: ReadonlyMap<string, number>): string {
  let id = wanted;
  for (let next = 2; taken.has(id); next += 1) id = `${wanted}-${next}`;
  return id;
}

function needsOf(rows: readonly Placed<YearNeed>[]): YearNeed[] {
  return rows.map(({ value, fault }) => {
    if ((value.kgHousehold === null) === (value.m2Household === null))
      fault('one-of', 'kg_household', { nearest: ['kg_household', 'm2_household'] });
    return value;
  });
}
