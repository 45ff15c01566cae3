/**
 * How legumes take less from the air where the soil is rich in mineral nitrogen.
 *
 * Source  engineering straight line inside published findings (clover in grass held 90 % from the air under 216 kg N/ha: Dhamala et al., abstract read);
 *         mulched leys fix 10-30 % less because their nitrogen comes back (recalled).
 * Checks  test/checks/soil.csv nd-01; test/crop-answer.test.ts
 * Holds   never negative; none from 240 kg mineral nitrogen up; never more than without mineral nitrogen.
 * Leaves out  what a companion grass takes first: give it the nitrogen left over.
 */

/** Share from the air with so much mineral nitrogen in the top 60 cm of rooted soil. */
export function shareFromAir(usualShare: number, mineralNKgHa: number): number {
  return Math.max(0, usualShare * (1 - Math.max(0, mineralNKgHa - 40) / 200));
}

/** What mulching a ley where it grows leaves of its share from the air: the middle of 0.7-0.9 would be 0.8. */
export const mulchedShareFactor = 0.8;
