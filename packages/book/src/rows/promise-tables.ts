/** Tables of the promise, of what keeps it, and of the people who do. */
import type { CropId, Day, IsoWeek, PersonId, StoreId } from '@leywright/measures';
import { asMonthDay } from '@leywright/measures';
import {
  type BoxSize,
  type OwnStoreLoss,
  type Person,
  type Price,
  roles,
  type SaleUnit,
  type Slot,
  type SlotWindow,
  type StorePlace,
  type WeatherDay,
  type YearNeed,
} from '../farm/promise.ts';
import { skills } from '../farm/work.ts';
import { type Column, may, must, orElse, type Row, type Table } from '../table/column.ts';
import { day, dayOrMonday, dayOrSunday, monthDay, week, weekdays } from '../table/day-kinds.ts';
import { nameOf, namesOf } from '../table/name-kinds.ts';
import { id, listOf, number, oneOf, text, wholeNumber, yesNo } from '../table/plain-kinds.ts';
import { masses, price } from '../table/unit-kinds.ts';
import { named, type Open } from './land-tables.ts';

const saleUnits: readonly SaleUnit[] = ['kg', 'head', 'bunch'];

export const sizeTable: Table<Open<BoxSize, 'name'>> = {
  file: 'sizes.csv',
  about: 'Box sizes and the households that take them.',
  key: ['id'],
  columns: {
    id: must('id', id<string>(), 'unique', { alsoCalled: ['size'] }),
    name: may('name', text, named),
    households: must('households', number('households', { least: 0 }), 'that take this size'),
  },
};

export type SlotRow = Open<Omit<Slot, 'portions'>, 'id'>;

export const slotTable: Table<SlotRow> = {
  file: 'promise.csv',
  about:
    'Places in the box: one row each. `portion_small` is what the size with the id small gets; an empty cell or no such heading: none.',
  key: [],
  growing: { beginning: 'portion_', of: 'size' },
  columns: {
    id: may('id', id<string>(), 'unique; made from the first crop when left out', { alsoCalled: ['slot'] }),
    crops: must('crops', namesOf<CropId>('crop'), 'the first that can fill the place does, then the next', {
      alsoCalled: ['crop'],
    }),
    window: windowColumn(),
    everyWeeks: orElse(
      'every_weeks',
      wholeNumber('weeks', { least: 1, most: 53 }),
      1,
      '2 = every other box week, from the window’s first; 1 when left out',
    ),
    unit: orElse('unit', oneOf(saleUnits), 'kg', 'what the portions count in; kg when left out'),
  },
};

/** Both ends as month and day: every year. Days or weeks: once, from a week’s Monday to a week’s Sunday. */
function windowColumn(): Column<SlotWindow> {
  const holds = 'month and day, day or ISO week';
  return {
    headings: [
      { name: 'from', holds, numeric: false },
      { name: 'to', holds, numeric: false },
    ],
    takes: 'group',
    alsoCalled: [],
    required: false,
    meaning:
      'first and last day. Both as 10-01: every year, over new year where `to` comes first. Both as days or weeks: once. All year when left out',
    read: readWindow,
    write: (window) => [window.from, window.to],
  };
}

function readWindow(row: Row): SlotWindow | undefined {
  const isYearly = (heading: string) => /^(\d{1,2}-\d{1,2})?$/.test(row.text(heading));
  if (isYearly('from') && isYearly('to')) return yearlyWindow(row);
  const odd = ['from', 'to'].find(isYearly);
  return odd === undefined ? onceWindow(row) : row.cell(odd).fault('mixed-window');
}

function yearlyWindow(row: Row): SlotWindow | undefined {
  const end = (heading: string, whenEmpty: string) =>
    row.text(heading) === '' ? asMonthDay(whenEmpty) : monthDay.read(row.text(heading), row.cell(heading));
  const from = end('from', '01-01');
  const to = end('to', '12-31');
  return from === undefined || to === undefined ? undefined : { kind: 'yearly', from, to };
}

function onceWindow(row: Row): SlotWindow | undefined {
  const from = dayOrMonday.read(row.text('from'), row.cell('from'));
  const to = dayOrSunday.read(row.text('to'), row.cell('to'));
  if (from === undefined || to === undefined) return undefined;
  return from <= to ? { kind: 'once', from, to } : row.cell('to').fault('ends-before-start', { figures: { from } });
}

export const needTable: Table<YearNeed> = {
  file: 'needs.csv',
  about: 'What a household needs in a year, when that is how the farm counts: kilos, or ground.',
  key: ['crop'],
  columns: {
    crop: must('crop', nameOf<CropId>('crop'), 'crop'),
    kgHousehold: may('kg_household', number('kg a year', { least: 0 }), 'what a household takes'),
    m2Household: may('m2_household', number('m² a year', { least: 0 }), 'or the ground it asks for'),
  },
};

