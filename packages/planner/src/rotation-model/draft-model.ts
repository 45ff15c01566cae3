/** A linear model as the solver takes it, and a draft that gathers its columns and rows. */

/** Minimise the weighted sum of columns within the bounds of columns and rows; some columns are whole numbers. Rows are stored one after another. */
export interface LinearModel {
  readonly columnCount: number;
  readonly rowCount: number;
  readonly costWeight: Float64Array;
  readonly columnLow: Float64Array;
  readonly columnHigh: Float64Array;
  /** 1 where a column is a whole number. */
  readonly wholeIndex: Int32Array;
  readonly rowLow: Float64Array;
  readonly rowHigh: Float64Array;
  readonly rowStarts: Int32Array;
  readonly entryIndex: Int32Array;
  readonly entryValue: Float64Array;
  /** Added to the weighted sum. */
  readonly offsetScore: number;
}

/** A column and what it is multiplied by. */
export type Term = readonly [column: number, factor: number];

export interface Column {
  readonly low?: number;
  readonly high?: number;
  readonly costWeight?: number;
  readonly isWhole?: boolean;
}

export interface ModelDraft {
  /** Adds a column and gives its place. Without bounds it is any number from 0 up. */
  readonly column: (column: Column) => number;
  /** Adds a row and gives its place. */
  readonly row: (low: number, high: number, terms: readonly Term[]) => number;
  readonly addOffset: (score: number) => void;
  readonly finish: () => LinearModel;
}

export function draftModel(): ModelDraft {
  const columns: Required<Column>[] = [];
  const rows: { readonly low: number; readonly high: number }[] = [];
  const rowStarts: number[] = [0];
  const entryIndex: number[] = [];
  const entryValue: number[] = [];
  let offsetScore = 0;
  return {
    column: ({ low = 0, high = Number.POSITIVE_INFINITY, costWeight = 0, isWhole = false }) =>
      columns.push({ low, high, costWeight, isWhole }) - 1,
    row: (low, high, terms) => {
      for (const [column, factor] of summed(terms)) {
        if (factor === 0) continue;
        entryIndex.push(column);
        entryValue.push(factor);
      }
      rowStarts.push(entryIndex.length);
      return rows.push({ low, high }) - 1;
    },
    addOffset: (score) => {
      offsetScore += score;
    },
    finish: () => ({
      columnCount: columns.length,
      rowCount: rows.length,
      costWeight: Float64Array.from(columns, (one) => one.costWeight),
      columnLow: Float64Array.from(columns, (one) => one.low),
      columnHigh: Float64Array.from(columns, (one) => one.high),
      wholeIndex: Int32Array.from(columns, (one) => (one.isWhole ? 1 : 0)),
      rowLow: Float64Array.from(rows, (one) => one.low),
      rowHigh: Float64Array.from(rows, (one) => one.high),
      rowStarts: Int32Array.from(rowStarts),
      entryIndex: Int32Array.from(entryIndex),
      entryValue: Float64Array.from(entryValue),
      offsetScore,
    }),
  };
}

/** A column named twice in a row is one entry. */
function summed(terms: readonly Term[]): Iterable<Term> {
  const sums = new Map<number, number>();
  for (const [column, factor] of terms) sums.set(column, (sums.get(column) ?? 0) + factor);
  return sums;
}
