import { type Day, readDay } from './day.ts';

export const dayOrders = ['day-first', 'month-first'] as const;
export type DayOrder = (typeof dayOrders)[number];

export type LooseDay =
  | { readonly kind: 'day'; readonly day: Day }
  | { readonly kind: 'ambiguous'; readonly readings: readonly [dayFirst: Day, monthFirst: Day] }
  | { readonly kind: 'not-a-day'; readonly why: 'form' | 'not-in-calendar' | 'two-digit-year' };

const yearFirst = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/;
const yearLast = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d{2})$/;

/**
 * Reads a day as people and spreadsheets write it: 2027-04-08, 8.4.2027, 8/4/2027.
 * When the first two numbers could be day and month either way, and no order is given, both readings come back and neither is chosen.
 */
export function readDayLoosely(text: string, order: DayOrder | null = null): LooseDay {
  const trimmed = text.trim();
  const iso = yearFirst.exec(trimmed);
  if (iso !== null) return dayOrNot(isoText(iso[1], iso[3], iso[4]));
  const match = yearLast.exec(trimmed);
  if (match === null) return { kind: 'not-a-day', why: 'form' };
  const [, first, , second, year] = match;
  if (year?.length !== 4) return { kind: 'not-a-day', why: 'two-digit-year' };
  const dayFirst = readDay(isoText(year, second, first));
  const monthFirst = readDay(isoText(year, first, second));
  if (order !== null)
    return dayOrNot(
      isoText(year, ...(order === 'day-first' ? ([second, first] as const) : ([first, second] as const))),
    );
  if (dayFirst !== null && monthFirst !== null && dayFirst !== monthFirst)
    return { kind: 'ambiguous', readings: [dayFirst, monthFirst] };
  const only = dayFirst ?? monthFirst;
  return only === null ? { kind: 'not-a-day', why: 'not-in-calendar' } : { kind: 'day', day: only };
}

function isoText(year = '', month = '', dayOfMonth = ''): string {
  return `${year}-${month.padStart(2, '0')}-${dayOfMonth.padStart(2, '0')}`;
}

function dayOrNot(text: string): LooseDay {
  const day = readDay(text);
  return day === null ? { kind: 'not-a-day', why: 'not-in-calendar' } : { kind: 'day', day };
}
