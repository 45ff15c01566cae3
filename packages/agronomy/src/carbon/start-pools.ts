/**
 * Where a carbon run starts: from one measured stock of the topsoil.
 *
 * Source  inert carbon: Falloon, Smith, Coleman & Marshall 1998 (0.049 C^1.139, called very rough by its users; read in the description of RothC);
 *         pools: Weihermüller, Graf, Herbst & Vereecken 2013, European Journal of Soil Science (recalled); input that keeps a stock: RothC is linear in it.
 * Checks  test/checks/science.csv rc-07, rc-12; test/carbon.test.ts (pools sum to the stock; the input found keeps the stock)
 * Holds   pools and inert carbon are never negative and sum to the stock; more input keeps a greater stock.
 * Leaves out  land that changed its use not long ago: its carbon is not at rest, and the start is then the greatest doubt of the run.
 */
import { activeCarbonTHa, type CarbonMonth, type CarbonPools, spinUpCarbon } from './rothc.ts';
import type { CarbonSoil } from './rothc-rates.ts';

/** Carbon that does not turn over (t C/ha). */
export function inertCarbonTHa(stockTHa: number): number {
  return 0.049 * Math.max(0, stockTHa) ** 1.139;
}

/** Start pools of a stock (t C/ha to the depth of the model) and a clay content; the easy pool is what is left. */
export function poolsFromStock(stockTHa: number, clayPct: number): CarbonPools & { readonly inertTHa: number } {
  const resistantPlantTHa = (0.1847 * stockTHa + 0.1555) * (clayPct + 1.275) ** -0.1158;
  const humusTHa = (0.7148 * stockTHa + 0.5069) * (clayPct + 0.3421) ** 0.0184;
  const microbesTHa = (0.014 * stockTHa + 0.0075) * (clayPct + 8.8473) ** 0.0567;
  const inertTHa = inertCarbonTHa(stockTHa);
  const easyPlantTHa = Math.max(0, stockTHa - resistantPlantTHa - humusTHa - microbesTHa - inertTHa);
  return { easyPlantTHa, resistantPlantTHa, microbesTHa, humusTHa, inertTHa };
}

/** Stock (t C/ha) from organic carbon in %, bulk density and depth; stones take their share. */
export function stockFromSampleTHa(sample: {
  readonly carbonPct: number;
  readonly bulkDensityTPerM3: number;
  readonly depthCm: number;
  readonly stonesShare?: number;
}): number {
  return sample.carbonPct * sample.bulkDensityTPerM3 * sample.depthCm * (1 - (sample.stonesShare ?? 0));
}

/** Organic carbon in % of soil from organic matter in %: the common factor 1.72. */
export function carbonFromOrganicMatterPct(organicMatterPct: number): number {
  return organicMatterPct / 1.72;
}

/** Yearly plant carbon (t C/ha) that keeps a stock at rest, spread over the year as `year` spreads it; null when the year brings none. */
export function inputThatKeepsTHa(stockTHa: number, year: readonly CarbonMonth[], soil: CarbonSoil): number | null {
  const broughtTHa = year.reduce((sum, month) => sum + month.plantTHa + month.rottedTHa, 0);
  if (broughtTHa <= 0) return null;
  const one = year.map((month) => ({
    ...month,
    plantTHa: month.plantTHa / broughtTHa,
    rottedTHa: month.rottedTHa / broughtTHa,
  }));
  const kept = activeCarbonTHa(spinUpCarbon(one, soil).state);
  return Math.max(0, stockTHa - inertCarbonTHa(stockTHa)) / kept;
}
