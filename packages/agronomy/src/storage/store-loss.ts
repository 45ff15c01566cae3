/**
 * What a store loses, and what is in it week by week.
 *
 * Source  losses compound: a share of what is there, not of what was put in. The monthly shares of reference/storage.csv are recalled or common practice.
 * Checks  test/checks/crops.csv loss-compound; test/store.test.ts (draw-down of potatoes over a holiday week, worked by hand; mass is conserved)
 * Holds   put in = issued + lost + left; stock never falls below nought; more loss never leaves more.
 * Leaves out  the difference between early and late months: a store that is fine to January may go in March. Own weighings are better.
 */

const weeksPerMonth = 365.25 / 12 / 7;

/** Share lost in a week, from the share lost in a month. */
export function weeklyLossFraction(monthlyLossFraction: number): number {
  return 1 - (1 - monthlyLossFraction) ** (1 / weeksPerMonth);
}

/** Share kept over a number of weeks. */
export function keptOverWeeks(weeklyLossFraction: number, weeks: number): number {
  return (1 - weeklyLossFraction) ** weeks;
}

/** Mass left after months of a monthly loss. */
export function leftAfterMonthsKg(massKg: number, months: number, monthlyLossFraction: number): number {
  return massKg * (1 - monthlyLossFraction) ** months;
}

export interface StoreWeek {
  readonly lostKg: number;
  readonly issuedKg: number;
  /** What was wanted and not there. */
  readonly shortKg: number;
  readonly leftKg: number;
}

/** One week of a store: the loss on what was there at its opening first, then the issue, as far as there is. */
export function stepStoreWeek(stockKg: number, weeklyLossFraction: number, wantedKg: number): StoreWeek {
  const lostKg = stockKg * weeklyLossFraction;
  const thereKg = stockKg - lostKg;
  const issuedKg = Math.min(wantedKg, thereKg);
  return { lostKg, issuedKg, shortKg: wantedKg - issuedKg, leftKg: thereKg - issuedKg };
}

export interface DrawDown {
  readonly weeks: readonly StoreWeek[];
  /** Weeks with an issue that was met in full, before the first that was not. */
  readonly fullWeeks: number;
  /** Index of the first week that fell short; null when none did. */
  readonly firstShortWeek: number | null;
  readonly lostKg: number;
  readonly leftKg: number;
}

/** A store from its opening stock through weeks of loss and wants; a week with nothing wanted still loses. */
export function drawDown(
  openingKg: number,
  weeks: readonly { readonly weeklyLossFraction: number; readonly wantedKg: number }[],
): DrawDown {
  let stockKg = openingKg;
  const steps = weeks.map(({ weeklyLossFraction, wantedKg }) => {
    const step = stepStoreWeek(stockKg, weeklyLossFraction, wantedKg);
    stockKg = step.leftKg;
    return step;
  });
  const short = steps.findIndex((step) => step.shortKg > 1e-9);
  const before = short < 0 ? steps.length : short;
  const fullWeeks = weeks.slice(0, before).filter((week) => week.wantedKg > 0).length;
  return {
    weeks: steps,
    fullWeeks,
    firstShortWeek: short < 0 ? null : short,
    lostKg: steps.reduce((sum, step) => sum + step.lostKg, 0),
    leftKg: stockKg,
  };
}

/** Stock to put in so that every week's want is met and nothing is left: worked backward from the last week. */
export function openingFor(
  weeks: readonly { readonly weeklyLossFraction: number; readonly wantedKg: number }[],
): number {
  return weeks.reduceRight((neededKg, week) => (neededKg + week.wantedKg) / (1 - week.weeklyLossFraction), 0);
}
