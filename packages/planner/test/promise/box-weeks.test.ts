import { boxPromise, boxSize, day, slot } from '@leywright/farm-kit';
import { mondayOf, asIsoWeek as week, weeksInYear } from '@leywright/measures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boxCalendar, slotTurns } from '../../src/promise/box-weeks.ts';

function yearOfBoxes(promise: Parameters<typeof boxCalendar>[0], year: number) {
  return boxCalendar(promise, mondayOf(week(`${year}-w01`)), weeksInYear(year));
}

describe('box weeks', () => {
  test.each([
    { year: 2020, weeks: 53 },
    { year: 2026, weeks: 53 },
    { year: 2027, weeks: 52 },
    { year: 2032, weeks: 53 },
  ])('$year has $weeks of them when none is closed (edge 40)', ({ year, weeks }) => {
    const boxes = yearOfBoxes(boxPromise(), year);
    expect(boxes.filter((one) => one.closed === null)).toHaveLength(weeks);
  });

  test('a closed week has no packing day, and week 53 is closed only in years that have one', () => {
    const promise = boxPromise({ closedWeeks: [week('2026-w14')], closedEveryYear: [1, 53] });
    expect(
      yearOfBoxes(promise, 2026)
        .filter((one) => one.closed === 'closed')
        .map((one) => one.week),
    ).toEqual(['2026-w01', '2026-w14', '2026-w53']);
    expect(
      yearOfBoxes(promise, 2027)
        .filter((one) => one.closed === 'closed')
        .map((one) => one.week),
    ).toEqual(['2027-w01']);
  });

  test('a packing day moved for a holiday keeps its week and what is in it (edge 43)', () => {
    const promise = boxPromise({
      movedPackDays: [{ week: week('2026-w15'), packOn: day('2026-04-13') }],
      slots: [slot('leek-late', { from: '04-06', to: '04-12' })],
    });
    const boxes = yearOfBoxes(promise, 2026);
    const moved = boxes.find((one) => one.week === '2026-w15');
    expect(moved).toMatchObject({ packOn: '2026-04-13', usualDay: '2026-04-09', closed: null });
    expect(slotTurns(promise, promise.slots[0] as never, boxes)[moved?.index ?? 0]).toBe(1);
  });

  test('29 February is inside a window that ends with February (edge 41)', () => {
    const promise = boxPromise({ packWeekday: 4, slots: [slot('leek-late', { from: '02-01', to: '02-28' })] });
    const boxes = yearOfBoxes(promise, 2024); // 29 February 2024 is a Thursday
    const due = slotTurns(promise, promise.slots[0] as never, boxes);
    expect(boxes.filter((one) => due[one.index] === 1).at(-1)?.usualDay).toBe('2024-02-29');
  });

  test('every other week is counted from the first box week of the window, and a closed week uses up no turn', () => {
    const promise = boxPromise({
      closedWeeks: [week('2027-w12')],
      slots: [slot('leek-late', { from: '03-01', to: '04-15', everyWeeks: 2 })],
    });
    const boxes = yearOfBoxes(promise, 2027);
    const due = slotTurns(promise, promise.slots[0] as never, boxes);
    expect(boxes.filter((one) => due[one.index] === 1).map((one) => one.week)).toEqual([
      '2027-w09',
      '2027-w11',
      '2027-w14',
    ]);
  });

  test('turns do not depend on where the calendar begins', () => {
    const promise = boxPromise({
      closedEveryYear: [1, 33],
      slots: [slot('leek-late', { from: '10-01', to: '04-30', everyWeeks: 3 })],
    });
    const whole = boxCalendar(promise, mondayOf(week('2026-w01')), 104);
    const dueWhole = slotTurns(promise, promise.slots[0] as never, whole);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 80 }), (skip) => {
        const later = boxCalendar(promise, whole[skip]?.monday ?? day('2026-01-05'), 104 - skip);
        const due = slotTurns(promise, promise.slots[0] as never, later);
        expect([...due]).toEqual([...dueWhole.slice(skip)]);
      }),
    );
  });

  test('no week is both closed and due', () => {
    const weekNumber = fc.integer({ min: 1, max: 53 });
    fc.assert(
      fc.property(
        fc.array(weekNumber, { maxLength: 12 }),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 2019, max: 2034 }),
        (closedEveryYear, everyWeeks, year) => {
          const promise = boxPromise({ closedEveryYear, slots: [slot('leek-late', { everyWeeks })] });
          const boxes = yearOfBoxes(promise, year);
          const due = slotTurns(promise, promise.slots[0] as never, boxes);
          for (const one of boxes) if (one.closed !== null) expect([due[one.index], one.packOn]).toEqual([0, null]);
        },
      ),
    );
  });
});

test('boxes begin and end with the promise', () => {
  const promise = boxPromise({ sizes: [boxSize('box', 10)], from: day('2027-02-10'), to: day('2027-03-02') });
  expect(
    yearOfBoxes(promise, 2027)
      .filter((one) => one.closed === null)
      .map((one) => one.week),
  ).toEqual(['2027-w06', '2027-w07', '2027-w08', '2027-w09']);
});
