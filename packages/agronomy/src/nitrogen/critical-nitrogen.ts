/**
 * The least nitrogen a crop of a mass needs in its dry matter for full growth.
 *
 * Source  Ekbladh & Witter 2010, European J. Agronomy 33:276 (white cabbage; read); grass 4.8 W^-0.32 (Duru et al. 1997), wheat and rye 5.35 W^-0.44,
 *         maize 3.4 W^-0.37 (read in a published package's pages); potato, lettuce, tomato and the general C3 curve of Greenwood et al. 1990 (recalled).
 * Checks  test/checks/soil.csv n-18, n-20, n-21; test/crop-answer.test.ts
 * Holds   a heavier crop never needs a higher share; nitrogen needed rises with mass.
 * Leaves out  roots, and what a crop takes beyond its need.
 */

/** N % = coefficient × W^-exponent, W in t dry matter a hectare; constant below `flatBelowTHa`, never under `floorPct`. */
export interface DilutionCurve {
  readonly coefficient: number;
  readonly exponent: number;
  readonly flatBelowTHa: number;
  /** Share at low mass where the source gives its own; null takes the curve at `flatBelowTHa`. */
  readonly flatPct: number | null;
  readonly floorPct: number;
}

const curve = (coefficient: number, exponent: number, rest: Partial<DilutionCurve> = {}): DilutionCurve => ({
  coefficient,
  exponent,
  flatBelowTHa: 1.5,
  flatPct: null,
  floorPct: 0,
  ...rest,
});

export const dilutionCurves = {
  cabbage: curve(5.1, 0.33, { flatPct: 4.5 }),
  cereal: curve(5.35, 0.44, { floorPct: 1.55 }),
  grass: curve(4.8, 0.32),
  maize: curve(3.4, 0.37),
  potato: curve(4.8, 0.42),
  lettuce: curve(4.56, 0.357),
  tomato: curve(4.53, 0.327),
  legume: curve(4.8, 0.32),
  general: curve(5.7, 0.5),
} as const satisfies Readonly<Record<string, DilutionCurve>>;

/** Critical nitrogen (% of dry matter) at a mass. */
export function criticalNPct(of: DilutionCurve, massTHa: number): number {
  const { flatBelowTHa, flatPct } = of;
  if (massTHa < flatBelowTHa) return flatPct ?? of.coefficient * flatBelowTHa ** -of.exponent;
  return Math.max(of.floorPct, of.coefficient * massTHa ** -of.exponent);
}

/** Nitrogen (kg/ha) a crop of a mass must hold. */
export function criticalNKgHa(of: DilutionCurve, massTHa: number): number {
  return massTHa * criticalNPct(of, massTHa) * 10;
}

/** A curve moved so that a crop of its final mass holds the nitrogen a table gives for it: the shape is published, the level is the table's. */
export function dilutionFor(of: DilutionCurve, massTHa: number, uptakeKgHa: number): DilutionCurve {
  const factor = uptakeKgHa / criticalNKgHa(of, massTHa);
  return {
    ...of,
    coefficient: of.coefficient * factor,
    flatPct: of.flatPct === null ? null : of.flatPct * factor,
    floorPct: of.floorPct * factor,
  };
}
