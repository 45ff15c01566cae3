/** The weeks a supply is worked out over, as places from a Monday, so that the loops run on numbers. */
import { type Day, dayAt, dayNumber, dayOf, type IsoWeek, mondayOf, weekOf } from '@leywright/measures';

export interface WeekAxis {
  readonly firstMonday: Day;
  readonly firstDay: number;
  /** First day after the axis. */
  readonly endDay: number;
  readonly weeks: number;
  readonly weekOf: (day: number) => number;
  readonly dayOf: (week: number) => number;
  readonly nameOf: (week: number) => IsoWeek;
  readonly textOf: (day: number) => Day;
}

/**
 * From the first week of the year before the one in focus to the last of the year after it: last year's harvest fills this winter's store, and
 * this year's store runs into next spring.
 */
export function axisAround(year: number): WeekAxis {
  return weekAxis(mondayOf(weekOf(dayOf(year - 1, 1, 4))), mondayOf(weekOf(dayOf(year + 2, 1, 4))));
}

export function weekAxis(firstMonday: Day, endMonday: Day): WeekAxis {
  const firstDay = dayNumber(firstMonday);
  const endDay = dayNumber(endMonday);
  const names = new Map<number, IsoWeek>();
  const nameOf = (week: number): IsoWeek => {
    const known = names.get(week) ?? weekOf(dayAt(firstDay + 7 * week));
    names.set(week, known);
    return known;
  };
  return {
    firstMonday,
    firstDay,
    endDay,
    nameOf,
    weeks: (endDay - firstDay) / 7,
    weekOf: (day) => Math.floor((day - firstDay) / 7),
    dayOf: (week) => firstDay + 7 * week,
    textOf: dayAt,
  };
}