export interface ClosedRow {
  readonly week: IsoWeek;
  readonly packOn: Day | null;
}

export const closedTable: Table<ClosedRow> = {
  file: 'closed.csv',
  about: 'Weeks without a box, and weeks packed on another day. Weeks closed in every year stand in farm.json.',
  key: ['week'],
  columns: {
    week: must('week', week, 'the week'),
    packOn: may('pack_on', day, 'given: the box goes out, packed on this day instead'),
  },
};

export const priceTable: Table<Price> = {
  file: 'prices.csv',
  about:
    'Prices, each in force until the next of the same crop and unit. Without prices, cost and worth are unknown, not nought.',
  key: ['crop', 'from', 'unit'],
  columns: {
    crop: must('crop', nameOf<CropId>('crop'), 'crop'),
    from: may('from', dayOrMonday, 'in force from; always when left out'),
    unit: orElse('unit', oneOf(saleUnits), 'kg', 'priced by; kg when left out'),
    priceMinor: must('price', price, 'for one unit'),
  },
};

export const storeTable: Table<Open<StorePlace, 'name'>> = {
  file: 'stores.csv',
  about: 'Where crops are kept.',
  key: ['id'],
  columns: {
    id: must('id', id<StoreId>(), 'unique', { alsoCalled: ['store'] }),
    name: may('name', text, named),
    kind: must('kind', nameOf<string>('store kind'), 'as in the storage table'),
    crops: orElse<readonly CropId[]>('crops', namesOf<CropId>('crop'), [], 'crops kept in it'),
    capacityKg: may('capacity', masses(), 'most it holds'),
  },
};

export const storeLossTable: Table<OwnStoreLoss> = {
  file: 'store_losses.csv',
  about: 'Own weekly losses in store, each in force until the next of the same crop; they replace the storage table’s.',
  key: ['crop', 'from'],
  columns: {
    crop: must('crop', nameOf<CropId>('crop'), 'crop'),
    from: may('from', dayOrMonday, 'in force from; always when left out'),
    lossShareWeek: must(
      'loss',
      [
        { ending: 'share_week', ...number('share of 1', { least: 0, most: 1 }) },
        { ending: 'pct_week', ...number('%', { least: 0, most: 1 }, 0.01) },
      ],
      'of what lies there at the week’s start',
    ),
  },
};

export const peopleTable: Table<Open<Required<Person>, 'name'>> = {
  file: 'people.csv',
  about: 'The people who do the work.',
  key: ['id'],
  columns: {
    id: must('id', id<PersonId>(), 'unique', { alsoCalled: ['person'] }),
    name: may('name', text, named),
    role: orElse('role', oneOf(roles), 'hand', 'hand when left out'),
    hoursWeek: may('hours_week', number('h', { least: 0, most: 168 }), 'in a week'),
    hoursYear: may('hours_year', number('h', { least: 0, most: 8784 }), 'or in a year'),
    from: may('from', monthDay, 'there from, every year'),
    to: may('to', monthDay, 'there to, every year'),
    paid: orElse('paid', yesNo, true, 'yes when left out; unpaid hours count as work, not as cost'),
    weekdays: orElse('weekdays', weekdays, [], 'days they work on, mon;tue; any when left out'),
    skills: orElse('skills', listOf(skills), [], 'what they may do that not everyone may'),
  },
};

export const weatherTable: Table<WeatherDay> = {
  file: 'weather.csv',
  about: 'Weather as measured on the farm. An empty cell was not measured.',
  key: ['day'],
  columns: {
    day: must('day', day, 'day', { alsoCalled: ['date'] }),
    tMaxC: may('t_max_c', number('°C', { least: -70, most: 60 }), 'highest temperature'),
    tMinC: may('t_min_c', number('°C', { least: -80, most: 50 }), 'lowest temperature'),
    rainMm: may('rain_mm', number('mm', { least: 0, most: 2000 }), 'rain'),
    sunH: may('sun_h', number('h', { least: 0, most: 24 }), 'sunshine'),
    radiationMjM2: may('radiation_mj_m2', number('MJ/m²', { least: 0, most: 50 }), 'solar radiation'),
    windMS: may('wind_m_s', number('m/s', { least: 0, most: 100 }), 'mean wind at 2 m'),
    humidityPct: may('humidity_pct', number('%', { least: 0, most: 100 }), 'mean relative humidity'),
  },
};

export interface AliasRow {
  readonly alias: string;
  readonly crop: CropId;
}

export const aliasTable: Table<AliasRow> = {
  file: 'aliases.csv',
  about: 'Other names people write for a crop, in any language.',
  key: ['alias'],
  columns: {
    alias: must('alias', text, 'what people write', { alsoCalled: ['name'] }),
    crop: must('crop', nameOf<CropId>('crop'), 'crop it means'),
  },
};
