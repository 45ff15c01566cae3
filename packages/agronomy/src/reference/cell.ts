/**
 * One cell of a reference table with how it is known and from where, for "why this number?".
 *
 * The rules are those of reference/README.md: in the crops table each group of columns has its own `how_` and `src_` column; a cell named in
 * `verified_cells` was read in its source; all others follow their group or their row. Columns that the README calls derived or
 * our own judgement are given as that, whatever their group says.
 */

import { splitList } from './columns.ts';
import { reference } from './reference.ts';
import { cellsOf, type TableText, tableText } from './table-text.ts';
import type { HowKnown } from './ways-of-knowing.ts';
import { waysOfKnowing } from './ways-of-knowing.ts';

export interface CellSource {
  /** Key in sources.csv, or null where the table names its source in words. */
  readonly id: string | null;
  readonly citation: string;
}

export interface ReferenceCell {
  /** As printed in the table; null when the cell is empty. */
  readonly value: string | null;
  readonly howKnown: HowKnown;
  readonly sources: readonly CellSource[];
}

const cropGroups: readonly (readonly [group: string, columns: RegExp])[] = [
  [
    'seed',
    /^(plants_per_station|tsw_g|seeds_per_g|planting_unit_g|germ_min_pct|emergence_pct|raise_|module_|seeds_per_cell)/,
  ],
  ['spacing', /^(in_row_|row_|stations_per_ha)/],
  ['dates', /^(sow_|plant_(from|to)|dtm_|harvest_(from|to|year)|standing_|tt_(base|low|high))/],
  ['emerg', /^(emerg_|field_emerg)/],
  ['tt_derived', /^tt_derived_/],
  ['yield', /^(yield_|sale_unit|unit_kg|share_cut|units_per_station|mass_per_plant|marketable)/],
  ['nutrient', /^(dm_pct|n_|p2o5|k2o|residue|harvest_index|demand_class)/],
  ['root', /^(root_|depletion)/],
  ['kc', /^(kc|height_m|stage_|fao56)/],
  ['labour', /^(harvest_(low|high)_kg_h|weed_)/],
  ['frost', /^frost_/],
];

const derivedColumns = new Set([
  'stations_per_ha_typ',
  'seeds_per_g',
  'residue_fresh_typ_t_ha',
  'units_per_station_typ',
  'mass_per_plant_typ_g',
  'n_product_typ_kg_ha',
  'n_uptake_typ_kg_ha',
  'tt_derived_cd',
  'emerg_base_c',
  'emerg_tt_cd',
]);
const ruleOfThumbColumns = new Set([
  'site_needs',
  'yield_typ_t_ha',
  'share_cut_typ',
  'mass_per_plant_normal_low_g',
  'mass_per_plant_normal_high_g',
]);

/** The cell of a table (`crops`, `science/fao56-t12-kc-single`) in the row whose first column is `row`. Throws when there is no such table, row or column. */
export function referenceCell(table: string, row: string, column: string): ReferenceCell {
  const text = tableText(table);
  const found = cellsOf(text)[rowIndex(text, row)];
  if (found === undefined) throw new Error(`The table ${table} has no row "${row}".`);
  const cell: Cell = (name) => (text.columns.includes(name) ? found(name) : '');
  return {
    value: found(column) || null,
    howKnown: howKnownOf(table, cell, column),
    sources: sourcesOf(text, table, cell, column),
  };
}

type Cell = (column: string) => string;

function rowIndex(text: TableText, row: string): number {
  const first = text.rows.findIndex((cells) => cells[0] === row);
  if (first >= 0) return first;
  // Tables with several rows of one name are asked by their number, counted from 1.
  return /^#\d+$/.test(row) ? Number(row.slice(1)) - 1 : -1;
}

function howKnownOf(table: string, cell: Cell, column: string): HowKnown {
  if (splitList(cell('verified_cells')).includes(column)) return 'verified';
  if (table === 'crops') return cropHowKnown(cell, column);
  if (table === 'storage' && column.startsWith('loss_')) return asHowKnown(cell('how_known_loss'));
  if (table === 'science/climate-normals') return asHowKnown(cell(climateColumn(column)));
  if (table.startsWith('science/')) return scienceHowKnown(table, cell, column);
  return asHowKnown(cell('how_known'));
}

function cropHowKnown(cell: Cell, column: string): HowKnown {
  if (derivedColumns.has(column)) return 'derived';
  if (ruleOfThumbColumns.has(column)) return 'common practice';
  const group = cropGroup(column);
  const ofBase = column === 'tt_derived_base_c' ? cell('how_tt_derived_base') : '';
  return asHowKnown(ofBase || (group === null ? '' : cell(`how_${group}`)) || cell('how_known'));
}

function sourcesOf(text: TableText, table: string, cell: Cell, column: string): readonly CellSource[] {
  if (table === 'sources') return [{ id: cell('id'), citation: cell('citation') }];
  if (table.startsWith('science/') || table === 'rules')
    return [{ id: null, citation: cell('source') || text.comment }];
  // No loss table was read for any row: what a source says of storage life does not stand behind the loss.
  if (table === 'storage' && column.startsWith('loss_')) return [];
  if (table === 'crops' && column === 'n_ref_kg_t')
    return [{ id: 'gswv-at', citation: reference.sources.get('gswv-at')?.citation ?? 'gswv-at' }];
  const group = table === 'crops' ? cropGroup(column) : null;
  const ids = splitList((group !== null && cell(`src_${group}`)) || cell('source'));
  return ids.map((id) => ({ id, citation: reference.sources.get(id)?.citation ?? id }));
}

function cropGroup(column: string): string | null {
  return cropGroups.find(([, columns]) => columns.test(column))?.[0] ?? null;
}

function climateColumn(column: string): string {
  if (/^t(max|min)/.test(column)) return 'known_temp';
  if (column === 'rain_mm') return 'known_rain';
  if (column.startsWith('rain_day')) return 'known_rain_days';
  if (/^(sun|rad)/.test(column)) return 'known_sun_rad';
  if (column.startsWith('wind')) return 'known_wind';
  return column.startsWith('rh') ? 'known_rh' : 'known_temp';
}

/** The heads of these files say how the whole file is known; columns recalled or worked out within them are named here. */
function scienceHowKnown(table: string, cell: Cell, column: string): HowKnown {
  if (cell('how_known') !== '') return asHowKnown(cell('how_known'));
  if (/emergence-derived|weather-generator/.test(table)) return 'derived';
  return /^(REW|TEW)/.test(column) ? 'memory' : 'verified';
}

/** Some cells carry a remark after the word ("tmax verified; tmin memory"): then the weakest word in it counts. */
function asHowKnown(text: string): HowKnown {
  const weakestFirst: readonly HowKnown[] = ['common practice', 'memory', 'derived', 'verified'];
  if (text === 'estimate') return 'derived';
  return waysOfKnowing.find((way) => way === text) ?? weakestFirst.find((way) => text.includes(way)) ?? 'memory';
}
