/**
 * From what the boxes ask for to the ground that grows it, and back.
 *
 * Source  arithmetic: losses on the way chain by division (2400 kg / (0.97 x 0.88 x 0.82)), they are never added up.
 * Checks  test/sowing.test.ts (carrots for the winter box, worked by hand; there and back is the same); test/checks/crops.csv m14-*
 * Holds   area and demand are in proportion; the ground of an area feeds exactly the demand that asks for it.
 * Leaves out  the shape of the plot and whole beds: the planner rounds to beds.
 */

/** What is kept when several shares are lost one after another: 0.97 x 0.88 x 0.82. Throws for a share that is not one. */
export function keptFraction(lostFractions: readonly number[]): number {
  let kept = 1;
  for (const lost of lostFractions) {
    if (!(lost >= 0 && lost < 1)) throw new Error(`A lost share lies from 0 up to, not including, 1; not ${lost}.`);
    kept *= 1 - lost;
  }
  return kept;
}

/** Mass to lift for a mass in the boxes. */
export function liftKg(demandKg: number, keptShare: number): number {
  return demandKg / keptShare;
}

/** Ground for a mass to lift at a yield. */
export function areaForMassM2(massKg: number, yieldTHa: number): number {
  return (massKg / (yieldTHa * 1000)) * 10_000;
}

/** Mass lifted from an area at a yield. */
export function massFromAreaKg(areaM2: number, yieldTHa: number): number {
  return (areaM2 / 10_000) * yieldTHa * 1000;
}

/** Crops sold by count: units (heads, bunches) an area gives, from stations aimed for and units cut per station. */
export function unitsFromArea(areaM2: number, stationsPerHa: number, unitsPerStation: number): number {
  return (areaM2 / 10_000) * stationsPerHa * unitsPerStation;
}

/** Ground for a number of units to cut. */
export function areaForUnitsM2(units: number, stationsPerHa: number, unitsPerStation: number): number {
  return (units / (stationsPerHa * unitsPerStation)) * 10_000;
}

/** Ground that gives the same produce at another yield. */
export function areaAtYieldM2(areaM2: number, yieldTHa: number, otherYieldTHa: number): number {
  return (areaM2 * yieldTHa) / otherYieldTHa;
}
