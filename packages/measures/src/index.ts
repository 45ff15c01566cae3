/** Days, weeks, areas, masses, money and ids: what every other package counts in. Knows no clock. */

export type { AreaUnit } from './amounts/area.ts';
export * as area from './amounts/area.ts';
export type { LengthUnit } from './amounts/length.ts';
export * as length from './amounts/length.ts';
export type { MassUnit } from './amounts/mass.ts';
export * as mass from './amounts/mass.ts';
export type { Money } from './amounts/money.ts';
export * as money from './amounts/money.ts';
export { type DecimalSign, decimalSigns, type ReadNumber, readNumber } from './amounts/quantity.ts';
export type { Branded } from './brand.ts';
export { unreachable } from './closed-list.ts';
export {
  addDays,
  addMonths,
  asDay,
  type Day,
  dayAt,
  dayNumber,
  dayOf,
  dayOfYear,
  daysBetween,
  daysInMonth,
  monthOf,
  readDay,
  yearOf,
} from './day.ts';
export {
  asId,
  type CourseId,
  type CoverId,
  type CropId,
  type DeviceId,
  type EntryId,
  type FarmId,
  type FieldId,
  type FigureId,
  type Id,
  longestIdChars,
  type PartId,
  type PersonId,
  type PlotId,
  readId,
  type StandId,
  type StoreId,
  type SuccessionId,
} from './ids.ts';
export type { Interval } from './interval.ts';
export * as intervals from './interval.ts';
export { type DayOrder, dayOrders, type LooseDay, readDayLoosely } from './loose-day.ts';
export { asMonthDay, dayInYear, endOfWindow, inWindow, type MonthDay, monthDayOf, readMonthDay } from './month-day.ts';
export {
  addWeeks,
  asIsoWeek,
  type IsoWeek,
  mondayOf,
  readIsoWeek,
  weekdayOf,
  weekIndex,
  weekOf,
  weeksBetween,
  weeksInYear,
} from './week.ts';
