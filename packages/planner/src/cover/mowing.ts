/**
 * The days on which a ley is mown and left lying.
 *
 * Source  common practice: first cut after 500 °C d above 4 °C from the start of the year, then every 550, four cuts at most, none in the last three weeks
 *         before it is turned in, none in its first twelve weeks or under another crop. The farm's own cuts replace this as they are recorded.
 */
import { dayAt, dayNumber, dayOf, yearOf } from '@leywright/measures';
import type { ClimateDays } from '../plan/inputs.ts';

const mowBaseC = 4;
const firstCutCd = 500;
const nextCutCd = 550;
const mostCuts = 4;
const restBeforeEndDays = 21;
const restAfterSowingDays = 84;
const restBeforeShortDaysH = 12;

/** Cuts of a ley standing alone between two days, as day numbers in order. */
export function mowingDays(
  climate: ClimateDays,
  days: { readonly aloneFromDay: number; readonly sownOnDay: number; readonly toDay: number },
): readonly number[] {
  const cuts: number[] = [];
  const first = Math.max(days.aloneFromDay, days.sownOnDay + restAfterSowingDays);
  const last = days.toDay - restBeforeEndDays;
  for (let year = yearOf(dayAt(days.sownOnDay)); year <= yearOf(dayAt(days.toDay)); year++) {
    cuts.push(...cutsOfYear(climate, growingYearStart(climate, year), { first, last }));
  }
  return cuts;
}

function cutsOfYear(
  climate: ClimateDays,
  startDay: number,
  within: { readonly first: number; readonly last: number },
): readonly number[] {
  const cuts: number[] = [];
  let sum = firstCutCd;
  for (let cut = 0; cut < mostCuts; cut++, sum += nextCutCd) {
    const day = climate.dayOfSum(mowBaseC, startDay, sum);
    if (day === null || day - startDay >= 365) break;
    const isTooLate = (climate.dayLengthH[day - climate.firstDay] ?? 0) < restBeforeShortDaysH;
    if (!isTooLate && day >= within.first && day <= within.last) cuts.push(day);
  }
  return cuts;
}

/** The year of growth begins in midwinter: January north of the equator, July south of it. */
function growingYearStart(climate: ClimateDays, year: number): number {
  return dayNumber(climate.latDeg < 0 ? dayOf(year - 1, 7, 1) : dayOf(year, 1, 1));
}
