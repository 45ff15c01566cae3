/**
 * A farm folder read: the farm and its book, or everything that is wrong with it at once. Nothing is taken in by halves: one problem that
 * stops means no farm.
 */
import type { CropId } from '@leywright/measures';
import type { ReceivedEntry } from '../entry/entry.ts';
import type { Farm } from '../farm/farm.ts';
import type { StandKind } from '../farm/stand.ts';
import type { Absence } from '../farm/work.ts';
import { type GroundMap, mapFile, noMap, readGroundMap } from '../ground/ground-map.ts';
import { tellOverlaps } from '../ground/overlaps.ts';
import { type KnownNames, namesOf } from '../names/known-names.ts';
import { bedCountsOf, featuresOf, marksOf, partsOf, plotsOf, withNames } from '../rows/land.ts';
import { featureTable, fieldTable, markTable, partTable, plotTable, soilTable } from '../rows/land-tables.ts';
import { promiseOf } from '../rows/promise.ts';
import {
  aliasTable,
  closedTable,
  needTable,
  peopleTable,
  priceTable,
  sizeTable,
  slotTable,
  storeLossTable,
  storeTable,
  weatherTable,
} from '../rows/promise-tables.ts';
import { coursesOf, cropsOf, restsOf } from '../rows/rotation.ts';
import {
  agreedTable,
  courseTable,
  cropTable,
  historyTable,
  placementTable,
  restTable,
  rotationTable,
} from '../rows/stand-tables.ts';
import { standsOf } from '../rows/stands.ts';
import { tables } from '../rows/tables.ts';
import {
  absenceTable,
  ownJobTable,
  seedAuthorisationTable,
  seedLotTable,
  seedOfferTable,
} from '../rows/work-tables.ts';
import type { Table } from '../table/column.ts';
import { type Placed, type Reading, readTable } from '../table/read-table.ts';
import { aboutOf, promiseHead, readFarmJson, readJson, rotationHead } from './about.ts';
import { readBookLines } from './book-lines.ts';
import { readSheet, type Sheet } from './csv.ts';
import type { FarmJson } from './farm-json.ts';
import { type FileBytes, ourFiles } from './file-names.ts';
import { type Problem, type ProblemList, problemList } from './problem.ts';
import { bookFileName, textOf } from './text.ts';

export interface FolderReading {
  /**
   * The farm as the tables say, without the book's records: `replay(farm, entries)` puts them over it.
   * Null when any problem stops.
   */
  readonly farm: Farm | null;
  readonly entries: readonly ReceivedEntry[];
  readonly problems: readonly Problem[];
}

/** Reads a folder from its files by path; `known` is what the reference tables know. */
export function readFarmFolder(files: ReadonlyMap<string, FileBytes>, known: KnownNames): FolderReading {
  const problems = problemList();
  return readFiles(ourFiles(files, problems), known, problems);
}

export function readFiles(
  files: ReadonlyMap<string, FileBytes>,
  known: KnownNames,
  problems: ProblemList,
): FolderReading {
  const texts = new Map(
    [...files].flatMap(([file, bytes]): [string, string][] => {
      const text = textOf(file, bytes, problems);
      return text === null ? [] : [[file, text]];
    }),
  );
  if (!files.has(plotTable.file)) problems.add('missing-file', { file: plotTable.file, line: null, column: null });
  const farm = readFarm(texts, known, problems);
  const entries = readBookLines(texts.get(bookFileName) ?? '', problems);
  const stops = problems.stopping() > 0;
  return { farm: stops ? null : farm, entries: stops ? [] : entries, problems: problems.all() };
}

