import type { Branded } from './brand.ts';
import { type Day, dayAt, dayNumber, dayOf, yearOf } from './day.ts';

/** A week of the ISO calendar (Monday to Sunday; week 1 holds 4 January), written 2027-w02. */
export type IsoWeek = Branded<string, 'IsoWeek'>;

const weekShape = /^(\d{4})-?[wW](\d{2})$/;

/** Reads `2027-w02` (also `2027-W02` and `2027W02`). Null for other forms and for week 53 of a year that has 52. */
export function readIsoWeek(text: string): IsoWeek | null {
  const match = weekShape.exec(text.trim());
  if (match === null) return null;
  const isoYear = Number(match[1]);
  const week = Number(match[2]);
  if (isoYear < 1 || isoYear > 9998 || week < 1 || week > weeksInYear(isoYear)) return null;
  return weekText(isoYear, week);
}

/** A week that our own code wrote. Throws if it is not one. */
export function asIsoWeek(text: string): IsoWeek {
  const week = readIsoWeek(text);
  if (week === null) throw new Error(`"${text}" is not a week of the calendar written 2027-w02.`);
  return week;
}

/** The week a day lies in. The last days of December may lie in week 1 of the next year, the first of January in week 52 or 53 of the last. */
export function weekOf(day: Day): IsoWeek {
  const number = dayNumber(day);
  const thursday = number - weekdayIndex(number) + 3;
  const isoYear = yearOf(dayAt(thursday));
  return weekText(isoYear, Math.floor((thursday - firstMonday(isoYear)) / 7) + 1);
}

/** The Monday on which a week begins. */
export function mondayOf(week: IsoWeek): Day {
  return dayAt(mondayNumber(week));
}

/** 52 or 53. */
export function weeksInYear(isoYear: number): 52 | 53 {
  return firstMonday(isoYear + 1) - firstMonday(isoYear) === 371 ? 53 : 52;
}

/** Weeks from the first to the second; negative when the second is earlier. */
export function weeksBetween(from: IsoWeek, to: IsoWeek): number {
  return (mondayNumber(to) - mondayNumber(from)) / 7;
}

/** The week `count` weeks later (earlier when negative). */
export function addWeeks(week: IsoWeek, count: number): IsoWeek {
  return weekOf(dayAt(mondayNumber(week) + 7 * count));
}

/** Which week from the start on a day lies in: 0 in the start week itself. For arrays with one place a week. */
export function weekIndex(start: IsoWeek, day: Day): number {
  return Math.floor((dayNumber(day) - mondayNumber(start)) / 7);
}

/** 1 for Monday to 7 for Sunday. */
export function weekdayOf(day: Day): number {
  return weekdayIndex(dayNumber(day)) + 1;
}

function weekText(isoYear: number, week: number): IsoWeek {
  return `${String(isoYear).padStart(4, '0')}-w${String(week).padStart(2, '0')}` as IsoWeek;
}

function mondayNumber(week: IsoWeek): number {
  return firstMonday(Number(week.slice(0, 4))) + 7 * (Number(week.slice(6)) - 1);
}

function firstMonday(isoYear: number): number {
  const fourthOfJanuary = dayNumber(dayOf(isoYear, 1, 4));
  return fourthOfJanuary - weekdayIndex(fourthOfJanuary);
}

/** 0 for Monday: 1970-01-01 was a Thursday. */
function weekdayIndex(dayNumber: number): number {
  return (((dayNumber + 3) % 7) + 7) % 7;
}
