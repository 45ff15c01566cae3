/** The winters of a plan: seasons in which rain washes most out of bare ground. */

import type { Conventions } from '@leywright/book';
import { dayInYear, dayNumber, endOfWindow } from '@leywright/measures';
import type { Horizon } from '../plan/plan.ts';

/** One leaching season, half open, named by the year it ends in. */
export interface Winter {
  readonly winter: number;
  readonly fromDay: number;
  readonly toDay: number;
}

/** All leaching seasons that touch the years of the plan, in order. A season whose end is before its start wraps over new year. */
export function wintersOf(
  conventions: Pick<Conventions, 'leachingFrom' | 'leachingTo'>,
  horizon: Horizon,
): readonly Winter[] {
  const { leachingFrom, leachingTo } = conventions;
  const wraps = leachingTo < leachingFrom;
  const winters: Winter[] = [];
  for (let year = horizon.fromYear - 1; year <= horizon.toYear; year++) {
    const endYear = wraps ? year + 1 : year;
    winters.push({
      winter: endYear,
      fromDay: dayNumber(dayInYear(leachingFrom, year)),
      toDay: dayNumber(endOfWindow(leachingTo, endYear)) + 1,
    });
  }
  return winters;
}

/** Days that two half-open spans have in common. */
export function commonDays(
  fromDay: number,
  toDay: number,
  b: { readonly fromDay: number; readonly toDay: number },
): number {
  return Math.max(0, Math.min(toDay, b.toDay) - Math.max(fromDay, b.fromDay));
}
