/**
 * Nitrate lost to the air from wet ground. The greatest doubt of the nitrogen account: shown as a band.
 *
 * Source  Hénault & Germon 2000, European J. Soil Science 51:281; Hénault et al. 2005 (form and constants read in the published code of the French crop model).
 * Checks  test/checks/soil.csv dn-01, dn-02; test/gases.test.ts
 * Holds   none under 62 % of pores filled; the two branches of warmth meet at 11 °C; never more than the nitrate there.
 * Leaves out  which share is nitrous oxide.
 */

/** Potential of the top 20 cm (kg N/ha a day). Published soil files use 1 and 16; on heavy, wet ground after a ley 5-16. */
export const potentialKgHaDay = { low: 0.3, typ: 1, high: 5 } as const;

/** Warmth of the soil. */
export function denitrificationWarmthFactor(soilC: number): number {
  const factor = soilC < 11 ? Math.exp(0.4489 * (soilC - 11) - 0.6677) : Math.exp(0.0742 * (soilC - 20));
  return Math.min(2, factor);
}

/** Pores filled with water (share). */
export function denitrificationWetnessFactor(filledPoreShare: number): number {
  return filledPoreShare <= 0.62 ? 0 : Math.min(1, ((filledPoreShare - 0.62) / 0.38) ** 1.74);
}

/** Nitrate in the soil (mg N/kg). */
export function denitrificationNitrateFactor(nitrateMgKg: number): number {
  return nitrateMgKg / (22 + nitrateMgKg);
}

/** Nitrogen lost (kg/ha a day) from 20 cm of soil; the caller holds it to the nitrate there. */
export function denitrifiedKgHa(
  nitrateMgKg: number,
  soil: { readonly filledPoreShare: number; readonly soilC: number },
  potentialKgHaDay: number,
): number {
  return (
    potentialKgHaDay *
    denitrificationNitrateFactor(nitrateMgKg) *
    denitrificationWetnessFactor(soil.filledPoreShare) *
    denitrificationWarmthFactor(soil.soilC)
  );
}
