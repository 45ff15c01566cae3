/**
 * What a lot in hand is still worth: its mass less what will not come up.
 *
 * Source  a test of the lot where there is one, against what the need reckons with; without one its age: a tenth less each year, of onions, leeks, parsnips and
 *         carrots a quarter (common practice). Seed untested for more than a year is to be tested again, sets and tubers do not keep over.
 * Checks  test/orders/seed-orders.test.ts
 * Holds   never more than lies there.
 */
import type { SeedLot } from '@leywright/book';
import { type Day, daysBetween, yearOf } from '@leywright/measures';

export interface LotWorth {
  readonly lot: SeedLot;
  /** Share of it that stands for fresh seed. */
  readonly worthShare: number;
  readonly testAgain: boolean;
}

const yearlyLossShare = 0.1;
const shortLivedYearlyLossShare = 0.25;
const shortLived = new Set(['allium', 'umbellifer']);
const testHoldsDays = 365;

/** Worth of a lot on a day, for a plant whose seed is reckoned to come up at such a share. */
export function lotWorth(
  lot: SeedLot,
  on: Day,
  plant: { readonly germinationShare: number | null; readonly group: string | null; readonly isSetOrTuber: boolean },
): LotWorth {
  const ageYears = lot.harvestYear === null ? 1 : Math.max(0, yearOf(on) - lot.harvestYear);
  const testAgain = lot.testedOn === null || daysBetween(lot.testedOn, on) > testHoldsDays;
  if (plant.isSetOrTuber) return { lot, worthShare: ageYears > 1 ? 0 : 1, testAgain: false };
  if (lot.germinationShare !== null && plant.germinationShare !== null)
    return { lot, worthShare: Math.min(1, lot.germinationShare / plant.germinationShare), testAgain };
  const loss = shortLived.has(plant.group ?? '') ? shortLivedYearlyLossShare : yearlyLossShare;
  return { lot, worthShare: (1 - loss) ** Math.max(0, ageYears - 1), testAgain };
}
