/**
 * Phosphorus, potassium and magnesium as elements and as oxides, kept apart by their names.
 *
 * Source  molar masses (P 0.4364 of P2O5, K 0.8302 of K2O, Mg 0.6030 of MgO), as printed in the leaflet of the Potash Development Association.
 * Checks  test/minerals.test.ts (there and back; the two kinds cannot be added; C07's off-take in both units)
 * Holds   there and back is the same figure; an oxide always weighs more than its element.
 * Leaves out  nothing; figures without a unit are refused by the reader of the farm's folder, not guessed here.
 */

/** Kilograms a hectare, as fertiliser trade and leaflets give them. */
export interface OxideKgHa {
  readonly p2o5KgHa: number;
  readonly k2oKgHa: number;
}

/** Kilograms a hectare of the elements themselves, as soil science gives them. */
export interface ElementKgHa {
  readonly pKgHa: number;
  readonly kKgHa: number;
}

/** Share of the element in its oxide. */
export const elementShare = { p: 0.4364, k: 0.8302, mg: 0.603 } as const;

/** Elements from oxides. */
export function asElements(oxide: OxideKgHa): ElementKgHa {
  return { pKgHa: oxide.p2o5KgHa * elementShare.p, kKgHa: oxide.k2oKgHa * elementShare.k };
}

/** Oxides from elements. */
export function asOxides(element: ElementKgHa): OxideKgHa {
  return { p2o5KgHa: element.pKgHa / elementShare.p, k2oKgHa: element.kKgHa / elementShare.k };
}

/** Magnesium in magnesium oxide (kg). */
export function magnesiumKg(magnesiumOxideKg: number): number {
  return magnesiumOxideKg * elementShare.mg;
}

/** The sum of amounts given as oxides; elements are not taken. */
export function addOxides(parts: readonly OxideKgHa[]): OxideKgHa {
  return {
    p2o5KgHa: parts.reduce((sum, part) => sum + part.p2o5KgHa, 0),
    k2oKgHa: parts.reduce((sum, part) => sum + part.k2oKgHa, 0),
  };
}
