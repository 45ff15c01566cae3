/** All tables of the farm folder, in the order in which they are best read. */
import type { Table } from '../table/column.ts';
import { featureTable, fieldTable, markTable, partTable, plotTable, soilTable } from './land-tables.ts';
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
} from './promise-tables.ts';
import {
  agreedTable,
  courseTable,
  cropTable,
  historyTable,
  placementTable,
  restTable,
  rotationTable,
} from './stand-tables.ts';
import { absenceTable, ownJobTable, seedAuthorisationTable, seedLotTable, seedOfferTable } from './work-tables.ts';

export type AnyTable = Table<Readonly<Record<string, unknown>>>;

export const tables: readonly AnyTable[] = [
  fieldTable,
  plotTable,
  partTable,
  featureTable,
  courseTable,
  rotationTable,
  placementTable,
  historyTable,
  agreedTable,
  restTable,
  cropTable,
  aliasTable,
  sizeTable,
  slotTable,
  needTable,
  closedTable,
  priceTable,
  storeTable,
  storeLossTable,
  peopleTable,
  absenceTable,
  ownJobTable,
  seedLotTable,
  seedOfferTable,
  seedAuthorisationTable,
  soilTable,
  markTable,
  weatherTable,
] as unknown as readonly AnyTable[];
