/**
 * The matrices of a record's residuals: how warm and bright a day is against its month and sky, and how that hangs on the day before.
 *
 * Source  Matalas 1967: M0 and M1 are the correlations on one day and with the day before; A = M1 M0⁻¹, B B' = M0 - A M1'.
 * Checks  test/drawn-weather.test.ts (the matrices of forty drawn years are those they were drawn with, within their error)
 * Holds   null where the record has no radiation or its correlations belong to no weather.
 * Leaves out  seasons in the correlations.
 */
import type { GeneratorMonth, Spread } from '../generator.ts';
import { wetFromMm } from '../rain-chain.ts';
import { matricesOf, type ResidualMatrices, type Three, type ThreeByThree } from '../residuals.ts';
import type { RecordedDay } from './month-record.ts';

/** The matrices a record gives with the months fitted to it. */
export function fitResiduals(days: readonly RecordedDay[], months: readonly GeneratorMonth[]): ResidualMatrices | null {
  const residuals = days.map((day) => residualOf(day, months));
  const pairs = days.flatMap((day, at): readonly (readonly [Three, Three])[] => {
    const [today, yesterday] = [residuals[at], residuals[at - 1]];
    const follows = days[at - 1]?.dayNumber === day.dayNumber - 1;
    return follows && today != null && yesterday != null ? [[today, yesterday]] : [];
  });
  if (pairs.length < 1000) return null;
  const sameDay = correlations(pairs.map(([today]) => [today, today]));
  return matricesOf('the farm’s own record', sameDay, correlations(pairs));
}

function residualOf(day: RecordedDay, months: readonly GeneratorMonth[]): Three | null {
  const month = months[day.monthIndex];
  if (month === undefined || day.solarMjM2 === null) return null;
  const sky = day.rainMm >= wetFromMm ? 'wet' : 'dry';
  const of = (value: number, { mean, sd }: Spread) => (sd > 0 ? (value - mean) / sd : 0);
  return [of(day.tMaxC, month.tMaxC[sky]), of(day.tMinC, month.tMinC[sky]), of(day.solarMjM2, month.solarMjM2[sky])];
}

/** Row: the first of each pair; column: the second. */
export function correlations(pairs: readonly (readonly [Three, Three])[]): ThreeByThree {
  const one = (row: 0 | 1 | 2, column: 0 | 1 | 2): number => {
    let [x, y, xx, yy, xy] = [0, 0, 0, 0, 0];
    for (const [a, b] of pairs) {
      x += a[row];
      y += b[column];
      xx += a[row] ** 2;
      yy += b[column] ** 2;
      xy += a[row] * b[column];
    }
    const n = pairs.length;
    return (xy - (x * y) / n) / Math.sqrt((xx - (x * x) / n) * (yy - (y * y) / n));
  };
  const rowOf = (row: 0 | 1 | 2): Three => [one(row, 0), one(row, 1), one(row, 2)];
  return [rowOf(0), rowOf(1), rowOf(2)];
}
