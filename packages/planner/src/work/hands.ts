/** The hours there are: people's weeks, with seasonal hands in their season. */

import type { Person } from '@leywright/book';
import { type Day, dayInYear, dayNumber, endOfWindow, inWindow } from '@leywright/measures';

const weeksOfYear = 365.25 / 7;

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

/** Hours of all hands in the week of a Monday; hours known only for a year are spread over the person's season. Null when nobody's are known. */
export function handsInWeek(people: readonly Person[], thursday: Day): number | null {
  if (!handsAreKnown(people)) return null;
  const there = people.filter(
    (person) => person.from === null || person.to === null || inWindow(thursday, person.from, person.to),
  );
  return there.reduce((sum, person) => sum + (person.hoursWeek ?? (person.hoursYear ?? 0) / personWeeks(person)), 0);
}
