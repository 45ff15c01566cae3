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
  /** Null where the table has no share of tops, or of roots. */
  readonly aboveGroundKgHa: number | null;
  readonly belowGroundKgHa: number | null;
}

/** Residue nitrogen from a yield (t/ha, fresh or dry). Null for a crop the table has not. */
export function residueNitrogen(
  rowId: string,
  harvest: { readonly freshTHa: number } | { readonly dryTHa: number },
): CropResidueN | null {
  const row = cellsOf(tableText('science/ipcc2019-t11-1a-residues')).find(
    (cell) => cell('crop') === rowId.trim().toLowerCase(),
  );
  if (row === undefined) return null;
  const figure = (key: string) => (row(key) === '' ? null : Number(row(key)));
  const cropDryTHa = 'dryTHa' in harvest ? harvest.dryTHa : harvest.freshTHa * (figure('DRY') ?? 1);
  const [nAbove, nBelow, aboveRatio, rootRatio] = [figure('N_AG'), figure('N_BG'), figure('R_AG'), figure('RS')];
  const aboveTHa = aboveRatio === null ? null : cropDryTHa * aboveRatio;
  const belowTHa = aboveTHa === null || rootRatio === null ? null : (cropDryTHa + aboveTHa) * rootRatio;
  return {
    cropDryTHa,
    aboveGroundKgHa: aboveTHa === null ? null : aboveTHa * (nAbove ?? 0) * 1000,
    belowGroundKgHa: belowTHa === null ? null : belowTHa * (nBelow ?? 0) * 1000,
  };
}

/** Nitrogen fixed by a grain legume (kg/ha): shoot dry matter × nitrogen × below-ground factor × share from the air. */
export function fixedByShootKgHa(
  shootDryTHa: number,
  shoot: { readonly nPct: number; readonly belowGroundFactor: number; readonly airShare: number },
): number {
  return shootDryTHa * shoot.nPct * 10 * shoot.belowGroundFactor * shoot.airShare;
}
