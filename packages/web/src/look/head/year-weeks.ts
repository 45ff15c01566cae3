import { addDays, asIsoWeek, type Day, type IsoWeek, mondayOf, monthOf, weeksInYear } from '@leywright/measures';

export const monthNames = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;
export const weekdayNames = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** The ISO week of a year and a number; numbers past either end of the year run on into the next or the last. */
export function weekAt(isoYear: number, number: number): IsoWeek {
  let year = isoYear;
  let week = number;
  while (week > weeksInYear(year)) {
    week -= weeksInYear(year);
    year += 1;
  }
  while (week < 1) {
    year -= 1;
    week += weeksInYear(year);
  }
  return asIsoWeek(`${String(year).padStart(4, '0')}-w${String(week).padStart(2, '0')}`);
}

export function isoYearOf(week: IsoWeek): number {
  return Number(week.slice(0, 4));
}

/** 1 to 53. */
export function weekNumberOf(week: IsoWeek): number {
  return Number(week.slice(6));
}

/** "7 June". */
export function dayAndMonth(day: Day): string {
  return `${Number(day.slice(8))} ${monthNames[monthOf(day) - 1]}`;
}

/** "28 June to 4 July". */
export function weekSpan(week: IsoWeek): string {
  const monday = mondayOf(week);
  const sunday = addDays(monday, 6);
  return monthOf(monday) === monthOf(sunday)
    ? `${Number(monday.slice(8))} to ${dayAndMonth(sunday)}`
    : `${dayAndMonth(monday)} to ${dayAndMonth(sunday)}`;
}

/** "week 23, Monday 7 June". */
export function spokenWeek(week: IsoWeek): string {
  return `week ${weekNumberOf(week)}, Monday ${dayAndMonth(mondayOf(week))}`;
}

/** For each month the first week of the year whose Monday lies in it: where a picture of weeks writes the month's name. */
export function monthStarts(isoYear: number): readonly { readonly name: string; readonly week: number }[] {
  const starts: { name: string; week: number }[] = [];
  for (let number = 1; number <= weeksInYear(isoYear); number += 1) {
    const name = monthNames[monthOf(addDays(mondayOf(weekAt(isoYear, number)), 3)) - 1] ?? '';
    if (starts.at(-1)?.name !== name) starts.push({ name, week: number });
  }
  return starts.slice(0, 12);
}
