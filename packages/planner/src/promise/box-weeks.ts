/**
 * The weeks of a box year: which have a box, on which day it is packed, and which slots are due.
 *
 * A week is known by its Monday. A moved packing day keeps its box: the slot windows look at the usual packing day, so a Friday packed on a
 * Wednesday for a holiday has the same things in it. A year has 52 or 53 of these weeks and nothing here counts on either.
 */

import type { BoxPromise, Slot, SlotWindow } from '@leywright/book';
import {
  addDays,
  type Day,
  dayAt,
  dayInYear,
  dayNumber,
  endOfWindow,
  type IsoWeek,
  weekOf,
  yearOf,
} from '@leywright/measures';

export interface BoxCalendarWeek {
  readonly week: IsoWeek;
  /** Place counted from the first Monday the calendar was asked for. */
  readonly index: number;
  readonly monday: Day;
  /** The usual packing day, by which slot windows are judged. */
  readonly usualDay: Day;
  readonly packOn: Day | null;
  readonly closed: 'closed' | 'outside' | null;
}

/** The box weeks from a Monday on. Weeks before or after the promise are `outside`, holidays are `closed`. */
export function boxCalendar(promise: BoxPromise, firstMonday: Day, weeks: number): readonly BoxCalendarWeek[] {
  const rule = calendarRule(promise);
  return Array.from({ length: weeks }, (_, index) => rule(addDays(firstMonday, 7 * index), index));
}

function calendarRule(promise: BoxPromise): (monday: Day, index: number) => BoxCalendarWeek {
  const closedWeeks = new Set<string>(promise.closedWeeks);
  const closedNumbers = new Set(promise.closedEveryYear);
  const moved = new Map(promise.movedPackDays.map((move) => [move.week as string, move.packOn]));
  const firstWeek = promise.from === null ? null : weekOf(promise.from);
  const lastWeek = promise.to === null ? null : weekOf(promise.to);
  return (monday, index) => {
    const week = weekOf(monday);
    const usualDay = addDays(monday, promise.packWeekday - 1);
    const isOutside = (firstWeek !== null && week < firstWeek) || (lastWeek !== null && week > lastWeek);
    const isClosed = closedWeeks.has(week) || closedNumbers.has(Number(week.slice(6)));
    const closed = isOutside ? 'outside' : isClosed ? 'closed' : null;
    return { week, index, monday, usualDay, packOn: closed === null ? (moved.get(week) ?? usualDay) : null, closed };
  };
}

/**
 * By calendar place, whether the slot is due: its window holds the usual packing day, the week has a box, and it is the slot's turn.
 * Turns are counted in box weeks from the first one of the window, so a closed week does not use one up.
 */
export function slotTurns(promise: BoxPromise, slot: Slot, calendar: readonly BoxCalendarWeek[]): Uint8Array {
  const due = new Uint8Array(calendar.length);
  let windowStart: Day | null = null;
  let turn = 0;
  for (const week of calendar) {
    const start = windowStartOf(slot.window, week.usualDay);
    if (start === null) continue;
    if (start !== windowStart) {
      windowStart = start;
      turn = slot.everyWeeks === 1 || start >= week.monday ? 0 : boxWeeksBetween(promise, start, week.monday);
    }
    if (week.closed !== null) continue;
    if (turn % slot.everyWeeks === 0) due[week.index] = 1;
    turn += 1;
  }
  return due;
}

/** First day of the run of the window in which the day lies; null when it lies in none. Both ends of a window are in it. */
export function windowStartOf(window: SlotWindow, day: Day): Day | null {
  if (window.kind === 'once') return day >= window.from && day <= window.to ? window.from : null;
  const year = yearOf(day);
  const wraps = window.to < window.from;
  for (const startYear of wraps ? [year, year - 1] : [year]) {
    const from = dayInYear(window.from, startYear);
    const to = endOfWindow(window.to, wraps ? startYear + 1 : startYear);
    if (day >= from && day <= to) return from;
  }
  return null;
}

/** Box weeks whose usual packing day lies from the window's start up to, not including, a Monday. */
function boxWeeksBetween(promise: BoxPromise, start: Day, monday: Day): number {
  const startNumber = dayNumber(start);
  const offset = (((startNumber + 3) % 7) + 7) % 7; // 0 for a Monday
  const first = dayAt(startNumber - offset);
  const weeks = Math.max(0, Math.round((dayNumber(monday) - dayNumber(first)) / 7));
  return boxCalendar(promise, first, weeks).filter((week) => week.closed === null && week.usualDay >= start).length;
}
