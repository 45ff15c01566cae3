/**
 * The authors' own form of a run: five lines of text with clay, depth, inert carbon and months, a line of heads, then a month a row; and their output tables.
 *
 * Source  Rothamsted's published program and its example files (read).
 * Checks  test/checks/science.csv rc-09; test/carbon.test.ts (a file made here reads back; a broken one is refused with its line)
 * Holds   every row is read or named as bad; none is passed over.
 * Leaves out  radiocarbon: its column is passed over.
 */
import { activeCarbonTHa, type CarbonMonth, type CarbonState, runCarbon, spinUpCarbon } from './rothc.ts';
import type { CarbonSoil } from './rothc-rates.ts';

export interface CarbonRunFile {
  readonly soil: CarbonSoil;
  readonly inertTHa: number;
  readonly months: readonly (CarbonMonth & { readonly year: number; readonly monthNumber: number })[];
}

export type ReadCarbonFile =
  | { readonly kind: 'run'; readonly run: CarbonRunFile }
  | { readonly kind: 'bad'; readonly lineNumber: number; readonly found: string };

/** Reads a run's input file. */
export function readCarbonFile(text: string): ReadCarbonFile {
  const lines = text.split(/\r?\n/).map((line, at) => ({ numbers: numbersOf(line), line, lineNumber: at + 1 }));
  const head = lines.find(({ numbers }) => numbers !== null && numbers.length >= 4);
  if (head?.numbers == null)
    return { kind: 'bad', lineNumber: 1, found: 'no line of clay, depth, inert carbon, months' };
  const [clayPct = 0, depthCm = 0, inertTHa = 0, monthCount = 0] = head.numbers;
  const afterHead = lines.slice(head.lineNumber).filter(({ line }) => line.trim() !== '');
  const rows = afterHead.slice(afterHead.findIndex(({ numbers }) => numbers !== null));
  const bad = rows.find(({ numbers }) => numbers === null || numbers.length < 10);
  if (bad !== undefined) return { kind: 'bad', lineNumber: bad.lineNumber, found: bad.line.trim() };
  if (rows.length !== monthCount)
    return { kind: 'bad', lineNumber: head.lineNumber, found: `${monthCount} months said, ${rows.length} there` };
  return {
    kind: 'run',
    run: { soil: { clayPct, depthCm }, inertTHa, months: rows.map(({ numbers }) => monthOf(numbers ?? [])) },
  };
}

function monthOf(row: readonly number[]): CarbonRunFile['months'][number] {
  const [year = 0, monthNumber = 0, , tMeanC = 0, rainMm = 0, panMm = 0, plantTHa = 0, rottedTHa = 0] = row;
  const [covered = 0, easyToResistantRatio = 0] = row.slice(8);
  return {
    year,
    monthNumber,
    tMeanC,
    rainMm,
    panMm,
    plantTHa,
    rottedTHa,
    covered: covered === 1,
    easyToResistantRatio,
  };
}

/** The numbers of a line parted by blanks; null for a line that is not all numbers. */
function numbersOf(line: string): readonly number[] | null {
  const parts = line.trim().split(/\s+/);
  const numbers = parts.map(Number);
  return line.trim() !== '' && numbers.every(Number.isFinite) ? numbers : null;
}

/** What a whole run of a file gives: the equilibrium of its first twelve rows, then every later month. */
export function runCarbonFile(run: CarbonRunFile): {
  readonly spinUpMonths: number;
  readonly equilibrium: CarbonState;
  readonly states: readonly CarbonState[];
} {
  const spin = spinUpCarbon(run.months.slice(0, 12), run.soil);
  const states = runCarbon(spin.state, run.months.slice(12), run.soil);
  return { spinUpMonths: spin.monthCount, equilibrium: spin.state, states };
}

const comparedColumns = ['DPM', 'RPM', 'BIO', 'HUM', 'IOM', 'SOC'] as const;

/** The pools by the authors' names; the stock counts the inert pool. */
export function byAuthorsNames(state: CarbonState, inertTHa: number): Record<string, number> {
  return {
    DPM: state.easyPlantTHa,
    RPM: state.resistantPlantTHa,
    BIO: state.microbesTHa,
    HUM: state.humusTHa,
    IOM: inertTHa,
    SOC: activeCarbonTHa(state) + inertTHa,
    CO2_cum: state.breathedTHa,
  };
}

/**
 * Greatest difference (t C/ha) of any pool in any row between our states and an output table of the authors, matched by year and month;
 * rows of the table that match no state are counted. `equilibrium` stands for the row of year 1.
 */
export function greatestDifferenceTHa(
  table: string,
  run: CarbonRunFile,
  ours: { readonly equilibrium: CarbonState; readonly states: readonly CarbonState[] },
): { readonly greatestTHa: number; readonly rows: number; readonly unmatchedRows: number } {
  const [head = '', ...lines] = table.trim().split(/\r?\n/);
  const columns = head.split(',').map((name) => name.trim());
  const later = run.months.slice(12);
  const at = new Map(later.map((month, index) => [`${month.year}-${month.monthNumber}`, index]));
  let greatestTHa = 0;
  let unmatchedRows = 0;
  for (const line of lines) {
    const cells = line.split(',').map(Number);
    const index = at.get(`${cells[0]}-${cells[1]}`);
    const state = index === undefined && cells[0] === 1 ? ours.equilibrium : ours.states[index ?? -1];
    if (state === undefined) unmatchedRows++;
    else greatestTHa = Math.max(greatestTHa, differenceTHa(byAuthorsNames(state, run.inertTHa), columns, cells));
  }
  return { greatestTHa, rows: lines.length, unmatchedRows };
}

function differenceTHa(ours: Record<string, number>, columns: readonly string[], cells: readonly number[]): number {
  return Math.max(
    ...comparedColumns.map((pool) => {
      const column = columns.findIndex((name) => name.startsWith(`${pool}_`));
      return column < 0 ? 0 : Math.abs((ours[pool] ?? 0) - (cells[column] ?? Number.NaN));
    }),
  );
}
