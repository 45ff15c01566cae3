/**
 * Plants, rows and beds on an area.
 *
 * Source  arithmetic of spacing; wheelings are inside the row distance (bed centres divided by rows), as in reference/README.md.
 * Checks  test/checks/crops.csv pop-*, onion-density*, leek-dense-yield
 * Holds   twice the area carries twice the plants and row metres.
 * Leaves out  headlands and short rows at the edge of a plot: the area given is the cropped bed area.
 */

/** Plants per m2 at a distance in the row and between rows. */
export function plantsPerM2(inRowM: number, rowM: number): number {
  return 1 / (inRowM * rowM);
}

/** Metres of row on an area with so many rows on beds of this width from centre to centre. */
export function rowMetres(areaM2: number, rows: number, bedCentresM: number): number {
  return (areaM2 * rows) / bedCentresM;
}

/** The distance between rows that beds amount to, wheelings included. */
export function effectiveRowM(rows: number, bedCentresM: number): number {
  return bedCentresM / rows;
}

/** Plants that stand per m2 of bed from seeds at a distance in the row: of each seed its chance to come up and to stay. */
export function standingPerM2(sowing: {
  readonly rows: number;
  readonly bedM: number;
  readonly seedSpacingM: number;
  readonly germinationFraction: number;
  readonly fieldFactor: number;
}): number {
  return ((sowing.rows / sowing.bedM) * (sowing.germinationFraction * sowing.fieldFactor)) / sowing.seedSpacingM;
}

/** Mass of one plant's produce (g) where so many per m2 gave so much. */
export function massPerPlantG(yieldTHa: number, plantsPerM2: number): number {
  return (yieldTHa * 100) / plantsPerM2; // 1 t/ha = 100 g/m2
}

/** Plants set in a person-hour. */
export function plantsPerPersonHour(planting: {
  readonly rowM: number;
  readonly spacingM: number;
  readonly people: number;
  readonly hours: number;
}): number {
  return planting.rowM / planting.spacingM / (planting.people * planting.hours);
}
