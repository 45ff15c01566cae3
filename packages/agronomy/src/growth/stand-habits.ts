/**
 * What a crop, cover or ley of the tables is to the soil.
 *
 * Source  reference/crops.csv and covers.csv (yield, dry matter, nitrogen, roots, coefficients); canopy: cover/canopy-choice.ts; stages: FAO-56 Table 11 stretched by
 *         thermal time (growth/stages.ts); critical curves: nitrogen/critical-nitrogen.ts, moved to the table's uptake; below-ground factors of Anglade et al.
 *         2015 (1.7 forage, 1.3 grain); yield response to water: FAO 33 (Doorenbos & Kassam 1979, recalled).
 * Checks  test/stand-habits.test.ts (every crop and cover; a well-fed stand in a usual year reaches its table's mass and nitrogen within a third)
 * Holds   shares between 0 and 1; a legume's share from the air only where the table has one.
 * Leaves out  varieties. Root masses, seasons' warmth of covers and roots' rates are common practice.
 */
import { canopyFor } from '../cover/canopy-choice.ts';
import { type CanopyCurve, canopyRate, growingCover } from '../cover/canopy-curve.ts';
import { type DilutionCurve, dilutionCurves, dilutionFor } from '../nitrogen/critical-nitrogen.ts';
import type { CoverUse } from '../nitrogen/fixation.ts';
import type { Cover } from '../reference/cover-columns.ts';
import type { Crop } from '../reference/crop-columns.ts';
import { reference } from '../reference/reference.ts';
import type { StandHabit } from '../soil/soil-part.ts';
import { stagesOfCrop } from './stages.ts';
import { hardyShortDayShare } from './thermal-sums.ts';

/** Yield response factors of FAO 33, by the start of the crop's id. Recalled. */
const yieldResponses: readonly (readonly [RegExp, number])[] = [
  [/^potato/, 1.1],
  [/^(cabbage|brussels|kale|calabrese|cauliflower|broccoli)/, 0.95],
  [/^(onion|shallot|garlic|leek)/, 1.1],
  [/^tomato/, 1.05],
  [/^pepper/, 1.1],
  [/^(pea|broad-bean|french-bean|runner-bean)/, 1.15],
  [/^sweet-corn/, 1.25],
];

const curveByGroup: Readonly<Partial<Record<Crop['rotationGroup'], DilutionCurve>>> = {
  potato: dilutionCurves.potato,
  brassica: dilutionCurves.cabbage,
  leaf: dilutionCurves.lettuce,
  sweetcorn: dilutionCurves.maize,
  'tunnel-solanum': dilutionCurves.tomato,
  legume: dilutionCurves.legume,
};

/** Share of a pulse's nitrogen from the air: as in nitrogen/fixation.ts. */
const pulseAirShares: Readonly<Record<string, number>> = {
  pea: 0.71,
  'broad-bean-spring': 0.75,
  'broad-bean-autumn': 0.75,
  'french-bean-dwarf': 0.38,
  'runner-bean': 0.38,
};

/** Stands in rich ground hold more than they need: nitrogen indices of 1.2 to 1.5 are usual in swards (recalled); crops' tables count some of it already. */
const storesOfCropRatio = 1.1;
const storesOfCoverRatio = 1.4;

/** Growth ends where the table has no thermal time: perennials, common practice. */
const perennialMatureCd = 1200;

