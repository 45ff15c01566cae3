/**
 * A stand with everything its days need worked out once.
 *
 * Source  canopy: Raes et al. 2009 (cover/canopy-curve.ts); the rest of its habit from soil-part.ts.
 * Checks  test/run-soil.test.ts (cover of the run equals the canopy curve's)
 * Holds   its own cover is the canopy curve's at every thermal time.
 * Leaves out  nothing of its own.
 */
import { canopyCover, canopyRate, leftByMowingShare, thermalTimeAtCover } from '../cover/canopy-curve.ts';
import { criticalNPct } from '../nitrogen/critical-nitrogen.ts';
import { coefficientAt } from '../water/crop-coefficient.ts';
import type { SoilStand } from './soil-part.ts';

export interface StandOfRun {
  readonly stand: SoilStand;
  readonly ratePerCd: number;
  readonly fastToCd: number;
  readonly slowFactor: number;
  readonly afterMowCd: number;
  readonly frostKillC: number;
  readonly matureCd: number;
  readonly declineFromCd: number;
  /** Critical nitrogen while the stand is light. */
  readonly flatNPct: number;
  readonly curve: SoilStand['habit']['canopy'];
  readonly habit: SoilStand['habit'];
}

/** Works out a stand. */
export function standOfRun(stand: SoilStand): StandOfRun {
  const { canopy } = stand.habit;
  const { startCoverShare, fullCoverShare } = canopy;
  const ratePerCd = canopyRate(startCoverShare, fullCoverShare, canopy.tFullCd);
  return {
    stand,
    habit: stand.habit,
    curve: canopy,
    ratePerCd,
    fastToCd: Math.log(fullCoverShare / (2 * startCoverShare)) / ratePerCd,
    slowFactor: (0.25 * fullCoverShare ** 2) / startCoverShare,
    afterMowCd: thermalTimeAtCover(canopy, leftByMowingShare * fullCoverShare) ?? 0,
    frostKillC: stand.habit.frostKillC ?? Number.NEGATIVE_INFINITY,
    matureCd: stand.habit.matureCd ?? Number.POSITIVE_INFINITY,
    flatNPct: criticalNPct(stand.habit.dilution, 0),
    declineFromCd: canopy.declineFromCd ?? Number.POSITIVE_INFINITY,
  };
}

/** Its own cover at a thermal time, before what failed to come up is taken off. */
export function ownCoverShare(of: StandOfRun, tCd: number): number {
  const { curve } = of;
  if (tCd > of.declineFromCd) return canopyCover(curve, tCd);
  return tCd <= of.fastToCd
    ? curve.startCoverShare * Math.exp(of.ratePerCd * tCd)
    : curve.fullCoverShare - of.slowFactor * Math.exp(-of.ratePerCd * tCd);
}

/** Basal coefficient at a stage of warmth and a cover: never more than its cover can give off. */
export function basalKcb(of: StandOfRun, growthCd: number, coverShare: number): number {
  const { habit, curve } = of;
  if (habit.stagesKc !== null) return coefficientAt(habit.stagesKc, growthCd) * of.stand.establishedShare;
  return habit.fullKcb * (coverShare / curve.fullCoverShare);
}
