import type { Branded } from './brand.ts';
import { type Day, dayOf, daysInMonth } from './day.ts';

/** A day of any year, written 04-18: how the reference tables and laws give their windows. */
export type MonthDay = Branded<string, 'MonthDay'>;

const monthDayShape = /^(\d{2})-(\d{2})$/;

/** Reads `MM-DD`. Null for any other form and for days no year has; 02-29 is a day of leap years. */
export function readMonthDay(text: string): MonthDay | null {
  const match = monthDayShape.exec(text);
  if (match === null) return null;
  const month = Number(match[1]);
  const dayOfMonth = Number(match[2]);
  const leapYear = 2000;
  return month >= 1 && month <= 12 && dayOfMonth >= 1 && dayOfMonth <= daysInMonth(leapYear, month)
    ? (text as MonthDay)
    : null;
}

/** A month and day that our own code or tables wrote. Throws if it is not one. */
export function asMonthDay(text: string): MonthDay {
  const monthDay = readMonthDay(text);
  if (monthDay === null) throw new Error(`"${text}" is not a day of the year written MM-DD.`);
  return monthDay;
}

/** Its day in that year; 02-29 becomes 28 February in a common year. */
export function dayInYear(monthDay: MonthDay, year: number): Day {
  const month = Number(monthDay.slice(0, 2));
  return dayOf(year, month, Math.min(Number(monthDay.slice(3)), daysInMonth(year, month)));
}

/** Its day in that year as the last day of a window: 02-28 there means the last day of February. */
export function endOfWindow(monthDay: MonthDay, year: number): Day {
  return monthDay === '02-28' ? dayOf(year, 2, daysInMonth(year, 2)) : dayInYear(monthDay, year);
}

/** Whether the day lies in the window, both ends included. A window whose end is before its start wraps over new year. */
export function inWindow(day: Day, from: MonthDay, to: MonthDay): boolean {
  const at = day.slice(5);
  const last: string = to === '02-28' ? '02-29' : to;
  return last < from ? at >= from || at <= last : at >= from && at <= last;
}

/** The month and day of a day. */
export function monthDayOf(day: Day): MonthDay {
  return day.slice(5) as unknown as MonthDay;
}