/** The habit of a crop at a yield (t/ha fresh; the table's typical one if none is given). Throws for an unknown crop. */
export function habitOfCrop(cropId: string, yieldTHa?: number): StandHabit {
  const crop = reference.crops.get(cropId);
  if (crop === undefined) throw new Error(`There is no crop "${cropId}" in the tables.`);
  const choice = canopyFor(cropId);
  const stages = stagesOfCrop(cropId);
  const growthBaseC = stages?.baseC ?? choice.curve.baseC;
  const matureCd = stages?.lateCd ?? perennialMatureCd;
  const ofTypical = (yieldTHa ?? crop.yieldTypTHa) / crop.yieldTypTHa;
  const shootTHa = ((ofTypical * crop.yieldTypTHa) / crop.harvestIndexFresh) * (crop.dmPct / 100);
  const airShare = pulseAirShares[cropId] ?? 0;
  const rootNShare = airShare > 0 ? 0.3 : 0.15;
  const curve = curveByGroup[crop.rotationGroup] ?? dilutionCurves.general;
  return {
    canopy: choice.curve,
    checkDays: choice.checkDays,
    fullKcb: crop.kcbMid,
    stagesKc:
      stages === null
        ? null
        : {
            initialKc: crop.kcbIni,
            midKc: crop.kcbMid,
            endKc: crop.kcbEnd,
            stageEndsTotal: [stages.initialCd, stages.developmentCd, stages.midCd, stages.lateCd],
          },
    growthBaseC,
    matureCd,
    shortDayShare: 0,
    heightM: crop.heightM,
    depletionFraction: crop.depletionFraction,
    waterRootM: crop.rootWaterHighM,
    nitrogenRootM: Math.max(0.3, crop.rootNCm / 100),
    rootsDownCd: 0.8 * matureCd,
    gainPerCdTHa: gainFor(shootTHa, choice.curve, { matureCd, growthBaseC }),
    youngGainShare: 1,
    youngCd: 0,
    dilution: dilutionFor(curve, shootTHa, (ofTypical * crop.nUptakeTypKgHa) / (1 + rootNShare)),
    storesRatio: storesOfCropRatio,
    rootMassShare: airShare > 0 ? 0.3 : 0.2,
    rootNShare,
    legumeShare: airShare > 0 ? 1 : 0,
    airShare,
    soldMassShare: Math.min(1, crop.harvestIndexFresh),
    soldNShare: Math.min(1, crop.nProductTypKgHa / (crop.nUptakeTypKgHa / (1 + rootNShare))),
    frostKillC: null,
    yieldResponseFactor: yieldResponses.find(([pattern]) => pattern.test(cropId))?.[1] ?? null,
  };
}

/** Warmth of the season a cover grows in (mean °C): winter covers' and others'. Common practice of lowland Britain. */
const seasonMeanC = { winter: 6.2, summer: 13.5 } as const;

/** The habit of a cover or ley in one of its uses. Throws for an unknown cover; a use the table has not is taken as the main one. */
export function habitOfCover(coverId: string, use: CoverUse = 'main'): StandHabit {
  const cover = reference.covers.get(coverId);
  if (cover === undefined) throw new Error(`There is no cover "${coverId}" in the tables.`);
  const isLey = /perennial|year|biennial/.test(cover.life);
  const isGrass = cover.type === 'grass';
  const { curve } = canopyFor(coverId);
  const { dryTHa, nKgHa, warmthCd } = growthOfUse(cover, use);
  const roots = rootsOf(cover);
  return {
    canopy: curve,
    checkDays: 0,
    fullKcb: isGrass ? 1 : 1.1, // FAO-56 Table 17: rye-grass, clover
    stagesKc: null,
    growthBaseC: cover.baseTempC,
    matureCd: isLey ? null : 1.3 * warmthCd,
    shortDayShare: hardyShortDayShare,
    heightM: isGrass ? 0.3 : 0.6,
    depletionFraction: isGrass ? 0.6 : 0.55,
    waterRootM: cover.rootDepthCm / 100,
    nitrogenRootM: cover.rootDepthCm / 100,
    rootsDownCd: cover.rootDepthCm * 10 * rootCdPerMm,
    gainPerCdTHa: isLey
      ? dryTHa / (warmthCd * meanCoverOfLey)
      : gainFor(dryTHa, curve, { matureCd: warmthCd, growthBaseC: cover.baseTempC }),
    ...youngOf(cover, isLey ? dryTHa / warmthCd : 0),
    dilution: dilutionOf(cover, { dryTHa, shootNKgHa: nKgHa / (1 + roots.foundNShare), isLey }),
    storesRatio: 1 + (storesOfCoverRatio - 1) * (1 - legumesOf(cover).legumeShare),
    rootMassShare: roots.massShare,
    rootNShare: roots.nShare,
    ...legumesOf(cover),
    soldMassShare: 0,
    soldNShare: 0,
    // Shoots of perennials die back and come again: only annuals are killed.
    frostKillC: isLey ? null : cover.frostKillC,
    yieldResponseFactor: null,
  };
}

/** What a ley holds in a year it holds in three growths, each of which dilutes only to its own mass. */
function dilutionOf(
  cover: Cover,
  of: { readonly dryTHa: number; readonly shootNKgHa: number; readonly isLey: boolean },
): DilutionCurve {
  const growths = of.isLey ? 3 : 1;
  const curve = cover.type === 'grass' ? dilutionCurves.grass : dilutionCurves.legume;
  return dilutionFor(curve, of.dryTHa / growths, of.shootNKgHa / growths);
}

