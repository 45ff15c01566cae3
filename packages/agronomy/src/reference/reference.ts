/** The reference tables as typed rows by id. Read when first asked for, then kept. */

import {
  type DemandFigure,
  demandColumns,
  type Rule,
  ruleColumns,
  type Source,
  sourceColumns,
} from './book-columns.ts';
import type { CellProblem, Columns } from './columns.ts';
import { readRow, splitList } from './columns.ts';
import {
  type Cover,
  coverColumns,
  type MixPart,
  type StorageRow,
  storageColumns,
  type UndersowWeeks,
} from './cover-columns.ts';
import { type Crop, cropColumns } from './crop-columns.ts';
import {
  type Habitat,
  habitatColumns,
  intervalColumns,
  type LabourRate,
  labourColumns,
  type RestInterval,
  type WeedPass,
  weedColumns,
} from './ground-columns.ts';
import { type Pest, type PestModel, pestColumns, pestModelColumns } from './pest-columns.ts';
import { cellsOf, tableText } from './table-text.ts';

/** Every table that has rows with an id. */
export interface Reference {
  readonly crops: ReadonlyMap<string, Crop>;
  readonly covers: ReadonlyMap<string, Cover>;
  readonly storage: ReadonlyMap<string, StorageRow>;
  readonly intervals: ReadonlyMap<string, RestInterval>;
  readonly labour: ReadonlyMap<string, LabourRate>;
  readonly weeds: ReadonlyMap<string, WeedPass>;
  readonly pests: ReadonlyMap<string, Pest>;
  readonly pestModels: ReadonlyMap<string, PestModel>;
  readonly habitat: ReadonlyMap<string, Habitat>;
  readonly demand: ReadonlyMap<string, DemandFigure>;
  readonly rules: ReadonlyMap<string, Rule>;
  readonly sources: ReadonlyMap<string, Source>;
}

/** Columns and file name of each table, for reading and for its validation. */
export const tableColumns = {
  crops: ['crops', cropColumns],
  covers: ['covers', coverColumns],
  storage: ['storage', storageColumns],
  intervals: ['intervals', intervalColumns],
  labour: ['labour', labourColumns],
  weeds: ['weeds', weedColumns],
  pests: ['pests', pestColumns],
  pestModels: ['pest-models', pestModelColumns],
  habitat: ['habitat', habitatColumns],
  demand: ['demand', demandColumns],
  rules: ['rules', ruleColumns],
  sources: ['sources', sourceColumns],
} as const satisfies Record<keyof Reference, readonly [file: string, columns: Columns]>;

const kept: Partial<Record<keyof Reference, ReadonlyMap<string, unknown>>> = {};

export const reference: Reference = {
  get crops() {
    return table('crops');
  },
  get covers() {
    return table('covers');
  },
  get storage() {
    return table('storage');
  },
  get intervals() {
    return table('intervals');
  },
  get labour() {
    return table('labour');
  },
  get weeds() {
    return table('weeds');
  },
  get pests() {
    return table('pests');
  },
  get pestModels() {
    return table('pestModels');
  },
  get habitat() {
    return table('habitat');
  },
  get demand() {
    return table('demand');
  },
  get rules() {
    return table('rules');
  },
  get sources() {
    return table('sources');
  },
};

/** Reads a table afresh and hands over every bad cell; `reference` itself passes over them, since `referenceProblems` lists them. */
export function readTable<N extends keyof Reference>(
  name: N,
  onProblem: (problem: CellProblem & { row: string }) => void,
): Reference[N] {
  const [file, columns] = tableColumns[name];
  const rows = new Map<string, unknown>();
  for (const cell of cellsOf(tableText(file))) {
    const row = cell('id');
    const typed = readRow<Columns>(columns, cell, (problem) => onProblem({ ...problem, row }));
    rows.set(row, name === 'covers' ? { ...typed, ...coverParts(cell) } : typed);
  }
  return rows as unknown as Reference[N];
}

function table<N extends keyof Reference>(name: N): Reference[N] {
  kept[name] ??= readTable(name, () => {});
  return kept[name] as Reference[N];
}

function coverParts(cell: (column: string) => string): {
  mixOf: readonly MixPart[];
  undersowWeeksByCrop: readonly UndersowWeeks[];
} {
  return {
    mixOf: splitList(cell('mix_of')).map((part) => {
      const [coverId = '', share = ''] = part.split(':');
      return { coverId, share: Number(share) };
    }),
    undersowWeeksByCrop: splitList(cell('undersow_weeks_by_crop')).map((part) => {
      const [cropId = '', weeks = ''] = part.split(':');
      const [low = '', high = low] = weeks.split('-');
      return { cropId, lowWeeks: Number(low), highWeeks: Number(high) };
    }),
  };
}
