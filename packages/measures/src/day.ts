import { Temporal } from 'temporal-polyfill';
import type { Branded } from './brand.ts';

/** A calendar day in the farm's own time zone, written 2027-04-18. Never a Date: a sowing has no hour. */
export type Day = Branded<string, 'Day'>;

const dayShape = /^\d{4}-\d{2}-\d{2}$/;

/** Reads a day written `YYYY-MM-DD`. Null for any other form and for days that are not in the calendar, such as 31 February. */
export function readDay(text: string): Day | null {
  if (!dayShape.test(text)) return null;
  try {
    Temporal.PlainDate.from(text, { overflow: 'reject' });
    return text as Day;
  } catch {
    return null;
  }
}

/** A day that our own code or this page's author wrote. Throws if it is not one. */
export function asDay(text: string): Day {
  const day = readDay(text);
  if (day === null) throw new Error(`"${text}" is not a day of the calendar written YYYY-MM-DD.`);
  return day;
}

/**
 * Whole days since 1970-01-01, for inner loops: a plan asks for tens of thousands of days.
 *
 * Source  counting by 400-year eras of the Gregorian calendar, years beginning in March so that a leap day comes last.
 * Checks  test/day.test.ts (equal to temporal-polyfill for every day asked of 1600-2400)
 */
export function dayNumber(day: Day): number {
  const year = digits(day, 0) * 100 + digits(day, 2);
  return dayNumberOf(year, digits(day, 5), digits(day, 8));
}

/** The day that stands a whole number of days after 1970-01-01. Throws outside the years 0-9999 and for fractions. */
export function dayAt(dayNumber: number): Day {
  if (!Number.isInteger(dayNumber)) throw new Error(`A day number is whole, not ${dayNumber}.`);
  const shifted = dayNumber + 719_468; // days from 0000-03-01 to 1970-01-01
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayFromMarch = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayFromMarch + 2) / 153);
  const dayOfMonth = dayFromMarch - Math.floor((153 * monthFromMarch + 2) / 5) + 1;
  const month = monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9;
  return dayOf(yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, dayOfMonth);
}

/** The day `count` days later (earlier when negative). */
export function addDays(day: Day, count: number): Day {
  return dayAt(dayNumber(day) + count);
}

/** Days from the first to the second; negative when the second is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return dayNumber(to) - dayNumber(from);
}

/** The same day `count` months later; a day that month has not, becomes its last: 31 January + 1 month = 28 or 29 February. */
export function addMonths(day: Day, count: number): Day {
  const monthCount = yearOf(day) * 12 + monthOf(day) - 1 + count;
  const year = Math.floor(monthCount / 12);
  const month = monthCount - year * 12 + 1;
  return dayOf(year, month, Math.min(digits(day, 8), daysInMonth(year, month)));
}

/** 1 for 1 January to 365, or 366 in a leap year. */
export function dayOfYear(day: Day): number {
  return dayNumber(day) - dayNumberOf(yearOf(day), 1, 1) + 1;
}

export function yearOf(day: Day): number {
  return digits(day, 0) * 100 + digits(day, 2);
}

/** 1 to 12. */
export function monthOf(day: Day): number {
  return digits(day, 5);
}

/** 28 to 31. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeapYear(year) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/** The day of these numbers. Throws when the calendar has none: for our own arithmetic, not for what people type. */
export function dayOf(year: number, month: number, dayOfMonth: number): Day {
  const isCalendarDay =
    year >= 0 && year <= 9999 && month >= 1 && month <= 12 && dayOfMonth >= 1 && dayOfMonth <= daysInMonth(year, month);
  if (!isCalendarDay) throw new Error(`There is no day ${year}-${month}-${dayOfMonth}.`);
  return `${String(year).padStart(4, '0')}-${twoDigits(month)}-${twoDigits(dayOfMonth)}` as Day;
}

function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

function dayNumberOf(year: number, month: number, dayOfMonth: number): number {
  const yearFromMarch = month <= 2 ? year - 1 : year;
  const era = Math.floor(yearFromMarch / 400);
  const yearOfEra = yearFromMarch - era * 400;
  const dayFromMarch = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + dayOfMonth - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayFromMarch;
  return era * 146_097 + dayOfEra - 719_468;
}

function digits(day: Day, at: number): number {
  return (day.charCodeAt(at) - 48) * 10 + day.charCodeAt(at + 1) - 48;
}

function twoDigits(number: number): string {
  return number < 10 ? `0${number}` : String(number);
}
