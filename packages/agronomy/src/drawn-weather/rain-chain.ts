/**
 * Wet and dry days: whether it rains hangs on whether it rained the day before.
 *
 * Source  Richardson 1981, Water Resources Research 17:182 (chain of two states); from the share of wet days alone: Geng, Penning de Vries & Supit 1986,
 *         Agricultural and Forest Meteorology 36:363 (recalled; at De Bilt the chance after a dry day came out 0.004-0.074 too high).
 * Checks  test/checks/science.csv wg-01, wg-02; test/drawn-weather.test.ts
 * Holds   chances lie within 0 .. 1; the chain's long-run share is the share it was made for.
 * Leaves out  long droughts, which a chain that remembers one day makes too rare.
 */

/** Chances that a day is wet. */
export interface RainChain {
  readonly wetAfterDryProbability: number;
  readonly wetAfterWetProbability: number;
}

/** A wet day has this much rain or more (mm). A record counted by another limit has other wet days. */
export const wetFromMm = 0.3;

/** The chain of a share of wet days. */
export function chainOfWetShare(wetShare: number): RainChain {
  const share = Math.min(1, Math.max(0, wetShare));
  return { wetAfterDryProbability: 0.75 * share, wetAfterWetProbability: 0.25 + 0.75 * share };
}

/** The share of wet days a chain comes to in the long run. */
export function wetShareOfChain({ wetAfterDryProbability, wetAfterWetProbability }: RainChain): number {
  return wetAfterDryProbability / (1 + wetAfterDryProbability - wetAfterWetProbability);
}

/** Wet days of 0.3 mm and more from days counted by another limit: days of 1 mm × 1.24 (De Bilt 1.16-1.28), of 0.2 or 0.25 mm as they are. */
export function wetDaysFromLimit(days: number, limitMm: number, monthDays: number): number {
  return Math.min(0.98 * monthDays, limitMm >= 0.5 ? days * 1.24 : days);
}
