/**
 * Nitrogen freed or locked up by a batch of plant residue as microbes turn it into their own body, carbon dioxide and humus.
 *
 * Source  Nicolardot, Recous & Mary 2001, Plant and Soil 228:83; coefficients read in two published implementations of the decomposition module.
 * Checks  test/checks/soil.csv n-07, n-08, n-10 (C:N 12, 25 and 40 over a year); test/residue.test.ts (carbon and nitrogen close every day)
 * Holds   C in = CO2 + microbes + humus; N in = mineral N + microbes + humus; rich residue frees, poor residue first locks up.
 * Leaves out  lignin and contact with the soil: mulch lying on the surface is slowed only by its own dryness.
 */

/** Carbon the microbes keep of what they eat. */
export const microbeYieldFraction = 0.62;
/** Share of the microbes that dies on a normalised day. */
export const microbeDeathPerDay = 0.011;
/** C:N of humus. */
export const humusCnRatio = 1 / 0.105;
/** Carbon in the dry matter of plants. */
export const carbonInDryMatterShare = 0.42;

/** What the C:N of a residue fixes. */
export interface ResidueRates {
  readonly decayPerDay: number;
  readonly microbeCnRatio: number;
  /** Share of dying microbes that becomes humus. */
  readonly humifiedFraction: number;
}

/** Rates of a residue of a C:N. */
export function residueRates(cnRatio: number): ResidueRates {
  return {
    decayPerDay: 0.07 + 1.94 / cnRatio,
    microbeCnRatio: Math.max(7.8, 16.1 - 123 / cnRatio),
    humifiedFraction: 1 - (0.69 * cnRatio) / (11.2 + cnRatio),
  };
}

/** A batch on its way: kg/ha of carbon, and nitrogen set free so far (negative: locked up). */
export interface ResidueState {
  readonly residueCKgHa: number;
  readonly microbeCKgHa: number;
  readonly humusCKgHa: number;
  readonly co2CKgHa: number;
  readonly mineralNKgHa: number;
}

export interface ResidueKind {
  readonly cnRatio: number;
  readonly rates: ResidueRates;
  readonly yieldFraction?: number;
  readonly deathPerDay?: number;
  readonly humusCnRatio?: number;
}

/** One day of a batch; `speedFactor` is warmth times wetness. Nitrogen is taken as sufficient. */
export function stepResidue(state: ResidueState, kind: ResidueKind, speedFactor: number): ResidueState {
  const { rates, cnRatio } = kind;
  const keeps = kind.yieldFraction ?? microbeYieldFraction;
  const eaten = rates.decayPerDay * speedFactor * state.residueCKgHa;
  const dying = (kind.deathPerDay ?? microbeDeathPerDay) * speedFactor * state.microbeCKgHa;
  const humified = rates.humifiedFraction * dying;
  const freedN =
    eaten / cnRatio - (keeps * eaten - dying) / rates.microbeCnRatio - humified / (kind.humusCnRatio ?? humusCnRatio);
  return {
    residueCKgHa: state.residueCKgHa - eaten,
    microbeCKgHa: state.microbeCKgHa + keeps * eaten - dying,
    humusCKgHa: state.humusCKgHa + humified,
    co2CKgHa: state.co2CKgHa + (1 - keeps) * eaten + dying - humified,
    mineralNKgHa: state.mineralNKgHa + freedN,
  };
}

/** A fresh batch of a carbon mass (kg/ha). */
export function freshResidue(carbonKgHa: number): ResidueState {
  return { residueCKgHa: carbonKgHa, microbeCKgHa: 0, humusCKgHa: 0, co2CKgHa: 0, mineralNKgHa: 0 };
}

/** The batch after so many normalised days. */
export function residueAfter(carbonKgHa: number, kind: ResidueKind, normalisedDays: number): ResidueState {
  let state = freshResidue(carbonKgHa);
  for (let day = 0; day < normalisedDays; day++) state = stepResidue(state, kind, 1);
  return state;
}
