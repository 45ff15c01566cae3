/** A farm and its book as the files of a farm folder. Reading them gives the same farm. */
import type { ReceivedEntry } from '../entry/entry.ts';
import type { Farm } from '../farm/farm.ts';
import { mapFile, writeGroundMap } from '../ground/ground-map.ts';
import { asWished, rowsOfPart } from '../rows/land.ts';
import { featureTable, fieldTable, markTable, partTable, plotTable, soilTable } from '../rows/land-tables.ts';
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
import { rowsOfCourses } from '../rows/rotation.ts';
import {
  agreedTable,
  courseTable,
  cropTable,
  historyTable,
  placementTable,
  restTable,
  rotationTable,
} from '../rows/stand-tables.ts';
import { rowOfStand } from '../rows/stands.ts';
import {
  absenceTable,
  ownJobTable,
  seedAuthorisationTable,
  seedLotTable,
  seedOfferTable,
} from '../rows/work-tables.ts';
import type { Table } from '../table/column.ts';
import { writeTable } from '../table/write-table.ts';
import { writeFarmJson } from './about.ts';
import { writeBookLines } from './book-lines.ts';
import { bookFileName } from './text.ts';

/**
 * Files by name, texts. Tables without rows are left out. Harvests, weighings and jobs done stand in no table: they are records, and travel as
 * the entries. For a farm kept as a book, hand in what describes it, `replay(emptyFarm(about), entries, { only: 'descriptions' }).farm`, with all
 * its entries: reading the folder and replaying its entries gives the farm again.
 */
export function writeFarmFolder(farm: Farm, entries: readonly ReceivedEntry[]): Map<string, string> {
  const files = new Map<string, string>();
  const money = farm.about.shows.money;
  const put = <R>(table: Table<R>, rows: readonly R[], growing?: readonly Readonly<Record<string, number>>[]) => {
    if (rows.length > 0 || table.file === plotTable.file)
      files.set(table.file, writeTable(table, rows, money, growing));
  };
  files.set('farm.json', writeFarmJson(farm.about, farm.rotation, farm.promise));
  putLand(farm, put);
  putGrowing(farm, put);
  putTrade(farm, put);
  const map = writeGroundMap(farm.plots, farm.features);
  if (map !== null) files.set(mapFile, map);
  if (entries.length > 0) files.set(bookFileName, writeBookLines(entries));
  return files;
}

type Put = <R>(table: Table<R>, rows: readonly R[], growing?: readonly Readonly<Record<string, number>>[]) => void;

function putLand(farm: Farm, put: Put): void {
  put(fieldTable, farm.fields);
  put(plotTable, farm.plots);
  put(partTable, farm.parts.flatMap(rowsOfPart));
  put(featureTable, farm.features);
  put(markTable, farm.marks.map(asWished));
  put(soilTable, farm.soilSamples);
}

function putGrowing(farm: Farm, put: Put): void {
  const rows = (recorded: boolean) =>
    farm.stands
      .filter((stand) => (stand.state === 'recorded') === recorded)
      .map((stand) => rowOfStand(stand, farm.about.conventions.lastDayCounts));
  put(historyTable, rows(true));
  put(agreedTable, rows(false));
  put(courseTable, farm.rotation?.courses ?? []);
  put(placementTable, farm.rotation?.placed ?? []);
  put(rotationTable, farm.rotation === null ? [] : rowsOfCourses(farm.rotation));
  put(restTable, farm.rests);
  put(cropTable, farm.crops);
}

function putTrade(farm: Farm, put: Put): void {
  const { promise } = farm;
  put(
    aliasTable,
    Object.entries(farm.aliases).map(([alias, crop]) => ({ alias, crop })),
  );
  put(sizeTable, promise?.sizes ?? []);
  put(slotTable, promise?.slots ?? [], promise?.slots.map((slot) => slot.portions) ?? []);
  put(needTable, promise?.needs ?? []);
  put(closedTable, [
    ...(promise?.closedWeeks ?? []).map((week) => ({ week, packOn: null })),
    ...(promise?.movedPackDays ?? []),
  ]);
  put(priceTable, farm.prices);
  put(storeTable, farm.stores);
  put(storeLossTable, farm.storeLosses);
  put(
    peopleTable,
    farm.people.map((person) => ({ ...person, weekdays: person.weekdays ?? [], skills: person.skills ?? [] })),
  );
  put(absenceTable, farm.absences);
  put(ownJobTable, farm.ownJobs);
  put(seedLotTable, farm.seedLots);
  put(seedOfferTable, farm.seedOffers);
  put(seedAuthorisationTable, farm.seedAuthorisations);
  put(weatherTable, farm.weather);
}
