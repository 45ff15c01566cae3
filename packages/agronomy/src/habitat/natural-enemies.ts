/**
 * How far natural enemies work from a hedge or a beetle bank: what was measured, with no claim on yield.
 *
 * Source  Morandin, Long & Kremen 2014, Agriculture, Ecosystems and Environment 189:164 (hedgerows; abstract and Conservation Evidence, read);
 *         Collins et al. 2002, same journal 93:337 (beetle bank; Conservation Evidence, read).
 * Checks  test/checks/science.csv ne-01, ne-02
 * Holds   facts only.
 * Leaves out  how much of it holds elsewhere: widening margins had no effect on cereal aphids (Holland 2006).
 */

/** Metres from a hedge at which eggs were parasitised more than without one, and where no longer. */
export const hedgeParasitism = { higherAtM: [0, 10, 100], notAtM: [200] } as const;

/** Metres from a beetle bank at which predation was tested, and what was found. */
export const beetleBank = {
  testedM: [8, 33, 58, 83],
  found: 'declines with distance; more aphids at 83 m than 8 m',
} as const;
