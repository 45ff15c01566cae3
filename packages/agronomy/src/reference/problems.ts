/** What is wrong in the reference tables: a test asserts nothing, and a farm's own rows can be held to the same rules. */
import type { Columns } from './columns.ts';
import { camel } from './columns.ts';
import { type Reference, readTable, reference, tableColumns } from './reference.ts';
import { tableText } from './table-text.ts';

export interface ReferenceProblem {
  readonly table: keyof Reference;
  readonly row: string;
  readonly column: string;
  readonly found: string;
  readonly why:
    | 'empty'
    | 'not-a-number'
    | 'not-a-date'
    | 'not-yes-or-no'
    | 'not-in-list'
    | 'id-twice'
    | 'id-not-kebab-case'
    | 'no-such-row'
    | 'no-such-column'
    | 'low-above-high'
    | 'shares-do-not-sum-to-1'
    | 'not-a-share';
}

type Row = Readonly<Record<string, unknown>>;
type Report = (row: string, column: string, found: unknown, why: ReferenceProblem['why']) => void;

/** Every fault in every table, all at once; none when the tables are sound. */
export function referenceProblems(): readonly ReferenceProblem[] {
  const problems: ReferenceProblem[] = [];
  for (const table of Object.keys(tableColumns) as (keyof Reference)[]) {
    const report: Report = (row, column, found, why) =>
      problems.push({ table, row, column, found: String(found), why });
    const rows = readTable(table, ({ row, column, found, why }) => report(row, column, found, why));
    const [file, columns] = tableColumns[table];
    idProblems(
      table,
      tableText(file).rows.map((cells) => cells[0] ?? ''),
      report,
    );
    for (const [id, row] of rows as ReadonlyMap<string, Row>) {
      linkProblems(table, id, row, report);
      orderProblems(columns, id, row, report);
    }
  }
  for (const cover of reference.covers.values())
    mixProblems(cover, (row, column, found, why) =>
      problems.push({ table: 'covers', row, column, found: String(found), why }),
    );
  return problems;
}

function idProblems(table: keyof Reference, ids: readonly string[], report: Report): void {
  const seen = new Set<string>();
  for (const id of ids) {
    if (seen.has(id)) report(id, 'id', id, 'id-twice');
    if (table !== 'rules' && !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id)) report(id, 'id', id, 'id-not-kebab-case');
    seen.add(id);
  }
}

/** Columns whose entries must be rows of another table. */
const links: readonly (readonly [column: string, to: keyof Reference])[] = [
  ['crop_ids', 'crops'],
  ['host_crop_ids', 'crops'],
  ['undersow_crop_ids', 'crops'],
  ['host_cover_ids', 'covers'],
  ['storage_ids', 'storage'],
  ['pest_id', 'pests'],
  ['source', 'sources'],
];

function linkProblems(table: keyof Reference, id: string, row: Row, report: Report): void {
  // The sources of rules are laws in words.
  for (const [column, to] of table === 'rules' ? [] : links) {
    const value = row[camel(column)];
    for (const linked of [value ?? []].flat()) {
      if (!reference[to].has(String(linked))) report(id, column, linked, 'no-such-row');
    }
  }
  const { columns } = tableText(tableColumns[table][0]);
  const verified = (row['verifiedCells'] ?? []) as readonly string[];
  for (const column of verified) if (!columns.includes(column)) report(id, 'verified_cells', column, 'no-such-column');
}

/** Low must not be above typical, nor typical above high, wherever the names of columns say so. */
function orderProblems(columns: Columns, id: string, row: Row, report: Report): void {
  const amounts = [...(columns.amounts ?? []), ...(columns.maybeAmounts ?? [])];
  const lowEnd = /(^|_)low(_|$)/;
  const known = (column: string): readonly { column: string; value: number }[] => {
    const value = row[camel(column)];
    return typeof value === 'number' ? [{ column, value }] : [];
  };
  for (const low of amounts.filter((column) => lowEnd.test(column))) {
    const ends = [low, low.replace(lowEnd, '$1typ$2'), low.replace(lowEnd, '$1high$2')].flatMap(known);
    ends.slice(1).forEach(({ column, value }, at) => {
      if ((ends[at]?.value ?? value) > value) report(id, column, value, 'low-above-high');
    });
  }
  for (const { column, value } of amounts
    .filter((name) => /share|depletion_fraction|harvest_index/.test(name))
    .flatMap(known)) {
    if (value < 0 || value > 1) report(id, column, value, 'not-a-share');
  }
}

function mixProblems(
  cover: Reference['covers'] extends ReadonlyMap<string, infer C> ? C : never,
  report: Report,
): void {
  for (const { coverId } of cover.mixOf)
    if (!reference.covers.has(coverId)) report(cover.id, 'mix_of', coverId, 'no-such-row');
  for (const { cropId, lowWeeks, highWeeks } of cover.undersowWeeksByCrop) {
    if (!reference.crops.has(cropId)) report(cover.id, 'undersow_weeks_by_crop', cropId, 'no-such-row');
    if (!(lowWeeks <= highWeeks)) report(cover.id, 'undersow_weeks_by_crop', cropId, 'low-above-high');
  }
  const sum = cover.mixOf.reduce((total, part) => total + part.share, 0);
  if (cover.mixOf.length > 0 && !(Math.abs(sum - 1) < 1e-9)) report(cover.id, 'mix_of', sum, 'shares-do-not-sum-to-1');
}
