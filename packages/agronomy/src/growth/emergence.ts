/**
 * When what was sown comes up.
 *
 * Source  Harrington & Minges 1954 (days to emergence at a constant soil temperature, 13 mm deep, moist), and straight lines fitted to it in
 *         reference/crops.csv; Danish field sums above 0 °C from the same table; Brewster 2008 eq. 4.7 for half germination.
 * Checks  test/checks/science.csv gd-08, gd-10; test/checks/crops.csv em-*
 * Holds   warmer soil never brings it up later, up to 20 °C (parsnip is at its best there); at temperatures of the table the table's own days come back.
 * Leaves out  drought, crusts, slugs and depth. Until soil temperature is modelled the air's mean stands for the soil's, which in spring is too warm by a degree or two.
 */
import { reference } from '../reference/reference.ts';
import { cellsOf, tableText } from '../reference/table-text.ts';

const tableColumnsC = [0, 5, 10, 15, 20, 25, 30, 35, 40] as const;
let kept: ReadonlyMap<string, readonly (number | null)[]> | null = null;

/** Vegetables of the table of days, as it names them (`onion`, `bean snap`). */
export function emergenceTableCrops(): readonly string[] {
  return [...emergenceTable().keys()];
}

/**
 * Days to emergence at a constant soil temperature, straight between the columns of the table; null outside what was tested
 * and for a vegetable the table has not.
 */
export function emergenceDays(tableCrop: string, soilC: number): number | null {
  const days = emergenceTable().get(tableCrop);
  if (days === undefined || soilC < 0 || soilC > 40) return null;
  const below = Math.min(7, Math.floor(soilC / 5));
  const [from, to] = [days[below] ?? null, days[below + 1] ?? null];
  const share = (soilC - (tableColumnsC[below] ?? 0)) / 5;
  if (share === 0) return from;
  if (share === 1) return to;
  return from === null || to === null ? null : from + (to - from) * share;
}

/** Thermal time to emergence with its base, and what it rests on. */
export type EmergenceSum =
  | {
      readonly kind: 'thermal-time';
      readonly baseC: number;
      readonly sumCd: number;
      readonly basis: 'field-sum' | 'table-fit' | 'common-practice';
    }
  | { readonly kind: 'planted' };

/** Covers without a sum of their own: 100 °C d above 0 °C, common practice for small seed drilled into moist ground. */
const coverDefault = { baseC: 0, sumCd: 100 } as const;
/** Vegetables without one, such as broad beans: 150 °C d above 0 °C, common practice. */
const cropDefault = { baseC: 0, sumCd: 150 } as const;

/** From sowing (or from setting tubers) to emergence; planted crops have come up in the tray. Throws for an unknown crop. */
export function emergenceOfCrop(cropId: string, sownInPlace: boolean): EmergenceSum {
  const crop = reference.crops.get(cropId);
  if (crop === undefined) throw new Error(`There is no crop "${cropId}" in the tables.`);
  if (crop.establishment === 'tuber') {
    const sum = crop.fieldEmergTt0Cd ?? reference.crops.get('potato-maincrop')?.fieldEmergTt0Cd ?? cropDefault.sumCd;
    return {
      kind: 'thermal-time',
      baseC: 0,
      sumCd: sum,
      basis: crop.fieldEmergTt0Cd === null ? 'common-practice' : 'field-sum',
    };
  }
  if (!sownInPlace) return { kind: 'planted' };
  if (crop.emergBaseC !== null && crop.emergTtCd !== null)
    return { kind: 'thermal-time', baseC: crop.emergBaseC, sumCd: crop.emergTtCd, basis: 'table-fit' };
  if (crop.fieldEmergTt0Cd !== null)
    return { kind: 'thermal-time', baseC: 0, sumCd: crop.fieldEmergTt0Cd, basis: 'field-sum' };
  return { kind: 'thermal-time', ...cropDefault, basis: 'common-practice' };
}

/** From sowing a cover to its emergence. Throws for an unknown cover. */
export function emergenceOfCover(coverId: string): EmergenceSum & { readonly kind: 'thermal-time' } {
  const cover = reference.covers.get(coverId);
  if (cover === undefined) throw new Error(`There is no cover "${coverId}" in the tables.`);
  if (cover.emergTt0Cd !== null) return { kind: 'thermal-time', baseC: 0, sumCd: cover.emergTt0Cd, basis: 'field-sum' };
  const parts = cover.mixOf
    .map((part) => reference.covers.get(part.coverId)?.emergTt0Cd ?? null)
    .filter((sum) => sum !== null);
  // The first of a mixture to come up begins the cover.
  if (parts.length > 0) return { kind: 'thermal-time', baseC: 0, sumCd: Math.min(...parts), basis: 'field-sum' };
  return { kind: 'thermal-time', ...coverDefault, basis: 'common-practice' };
}

function emergenceTable(): ReadonlyMap<string, readonly (number | null)[]> {
  kept ??= new Map(
    cellsOf(tableText('science/emergence-days-harrington-minges-1954')).map((cell) => [
      cell('crop'),
      tableColumnsC.map((t) => (cell(`d_at_${t}C`) === '' ? null : Number(cell(`d_at_${t}C`)))),
    ]),
  );
  return kept;
}
