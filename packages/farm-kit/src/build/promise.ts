/** Promises, stores, people and prices for tests and for the sample farm. */

import type {
  BoxPromise,
  BoxSize,
  OwnCrop,
  Person,
  Price,
  SaleUnit,
  Slot,
  StorePlace,
  YearNeed,
} from '@leywright/book';
import { asDay, asId, asMonthDay } from '@leywright/measures';

/** A promise of nothing yet: one size, boxes on Thursdays in every week. */
export function boxPromise(pieces: Partial<BoxPromise> = {}): BoxPromise {
  return {
    sizes: [boxSize('box', 100)],
    itemsPerBox: null,
    packWeekday: 4,
    from: null,
    to: null,
    closedWeeks: [],
    closedEveryYear: [],
    movedPackDays: [],
    slots: [],
    needs: [],
    boxWeeksPerYear: null,
    ...pieces,
  };
}

export function boxSize(id: string, households: number): BoxSize {
  return { id, name: id.charAt(0).toUpperCase() + id.slice(1), households };
}

export interface SlotPieces {
  readonly id?: string;
  readonly from?: string;
  readonly to?: string;
  readonly everyWeeks?: number;
  readonly unit?: SaleUnit;
  readonly portions?: Readonly<Record<string, number>>;
}

/** A place in the box every year between two month-days, filled by the first of the crops that can. */
export function slot(crops: string | readonly string[], pieces: SlotPieces = {}): Slot {
  const list = typeof crops === 'string' ? [crops] : crops;
  return {
    id: pieces.id ?? list[0] ?? 'slot',
    crops: list.map((crop) => asId(crop)),
    window: { kind: 'yearly', from: asMonthDay(pieces.from ?? '01-01'), to: asMonthDay(pieces.to ?? '12-31') },
    everyWeeks: pieces.everyWeeks ?? 1,
    unit: pieces.unit ?? 'kg',
    portions: pieces.portions ?? { box: 1 },
  };
}

export function yearNeed(
  crop: string,
  need: { readonly kgHousehold: number } | { readonly m2Household: number },
): YearNeed {
  return { crop: asId(crop), kgHousehold: null, m2Household: null, ...need };
}

export function storePlace(
  id: string,
  kind: string,
  crops: readonly string[],
  capacityKg: number | null = null,
): StorePlace {
  return { id: asId(id), name: id, kind, crops: crops.map((crop) => asId(crop)), capacityKg };
}

export function person(id: string, pieces: Partial<Omit<Person, 'id'>> = {}): Person {
  return {
    id: asId(id),
    name: id.charAt(0).toUpperCase() + id.slice(1),
    role: 'grower',
    hoursWeek: null,
    hoursYear: null,
    from: null,
    to: null,
    paid: true,
    weekdays: [],
    skills: [],
    ...pieces,
  };
}

export function price(crop: string, unit: SaleUnit, priceMinor: number): Price {
  return { crop: asId(crop), from: null, unit, priceMinor };
}

/** Own figures of a crop; what is not given stays the reference's. */
export function ownCrop(
  id: string,
  pieces: Partial<Omit<OwnCrop, 'id' | 'basedOn'>> & { readonly basedOn?: string } = {},
): OwnCrop {
  const { basedOn, ...rest } = pieces;
  return {
    id: asId(id),
    basedOn: basedOn === undefined ? null : asId(basedOn),
    name: null,
    family: null,
    variety: null,
    unit: null,
    unitKg: null,
    yieldGrossTHa: null,
    yieldMarketableTHa: null,
    yieldPackedTHa: null,
    gradingLossShare: null,
    packingLossShare: null,
    storeLossTotalShare: null,
    bedCentresM: null,
    rowsPerBed: null,
    plantsPerRowM: null,
    germinationShare: null,
    fieldFactorShare: null,
    thousandSeedG: null,
    seedMarginShare: null,
    packSeeds: null,
    hoursPerHa: null,
    ...rest,
  };
}

/** A place in the box between two days and never again. */
export function slotOnce(
  crops: string | readonly string[],
  [from, to]: readonly [from: string, to: string],
  pieces: Omit<SlotPieces, 'from' | 'to'> = {},
): Slot {
  return { ...slot(crops, pieces), window: { kind: 'once', from: asDay(from), to: asDay(to) } };
}
