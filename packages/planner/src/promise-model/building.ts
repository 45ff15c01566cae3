/**
 * What the parts of the promise model share while it is drafted: where each column and row lies, and rows that grow with the households.
 *
 * Units   ground in beds of the succession's own size, mass in hundreds of kilos, hands in hours, costs in the farm's money: the figures of
 *         the matrix then stay within a few powers of ten of one another.
 */
import type { PromiseProblem } from '../promise-problem/problem.ts';
import { draftModel, type ModelDraft, type Term } from '../rotation-model/draft-model.ts';

/** Hundreds of kilos in a kilo. */
export const loadsPerKg = 0.01;
const none = -1;

/** Place of a column by crop and week, or -1 where there is none. */
export interface Grid {
  readonly at: (row: number, week: number) => number;
  readonly set: (row: number, week: number, place: number) => void;
}

export interface PromisePlaces {
  /** By succession. */
  readonly beds: number[];
  /** By succession and week of its harvest. */
  readonly cutColumns: number[][];
  readonly boxedFresh: Grid;
  readonly stored: Grid;
  readonly stock: Grid;
  readonly taken: Grid;
  readonly boxed: Grid;
  /** Share of the boxes that carry the crop. */
  readonly carried: Grid;
  readonly slotShort: Grid;
  readonly massShortColumns: number[];
  readonly itemsShortColumns: number[];
  readonly worthShortColumns: number[];
  readonly overtimeColumns: number[];
  /** Columns that widen a limit; nought unless it is asked what more of it would do. */
  readonly moreGround: Map<string, number>;
  readonly moreStore: Map<string, number>;
  readonly moreHours: number[];
  readonly scaleIndex: number | null;
  readonly groundRows: Map<string, number[]>;
  readonly storeRows: Map<string, number[]>;
  readonly handsRows: number[];
  readonly slotRows: Grid;
  /** All shortfalls of slots together; free unless a first answer is to be kept. */
  shortSumRowIndex: number;
}

export interface Building {
  readonly problem: PromiseProblem;
  readonly draft: ModelDraft;
  readonly places: PromisePlaces;
  /** A row whose right side grows with the households where their number is what is sought. */
  readonly atLeast: (terms: readonly Term[], amount: number) => number;
  readonly atMost: (terms: readonly Term[], amount: number) => number;
  readonly exactly: (terms: readonly Term[], amount: number) => number;
}

/** With `isScaled` the households of every week are multiplied by one column, which is what the model makes as large as it can. */
export function startBuilding(problem: PromiseProblem, isScaled: boolean): Building {
  const draft = draftModel();
  const scale = isScaled ? draft.column({ costWeight: -1 }) : null;
  const growing = (low: number, high: number, amount: number) => (terms: readonly Term[]) =>
    scale === null ? draft.row(low + amount, high + amount, terms) : draft.row(low, high, [...terms, [scale, -amount]]);
  const inf = Number.POSITIVE_INFINITY;
  return {
    problem,
    draft,
    places: emptyPlaces(problem, scale),
    atLeast: (terms, amount) => growing(0, inf, amount)(terms),
    atMost: (terms, amount) => growing(-inf, 0, amount)(terms),
    exactly: (terms, amount) => growing(0, 0, amount)(terms),
  };
}

function emptyPlaces({ crops, slots, weeks }: PromiseProblem, scale: number | null): PromisePlaces {
  return {
    beds: [],
    cutColumns: [],
    boxedFresh: grid(crops.length, weeks),
    stored: grid(crops.length, weeks),
    stock: grid(crops.length, weeks),
    taken: grid(crops.length, weeks),
    boxed: grid(crops.length, weeks),
    carried: grid(crops.length, weeks),
    slotShort: grid(slots.length, weeks),
    slotRows: grid(slots.length, weeks),
    massShortColumns: new Array<number>(weeks).fill(none),
    itemsShortColumns: new Array<number>(weeks).fill(none),
    worthShortColumns: new Array<number>(weeks).fill(none),
    overtimeColumns: [],
    moreGround: new Map(),
    moreStore: new Map(),
    moreHours: [],
    scaleIndex: scale,
    groundRows: new Map(),
    storeRows: new Map(),
    handsRows: [],
    shortSumRowIndex: none,
  };
}

function grid(rows: number, weeks: number): Grid {
  const places = new Int32Array(rows * weeks).fill(none);
  return {
    at: (row, week) => places[row * weeks + week] ?? none,
    set: (row, week, place) => {
      places[row * weeks + week] = place;
    },
  };
}

/** A term for a column that may not be there. */
export function termOf(columnIndex: number, factor: number): readonly Term[] {
  return columnIndex === none ? [] : [[columnIndex, factor]];
}
