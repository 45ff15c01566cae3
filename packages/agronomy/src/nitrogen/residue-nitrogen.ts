/**
 * Nitrogen in what a crop leaves above and below ground, and nitrogen fixed by grain legumes, by the two published tables.
 *
 * Source  IPCC 2019 Refinement, volume 4, eq. 11.6 with Table 11.1A (reference/science); Herridge et al. 2022 for fixation by grain legumes.
 * Checks  test/checks/soil.csv n-05; test/crop-answer.test.ts
 * Holds   in proportion to yield.
 * Leaves out  root and leaf vegetables: the 2019 table has no row for them; the crops table has their residues.
 */
import { cellsOf, tableText } from '../reference/table-text.ts';

export interface CropResidueN {
  readonly cropDryTHa: number;
  readonly aboveGroundKgHa: number;
  readonly belowGroundKgHa: number;
}

/** Residue nitrogen from a yield (t/ha, fresh or dry). Null for a crop the table has not, or whose row lacks a ratio. */
export function residueNitrogen(
  rowId: string,
  harvest: { readonly freshTHa: number } | { readonly dryTHa: number },
): CropResidueN | null {
  const row = cellsOf(tableText('science/ipcc2019-t11-1a-residues')).find((cell) => cell('crop') === rowId);
  if (row === undefined) return null;
  const [nAbove, nBelow, aboveRatio, rootRatio, dry] = ['N_AG', 'N_BG', 'R_AG', 'RS', 'DRY'].map((key) =>
    row(key) === '' ? null : Number(row(key)),
  );
  if ([nAbove, nBelow, aboveRatio, rootRatio, dry].some((value) => value === null || value === undefined)) return null;
  const cropDryTHa = 'dryTHa' in harvest ? harvest.dryTHa : harvest.freshTHa * (dry ?? 0);
  const aboveTHa = cropDryTHa * (aboveRatio ?? 0);
  return {
    cropDryTHa,
    aboveGroundKgHa: aboveTHa * (nAbove ?? 0) * 1000,
    belowGroundKgHa: (cropDryTHa + aboveTHa) * (rootRatio ?? 0) * (nBelow ?? 0) * 1000,
  };
}

/** Nitrogen fixed by a grain legume (kg/ha): shoot dry matter × nitrogen × below-ground factor × share from the air. */
export function fixedByShootKgHa(
  shootDryTHa: number,
  shoot: { readonly nPct: number; readonly belowGroundFactor: number; readonly airShare: number },
): number {
  return shootDryTHa * shoot.nPct * 10 * shoot.belowGroundFactor * shoot.airShare;
}
