/** The hours there are: people's weeks, with seasonal hands in their season, less the days they are away. */

import type { Absence, Person } from '@leywright/book';
import {
  addDays,
  type Day,
  dayInYear,
  dayNumber,
  endOfWindow,
  type IsoWeek,
  inWindow,
  mondayOf,
  weekdayOf,
} from '@leywright/measures';

const weeksOfYear = 365.25 / 7;
/** Days over which the hours of somebody lie who names no days. */
const usualWeekdays = [1, 2, 3, 4, 5];

/** Weeks of a year a person is there. */
export function personWeeks(person: Person): number {
  if (person.from === null || person.to === null) return weeksOfYear;
  const from = dayNumber(dayInYear(person.from, 2026));
  const to = dayNumber(endOfWindow(person.to, person.to < person.from ? 2027 : 2026));
  return (to - from + 1) / 7;
}

/** Whether anybody's hours are written down. */
export function handsAreKnown(people: readonly Person[]): boolean {
  return people.some((person) => person.hoursWeek !== null || person.hoursYear !== null);
}

/** Days of a week on which a person works: theirs, less those away. */
export function daysOfPerson(person: Person, week: IsoWeek, absences: readonly Absence[]): readonly Day[] {
  const monday = mondayOf(week);
  const own = person.weekdays ?? [];
  const weekdays = own.length > 0 ? own : usualWeekdays;
  const ours = absences.filter((one) => one.person === person.id);
  return Array.from({ length: 7 }, (_, at) => addDays(monday, at)).filter(
    (day) => weekdays.includes(weekdayOf(day)) && !ours.some((one) => one.from <= day && day <= one.to),
  );
}

/** Hours of one person in a week; hours known only for a year are spread over the person's season. By the week's Thursday they are there or not. */
export function hoursOfPersonH(person: Person, week: IsoWeek, absences: readonly Absence[]): number {
  const thursday = addDays(mondayOf(week), 3);
  if (person.from !== null && person.to !== null && !inWindow(thursday, person.from, person.to)) return 0;
  const fullH = person.hoursWeek ?? (person.hoursYear ?? 0) / personWeeks(person);
  const usual = (person.weekdays ?? []).length || usualWeekdays.length;
  return (fullH * daysOfPerson(person, week, absences).length) / usual;
}

/** Hours of all hands in a week. Null when nobody's are known. */
export function handsInWeek(people: readonly Person[], week: IsoWeek, absences: readonly Absence[]): number | null {
  if (!handsAreKnown(people)) return null;
  return people.reduce((sum, person) => sum + hoursOfPersonH(person, week, absences), 0);
}
