/** Days, weeks and months-and-days as people write them. What could be two days is refused with both readings. */
import {
  addDays,
  type Day,
  type IsoWeek,
  type MonthDay,
  mondayOf,
  readDay,
  readDayLoosely,
  readIsoWeek,
  readMonthDay,
  weekOf,
  weeksInYear,
} from '@leywright/measures';
import { farmYears, inFarmYears } from '../farm/farm-years.ts';
import type { Cell, Kind } from './column.ts';
import { listOf } from './plain-kinds.ts';

export const day: Kind<Day> = { holds: 'day, 2027-04-18', read: readCellDay, write: (value) => value };

export const monthDay: Kind<MonthDay> = {
  holds: 'month and day, 04-18',
  read: (found, cell) => readMonthDay(found) ?? cell.fault('not-a-month-day', { nearest: nearMonthDay(found) }),
  write: (value) => value,
};

const weekdayNames = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;

/** Days of the week, 1 = Monday, each once and in order. */
export const weekdays: Kind<readonly number[]> = {
  holds: `${weekdayNames.join(', ')}, joined by ;`,
  read: (found, cell) => {
    const names = listOf(weekdayNames).read(found, cell);
    return names?.map((name) => weekdayNames.indexOf(name) + 1).sort();
  },
  write: (value) => value.map((one) => weekdayNames[one - 1] ?? '').join(';'),
};

/** A week; a day stands for the week it lies in. */
export const week: Kind<IsoWeek> = {
  holds: 'ISO week, 2027-w16',
  read: (found, cell) => {
    const read = readCellWeek(found, cell);
    if (read !== null) return read;
    const lies = readDay(found);
    return lies === null ? cell.fault('not-a-week') : weekOf(lies);
  },
  write: (value) => value,
};

/** A day, or a week that stands for its Monday. */
export const dayOrMonday: Kind<Day> = {
  holds: 'day, or ISO week for its Monday',
  read: (found, cell) => dayOrWeek(found, cell, 0),
  write: (value) => value,
};

/** A day, or a week that stands for its Sunday. */
export const dayOrSunday: Kind<Day> = {
  holds: 'day, or ISO week for its Sunday',
  read: (found, cell) => dayOrWeek(found, cell, 6),
  write: (value) => value,
};

function dayOrWeek(found: string, cell: Cell, weekday: number): Day | undefined {
  const read = readCellWeek(found, cell);
  if (read === undefined) return undefined;
  return read === null ? readCellDay(found, cell) : addDays(mondayOf(read), weekday);
}

const weekForm = /^(\d{4})-?[wW](\d{1,2})$/;

/** Null when the text has not the form of a week at all; undefined, told, when there is no such week. */
export function readCellWeek(found: string, cell: Cell): IsoWeek | null | undefined {
  const match = weekForm.exec(found);
  if (match === null) return null;
  const read = readIsoWeek(`${match[1]}-w${(match[2] ?? '').padStart(2, '0')}`);
  if (read !== null) return read;
  const year = Number(match[1]);
  const last = year >= 1 && year <= 9998 ? weeksInYear(year) : 52;
  const near = Number(match[2]) === 53 && year < 9998 ? [`${year}-w52`, `${year + 1}-w01`] : [`${match[1]}-w${last}`];
  return cell.fault('no-such-week', { nearest: near, figures: { weeksInYear: last } });
}

/** A day; undefined, told, when it is none or could be two. */
export function readCellDay(found: string, cell: Cell): Day | undefined {
  const withoutMidnight = found.replace(/[T ]00:00(:00(\.0+)?)?Z?$/, '');
  const read = readDayLoosely(withoutMidnight, cell.dayOrder);
  if (read.kind === 'day') return inFarmYears(read.day) ? read.day : cell.fault('out-of-range', { figures: farmYears });
  if (read.kind === 'ambiguous') return cell.fault('ambiguous-day', { nearest: [...read.readings] });
  if (read.why === 'not-in-calendar')
    return cell.fault('not-in-calendar', { nearest: lastOfThatMonth(withoutMidnight) });
  return cell.fault(read.why === 'two-digit-year' ? 'two-digit-year' : 'not-a-day', { nearest: [] });
}

/** 31 February was most likely the month's last day. */
function lastOfThatMonth(found: string): string[] {
  const iso = /^(\d{4})\D(\d{1,2})\D\d{1,2}$/.exec(found);
  const late = /^\d{1,2}\D(\d{1,2})\D(\d{4})$/.exec(found);
  const year = iso?.[1] ?? late?.[2];
  const month = (iso?.[2] ?? late?.[1] ?? '').padStart(2, '0');
  for (const dayOfMonth of [31, 30, 29, 28]) {
    const last = readDay(`${year}-${month}-${dayOfMonth}`);
    if (last !== null) return [last];
  }
  return [];
}

function nearMonthDay(found: string): string[] {
  const whole = readDay(found);
  if (whole !== null) return [whole.slice(5)];
  const [, month = '', dayOfMonth = ''] = /^(\d{1,2})\D(\d{1,2})$/.exec(found) ?? [];
  const padded = readMonthDay(`${month.padStart(2, '0')}-${dayOfMonth.padStart(2, '0')}`);
  const turned = readMonthDay(`${dayOfMonth.padStart(2, '0')}-${month.padStart(2, '0')}`);
  return [padded, turned].filter((one) => one !== null).filter((one, at, all) => all.indexOf(one) === at);
}
