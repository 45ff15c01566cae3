/** The years a plan looks at, as weeks counted from one Monday. */
import { type Day, dayAt, dayNumber, dayOf, monthOf, weekdayOf, yearOf } from '@leywright/measures';
import type { Horizon, PlanWish } from '../plan/plan.ts';

const yearsBack = 5;
const yearsOn = 4;
const nextYearFromMonth = 10;

/** The year people plan for: this one, or from October on the next. */
export function yearInFocus(today: Day): number {
  return yearOf(today) + (monthOf(today) >= nextYearFromMonth ? 1 : 0);
}

/** Ten years about today unless the wish says otherwise; a year in focus outside them stretches them. */
export function horizonOf(wish: PlanWish): { readonly year: number; readonly horizon: Horizon } {
  const usualYear = yearInFocus(wish.today);
  const year = wish.year ?? usualYear;
  const fromYear = Math.min(wish.fromYear ?? usualYear - yearsBack, year);
  const toYear = Math.max(wish.toYear ?? usualYear + yearsOn, year);
  const firstDay = dayNumber(dayOf(fromYear, 1, 1));
  const monday = firstDay - (weekdayOf(dayAt(firstDay)) - 1);
  const lastDay = dayNumber(dayOf(toYear, 12, 31));
  return {
    year,
    horizon: { fromYear, toYear, firstMonday: dayAt(monday), weeks: Math.floor((lastDay - monday) / 7) + 1 },
  };
}

/** First day of the horizon's weeks and the first day after them, as day numbers. */
export function horizonDays(horizon: Horizon): { readonly fromDay: number; readonly toDay: number } {
  const fromDay = dayNumber(horizon.firstMonday);
  return { fromDay, toDay: fromDay + 7 * horizon.weeks };
}
