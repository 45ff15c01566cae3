/**
 * Trays, bench and mix for plants raised in modules.
 *
 * Source  arithmetic; cells and volumes of trays 60 x 40 cm are in reference/crops.csv.
 * Checks  test/checks/crops.csv tray-*
 * Holds   trays are whole and hold enough; the bench is never smaller than its trays.
 * Leaves out  pricking out into larger cells, which takes more bench later.
 */

/** Cells to fill for plants wanted, of which only a share becomes fit to plant. */
export function cellsFor(plants: number, usableFraction: number): number {
  return Math.ceil(plants / usableFraction - 1e-9);
}

/** Whole trays for plants wanted. */
export function traysFor(plants: number, usableFraction: number, cellsPerTray: number): number {
  return Math.ceil(plants / usableFraction / cellsPerTray - 1e-9);
}

/** Bench (m2) for trays, a share of it lost to gaps. */
export function benchM2(trays: number, trayM2: number, gapFraction: number): number {
  return (trays * trayM2) / (1 - gapFraction);
}

/** Mix (litres) to fill trays, a share of it spilt. */
export function mixL(cells: number, cellMl: number, spiltFraction: number): number {
  return (cells * cellMl) / 1000 / (1 - spiltFraction);
}
