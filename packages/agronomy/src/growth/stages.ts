/**
 * The four stages of a crop stretched by thermal time: published days give the proportions, the farm's own warmth gives the dates.
 *
 * Source  FAO-56 Table 11 stage lengths (as taken into reference/crops.csv); total thermal time from the same table (`tt_derived_cd`, or the published sum).
 * Checks  test/stages.test.ts (shares sum to 1; a warmer place is earlier; a recorded date rescales by its weight)
 * Holds   initial ≤ development ≤ mid ≤ late boundaries; shares do not change with the weather.
 * Leaves out  vernalisation and day length: bulbs and wintered crops keep their window (`ttDerivedUse` = window).
 */
import type { Crop } from '../reference/crop-columns.ts';
import { reference } from '../reference/reference.ts';

/** Thermal time from emergence or planting to the end of each stage, and what it rests on. */
export interface StageSums {
  readonly baseC: number;
  readonly initialCd: number;
  readonly developmentCd: number;
  readonly midCd: number;
  readonly lateCd: number;
  /** published: the crop's own stage lengths; like: those of another crop of the same FAO-56 row or group; even: no row, equal to most vegetables. */
  readonly proportions: 'published' | 'like' | 'even';
  /** Where `proportions` is like: whose. */
  readonly likeCropId: string | null;
  /** published: a sum some source prints; derived: from days to maturity at the normals of central England, see reference/README.md. */
  readonly total: 'published' | 'derived';
}

/** Median shares of the vegetables with a row in Table 11. Common practice where nothing nearer is known. */
const evenShares = [0.2, 0.3, 0.35, 0.15] as const;

/** Stages of a crop; null where the table has no thermal time at all (rhubarb, asparagus). Throws for an unknown crop. */
export function stagesOfCrop(cropId: string): StageSums | null {
  const crop = reference.crops.get(cropId);
  if (crop === undefined) throw new Error(`There is no crop "${cropId}" in the tables.`);
  const total = totalOf(crop);
  if (total === null) return null;
  const { shares, proportions, likeCropId } = sharesOf(crop);
  const ends = shares.map((_, at) => shares.slice(0, at + 1).reduce((sum, share) => sum + share, 0) * total.sumCd);
  const [initialCd = 0, developmentCd = 0, midCd = 0] = ends;
  return {
    baseC: total.baseC,
    initialCd,
    developmentCd,
    midCd,
    lateCd: total.sumCd,
    proportions,
    likeCropId,
    total: total.from,
  };
}

/**
 * One recorded date rescales the sums, held back by how few dates there are: own weight n / (n + 3).
 * @param recorded thermal time found on the farm against that expected, and from how many dates it is known.
 */
export function rescaleStages(
  stages: StageSums,
  recorded: { readonly foundCd: number; readonly expectedCd: number; readonly dates: number },
): StageSums {
  const weight = recorded.dates / (recorded.dates + 3);
  const factor = 1 + weight * (recorded.foundCd / recorded.expectedCd - 1);
  const { initialCd, developmentCd, midCd, lateCd } = stages;
  return {
    ...stages,
    initialCd: initialCd * factor,
    developmentCd: developmentCd * factor,
    midCd: midCd * factor,
    lateCd: lateCd * factor,
  };
}

/** The published sum is preferred for peas; for sweet corn the derived one fits northern summers better (see reference/README.md). */
function totalOf(crop: Crop): { baseC: number; sumCd: number; from: StageSums['total'] } | null {
  if (crop.id === 'pea' && crop.ttBaseC !== null && crop.ttLowCd !== null && crop.ttHighCd !== null) {
    return { baseC: crop.ttBaseC, sumCd: (crop.ttLowCd + crop.ttHighCd) / 2, from: 'published' };
  }
  if (crop.ttDerivedBaseC === null || crop.ttDerivedCd === null) return null;
  return { baseC: crop.ttDerivedBaseC, sumCd: crop.ttDerivedCd, from: 'derived' };
}

function sharesOf(crop: Crop): {
  shares: readonly number[];
  proportions: StageSums['proportions'];
  likeCropId: string | null;
} {
  const own = publishedShares(crop);
  if (own !== null) return { shares: own, proportions: 'published', likeCropId: null };
  const others = [...reference.crops.values()];
  const like =
    others.find((other) => other.fao56Key === crop.fao56Key && publishedShares(other) !== null) ??
    others.find((other) => other.rotationGroup === crop.rotationGroup && publishedShares(other) !== null);
  const shares = like === undefined ? null : publishedShares(like);
  if (like === undefined || shares === null) return { shares: evenShares, proportions: 'even', likeCropId: null };
  return { shares, proportions: 'like', likeCropId: like.id };
}

function publishedShares(crop: Crop): readonly number[] | null {
  const { stageIniDays, stageDevDays, stageMidDays, stageLateDays } = crop;
  if (stageIniDays === null || stageDevDays === null || stageMidDays === null || stageLateDays === null) return null;
  const total = stageIniDays + stageDevDays + stageMidDays + stageLateDays;
  return [stageIniDays, stageDevDays, stageMidDays, stageLateDays].map((days) => days / total);
}
