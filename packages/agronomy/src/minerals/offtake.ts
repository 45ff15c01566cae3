/**
 * Phosphate and potash that leave with what is sold.
 *
 * Source  reference/science/offtake-p2o5-k2o-kg-per-t-fresh.csv (Potash Development Association, Nutrients in crop material, March 2020, as AHDB RB209 2020: read;
 *         17 rows from food composition, recalled); crops by id: reference/crops.csv.
 * Checks  test/checks/science.csv pk-01; test/minerals.test.ts (a sum over a rotation; doubt of recalled rows)
 * Holds   in proportion to the mass; low ≤ typical ≤ high.
 * Leaves out  residues and leys, which stay: they move potash up, not in. Straw or hay that is sold must be named as sold.
 */
import { type Interval, intervals } from '@leywright/measures';
import { referenceCell } from '../reference/cell.ts';
import { reference } from '../reference/reference.ts';
import { cellsOf, tableText } from '../reference/table-text.ts';
import type { HowKnown } from '../reference/ways-of-knowing.ts';
import type { OxideKgHa } from './oxides.ts';

/** Phosphate and potash in a tonne of fresh produce, and how it is known. */
export interface OfftakeRate {
  readonly material: string;
  readonly p2o5KgT: number;
  readonly k2oKgT: number;
  readonly howKnown: HowKnown;
}

/** A row of the published table by its name, capitals aside; null where there is none. */
export function offtakeRate(material: string): OfftakeRate | null {
  const wanted = material.trim().toLowerCase();
  return offtakeRates().find((row) => row.material.toLowerCase() === wanted) ?? null;
}

/** Every row of the published table. */
export function offtakeRates(): readonly OfftakeRate[] {
  return cellsOf(tableText('science/offtake-p2o5-k2o-kg-per-t-fresh')).map((cell) => ({
    material: cell('crop'),
    p2o5KgT: Number(cell('P2O5_kg_t')),
    k2oKgT: Number(cell('K2O_kg_t')),
    howKnown: cell('how_known') as HowKnown,
  }));
}

/** What so many tonnes a hectare take away. */
export function offtakeKgHa(rate: Pick<OfftakeRate, 'p2o5KgT' | 'k2oKgT'>, massTHa: number): OxideKgHa {
  return { p2o5KgHa: rate.p2o5KgT * massTHa, k2oKgHa: rate.k2oKgT * massTHa };
}

/** Share by which a figure may be off: read tables 15 %, recalled ones 30 %. Common practice: soils and sorts differ by as much. */
const doubtShare: Readonly<Record<string, number>> = { verified: 0.15 };

const keptKnown = new Map<string, HowKnown>();

/** How a crop's figure is known; kept, for looking up the sources of a cell costs more than the sum. */
function howKnownOf(cropId: string): HowKnown {
  const known = keptKnown.get(cropId) ?? referenceCell('crops', cropId, 'p2o5_kg_t').howKnown;
  keptKnown.set(cropId, known);
  return known;
}

/** What a crop's yield takes away, with its doubt (kg/ha as oxides). Throws for an unknown crop. */
export function offtakeOfCropKgHa(
  cropId: string,
  yieldTHa: Interval,
): { readonly p2o5KgHa: Interval; readonly k2oKgHa: Interval; readonly howKnown: HowKnown } {
  const crop = reference.crops.get(cropId);
  if (crop === undefined) throw new Error(`There is no crop "${cropId}" in the tables.`);
  const known = howKnownOf(cropId);
  const doubt = doubtShare[known] ?? 0.3;
  const rate = intervals.interval(1 - doubt, 1, 1 + doubt);
  const taken = (kgT: number) => intervals.multiplyIntervals(yieldTHa, intervals.scaleInterval(rate, kgT));
  return { p2o5KgHa: taken(crop.p2o5KgT), k2oKgHa: taken(crop.k2oKgT), howKnown: known };
}