/** In a mixture the grass takes from the ground first and the legumes fix nearly all of theirs (Dhamala et al.: 90 %). */
function legumesOf(cover: Cover): Pick<StandHabit, 'legumeShare' | 'airShare'> {
  const { fixedShareLow, fixedShareHigh } = cover;
  if (!cover.nFixing || fixedShareLow === null || fixedShareHigh === null) return { legumeShare: 0, airShare: 0 };
  const airShare = (fixedShareLow + fixedShareHigh) / 2;
  return cover.mixOf.length > 0
    ? { legumeShare: Math.min(1, airShare / 0.9), airShare: 0.9 }
    : { legumeShare: 1, airShare };
}

/** Mean cover of a ley that is mown three or four times. Common practice. */
const meanCoverOfLey = 0.8;
/** Roots go down 1 to 2.3 mm for each degree-day (Thorup-Kristensen, recalled): the slow end. */
const rootCdPerMm = 1;

function growthOfUse(cover: Cover, use: CoverUse): { dryTHa: number; nKgHa: number; warmthCd: number } {
  const { secondWeeks, dm2LowTHa, dm2HighTHa, n2LowKgHa, n2HighKgHa } = cover;
  const second = [secondWeeks, dm2LowTHa, dm2HighTHa, n2LowKgHa, n2HighKgHa];
  const main = [cover.mainWeeks, cover.dmLowTHa, cover.dmHighTHa, cover.nLowKgHa, cover.nHighKgHa];
  const taken = use === 'second' && second.every((one) => one !== null) ? second : main;
  const [weeks = 0, dmLow = 0, dmHigh = 0, nLow = 0, nHigh = 0] = taken.map((one) => one ?? 0);
  const isWinter = /winter/.test((taken === second ? cover.secondUse : cover.mainUse) ?? '') && weeks >= 26;
  const meanC = isWinter ? seasonMeanC.winter : seasonMeanC.summer;
  const restOfYearCd = !isWinter && taken === second && weeks >= 26 ? (52 - weeks) * 7 * restOfYearC : 0;
  return {
    dryTHa: (dmLow + dmHigh) / 2,
    nKgHa: (nLow + nHigh) / 2,
    warmthCd: weeks * 7 * Math.max(2, meanC - cover.baseTempC) + restOfYearCd,
  };
}

/** A standing ley gains this much warmth a day outside its season, short days counted as they count. Common practice. */
const restOfYearC = 1.2;

/** A ley makes its first year's growth on the way to its second's; what is only ever one year old has no young gain of its own. */
function youngOf(cover: Cover, perCdTHa: number): Pick<StandHabit, 'youngGainShare' | 'youngCd'> {
  const { dryTHa, warmthCd } = growthOfUse(cover, 'main');
  const isOneYear = perCdTHa === 0 || cover.mainWeeks > 40;
  return isOneYear
    ? { youngGainShare: 1, youngCd: 0 }
    : { youngGainShare: Math.min(1, dryTHa / warmthCd / perCdTHa), youngCd: warmthCd };
}

/**
 * Roots against shoots. `nShare` is what goes below ground in all: forage legumes 0.7, pulses 0.3 (Anglade et al. 2015), shed roots in it. `foundNShare` is
 * what is found in roots when a stand is dug, as the table's "tops and roots" counts. Common practice but for Anglade's two.
 */
function rootsOf(cover: Cover): { massShare: number; nShare: number; foundNShare: number } {
  if (cover.nFixing && /annual/.test(cover.life)) return { massShare: 0.4, nShare: 0.3, foundNShare: 0.2 };
  if (cover.nFixing) return { massShare: 0.9, nShare: 0.7, foundNShare: 0.4 };
  return cover.type === 'grass'
    ? { massShare: 0.7, nShare: 0.4, foundNShare: 0.4 }
    : { massShare: 0.3, nShare: 0.2, foundNShare: 0.2 };
}

/** Gain for each degree-day of full cover that makes a mass by maturity, from the cover's own course. */
function gainFor(
  massTHa: number,
  curve: CanopyCurve,
  growth: { readonly matureCd: number; readonly growthBaseC: number },
): number {
  const rate = canopyRate(curve.startCoverShare, curve.fullCoverShare, curve.tFullCd);
  const pieces = 200;
  let covered = 0;
  for (let piece = 0; piece < pieces; piece++) {
    const share = (piece + 0.5) / pieces;
    // The two may count above different bases: 13.5 °C turns one warmth into the other.
    const turned = (seasonMeanC.summer - curve.baseC) / (seasonMeanC.summer - growth.growthBaseC);
    covered += growingCover(curve, rate, share * growth.matureCd * Math.max(0.3, turned)) / pieces;
  }
  return massTHa / (growth.matureCd * covered);
}
