/**
 * Seed to sow and to buy.
 *
 * Source  arithmetic; germination times field factor is the share of seeds that become plants (kg/ha = plants/m2 x thousand-seed weight / emergence %).
 * Checks  test/checks/crops.csv seed-*, tsw-*, rate-*; test/sowing.test.ts (carrots for the winter box, worked by hand)
 * Holds   packs bought never hold less than what is needed with its margin; scaling the area scales the seed.
 * Leaves out  what the drill leaves in its hopper, unless the margin covers it.
 */

/** Seeds to sow for one plant that stands. Throws when nothing would come up. */
export function seedsPerPlant(germinationFraction: number, fieldFactor: number): number {
  const share = germinationFraction * fieldFactor;
  if (!(share > 0 && share <= 1))
    throw new Error(`The share of seeds that become plants must lie above 0 and not above 1, not ${share}.`);
  return 1 / share;
}

/** A sowing in rows. */
export interface RowSowing {
  readonly rowM: number;
  readonly plantsPerRowM: number;
  readonly germinationFraction: number;
  readonly fieldFactor: number;
  readonly thousandSeedG: number;
  /** Share bought beyond what is sown: 0.1 for a tenth. */
  readonly marginFraction: number;
  /** Seeds in a pack; null where seed is bought by weight. */
  readonly packSeeds: number | null;
}

export interface SeedOrder {
  readonly seedsPerRowM: number;
  readonly seeds: number;
  readonly seedKg: number;
  readonly seedsWithMargin: number;
  readonly seedWithMarginKg: number;
  /** Whole packs; null where seed is bought by weight. */
  readonly packs: number | null;
}

/** Seed for a sowing in rows, and what to order. */
export function seedForRows(sowing: RowSowing): SeedOrder {
  const seedsPerRowM = sowing.plantsPerRowM * seedsPerPlant(sowing.germinationFraction, sowing.fieldFactor);
  return { seedsPerRowM, ...orderOf(sowing.rowM * seedsPerRowM, sowing) };
}

/** Seed to order for a number of seeds sown, as in trays or by the square metre. */
export function orderOf(
  seeds: number,
  buying: Pick<RowSowing, 'thousandSeedG' | 'marginFraction' | 'packSeeds'>,
): Omit<SeedOrder, 'seedsPerRowM'> {
  const seedsWithMargin = seeds * (1 + buying.marginFraction);
  return {
    seeds,
    seedKg: seedMassKg(seeds, buying.thousandSeedG),
    seedsWithMargin,
    seedWithMarginKg: seedMassKg(seedsWithMargin, buying.thousandSeedG),
    // A ten-thousandth of a pack is rounding, not a reason for another one.
    packs: buying.packSeeds === null ? null : Math.ceil(seedsWithMargin / buying.packSeeds - 1e-4),
  };
}

/** Mass of a number of seeds (kg). */
export function seedMassKg(seeds: number, thousandSeedG: number): number {
  return (seeds / 1000) * thousandSeedG * 0.001;
}

/** Thousand-seed weight (g) from seeds to the gram. */
export function thousandSeedG(seedsPerG: number): number {
  return 1000 / seedsPerG;
}

/** Seed rate of a broadcast or close-drilled stand (kg/ha). */
export function seedRateKgHa(plantsPerM2: number, thousandSeedG: number, emergenceFraction: number): number {
  return (plantsPerM2 * thousandSeedG) / (emergenceFraction * 100);
}