function readFarm(texts: ReadonlyMap<string, string>, known: KnownNames, problems: ProblemList): Farm {
  const said = readFarmJson(texts.get('farm.json') ?? '{}', problems);
  const json: FarmJson = said ?? {};
  const sheets = new Map(
    tables.flatMap(({ file }): [string, Sheet][] => {
      const sheet = texts.has(file) ? readSheet(file, texts.get(file) ?? '', problems) : null;
      return sheet === null ? [] : [[file, sheet]];
    }),
  );
  const names = namesOf(sheets, known);
  const reading: Reading = {
    names,
    problems,
    decimals: json.decimals ?? null,
    dayOrder: json.day_order ?? null,
    money: json.shows?.money ?? 'GBP',
  };
  const rows: RowsOf = (table) => {
    const sheet = sheets.get(table.file);
    return sheet === undefined ? [] : readTable(table, sheet, reading);
  };
  const place = json.place === undefined ? null : { latDeg: json.place.lat_deg, lonDeg: json.place.lon_deg };
  const mapJson = texts.has(mapFile) ? readJson(texts.get(mapFile) ?? '', mapFile, problems) : undefined;
  const map = mapJson === undefined ? noMap : readGroundMap(mapJson, { names, problems, farm: place });
  // What a faulty farm.json may well have said is not told as left out.
  const leftOut = said === null ? problemList() : problems;
  const about = aboutOf(json, placeOnMap(map), leftOut);
  const kindOf = (what: string): StandKind =>
    known.covers.has(what) && names.crop.find(what).kind === 'none' ? 'cover' : 'crop';
  const land = landOf(rows, map, problems);
  const stands = standsOf(rows(historyTable), rows(agreedTable), {
    beds: bedCountsOf(land.plots),
    kindOf,
    lastDayCounts: about.conventions.lastDayCounts,
  });
  return {
    about,
    ...land,
    stands,
    ...growingOf(rows, json, { kindOf, problems: leftOut }),
    ...tradeOf(rows, json),
    ...workOf(rows),
    harvests: [],
    weighings: [],
    jobsDone: [],
  };
}

type RowsOf = <R>(table: Table<R>) => Placed<R>[];

function placeOnMap(map: GroundMap): { latDeg: number; lonDeg: number } | null {
  const [first] = [...map.outlines.values()];
  const corner = first?.ring[0];
  return corner === undefined ? null : { lonDeg: corner[0], latDeg: corner[1] };
}

function landOf(
  rows: RowsOf,
  map: GroundMap,
  problems: ProblemList,
): Pick<Farm, 'fields' | 'plots' | 'parts' | 'features' | 'marks' | 'soilSamples'> {
  const plots = plotsOf(rows(plotTable), map);
  tellOverlaps(plots, problems);
  const beds = bedCountsOf(plots);
  return {
    fields: withNames(rows(fieldTable)),
    plots,
    parts: partsOf(rows(partTable), beds),
    features: featuresOf(rows(featureTable), map),
    marks: marksOf(rows(markTable), beds),
    soilSamples: rows(soilTable).map((row) => row.value),
  };
}

interface Growing {
  readonly kindOf: (what: string) => StandKind;
  readonly problems: ProblemList;
}

function growingOf(rows: RowsOf, json: FarmJson, growing: Growing): Pick<Farm, 'rotation' | 'rests' | 'crops'> {
  const courses = coursesOf(rows(courseTable), rows(rotationTable), growing.kindOf);
  const head = rotationHead(json);
  if (head === null && courses.length > 0)
    growing.problems.add('missing-value', { file: 'farm.json', line: null, column: 'rotation.first_year' });
  const placed = rows(placementTable).map((row) => row.value);
  return {
    rotation: head === null ? null : { ...head, courses, ...(placed.length === 0 ? {} : { placed }) },
    rests: restsOf(rows(restTable)),
    crops: cropsOf(rows(cropTable)),
  };
}

function workOf(rows: RowsOf): Pick<Farm, 'absences' | 'ownJobs' | 'seedLots' | 'seedOffers' | 'seedAuthorisations'> {
  const plain = <R>(table: Table<R>) => rows(table).map((row) => row.value);
  return {
    absences: absencesOf(rows(absenceTable)),
    ownJobs: plain(ownJobTable),
    seedLots: plain(seedLotTable),
    seedOffers: plain(seedOfferTable),
    seedAuthorisations: plain(seedAuthorisationTable),
  };
}

/** Back before they left is a slip of the fingers. */
function absencesOf(rows: readonly Placed<Absence>[]): readonly Absence[] {
  for (const { value, fault } of rows)
    if (value.to < value.from) fault('ends-before-start', 'to', { found: value.to, figures: { from: value.from } });
  return rows.map((row) => row.value);
}

function tradeOf(
  rows: RowsOf,
  json: FarmJson,
): Pick<Farm, 'promise' | 'prices' | 'stores' | 'storeLosses' | 'people' | 'weather' | 'aliases'> {
  const sizes = withNames(rows(sizeTable));
  return {
    promise: promiseOf(promiseHead(json), {
      sizes,
      slots: rows(slotTable),
      needs: rows(needTable),
      closed: rows(closedTable),
    }),
    prices: rows(priceTable).map((row) => row.value),
    stores: withNames(rows(storeTable)),
    storeLosses: rows(storeLossTable).map((row) => row.value),
    people: withNames(rows(peopleTable)),
    weather: rows(weatherTable).map((row) => row.value),
    aliases: Object.fromEntries(
      rows(aliasTable).map(({ value }): [string, CropId] => [value.alias.toLowerCase(), value.crop]),
    ),
  };
}
