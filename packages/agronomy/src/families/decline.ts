/**
 * How much of a soil-borne pest is left after years without a host.
 *
 * Source  exponential decline with the yearly rates or half-lives of reference/intervals.csv (their sources beside them).
 * Checks  test/checks/crops.csv clubroot-7y, bcn-4y-slow, bcn-3y-fast
 * Holds   between 0 and 1; never rises without a host.
 * Leaves out  volunteers and weeds that are hosts too, and resting spores that outlive the rule.
 */

/** Share left after years at a yearly decline. */
export function leftAfterYears(years: number, yearlyDeclineFraction: number): number {
  return (1 - yearlyDeclineFraction) ** years;
}

/** Share left after years at a half-life. */
export function leftAtHalfLife(years: number, halfLifeYears: number): number {
  return 0.5 ** (years / halfLifeYears);
}
