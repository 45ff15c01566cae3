/**
 * A stand with everything its days need worked out once.
 *
 * Source  canopy: Raes et al. 2009 (cover/canopy-curve.ts); the rest of its habit from soil-part.ts.
 * Checks  test/run-soil.test.ts (cover of the run equals the canopy curve's)
 * Holds   its own cover is the canopy curve's at every thermal time.
 * Leaves out  nothing of its own.
 */
import { canopyRate, leftByMowingShare, thermalTimeAtCover } from '../cover/canopy-curve.ts';
import { criticalNPct } from '../nitrogen/critical-nitrogen.ts';
import type { SoilStand, StandHabit } from './soil-part.ts';

export interface StandOfRun {
  readonly stand: SoilStand;
  readonly establishedShare: number;
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
  const habit = inOneForm(stand.habit);
  const { canopy } = habit;
  const { startCoverShare, fullCoverShare } = canopy;
  const ratePerCd = canopyRate(startCoverShare, fullCoverShare, canopy.tFullCd);
  return {
    stand,
    establishedShare: stand.establishedShare,
    habit,
    curve: canopy,
    ratePerCd,
    fastToCd: Math.log(fullCoverShare / (2 * startCoverShare)) / ratePerCd,
    slowFactor: (0.25 * fullCoverShare ** 2) / startCoverShare,
    afterMowCd: thermalTimeAtCover(canopy, leftByMowingShare * fullCoverShare) ?? 0,
    frostKillC: habit.frostKillC ?? Number.NEGATIVE_INFINITY,
    matureCd: habit.matureCd ?? Number.POSITIVE_INFINITY,
    flatNPct: criticalNPct(habit.dilution, 0),
    declineFromCd: canopy.declineFromCd ?? Number.POSITIVE_INFINITY,
  };
}

/** The habit written out field by field, so that all habits have one form in memory whoever made them: a day reads many of them. */
function inOneForm(habit: StandHabit): StandHabit {
  const { canopy, dilution } = habit;
  return {
    canopy: {
      startCoverShare: canopy.startCoverShare,
      fullCoverShare: canopy.fullCoverShare,
      tFullCd: canopy.tFullCd,
      baseC: canopy.baseC,
      declineFromCd: canopy.declineFromCd,
      declineOverCd: canopy.declineOverCd,
    },
    checkDays: habit.checkDays,
    fullKcb: habit.fullKcb,
    stagesKc: habit.stagesKc,
    growthBaseC: habit.growthBaseC,
    matureCd: habit.matureCd,
    shortDayShare: habit.shortDayShare,
    heightM: habit.heightM,
    depletionFraction: habit.depletionFraction,
    waterRootM: habit.waterRootM,
    nitrogenRootM: habit.nitrogenRootM,
    rootsDownCd: habit.rootsDownCd,
    gainPerCdTHa: habit.gainPerCdTHa,
    youngGainShare: habit.youngGainShare,
    youngCd: habit.youngCd,
    dilution: {
      coefficient: dilution.coefficient,
      exponent: dilution.exponent,
      flatBelowTHa: dilution.flatBelowTHa,
      flatPct: dilution.flatPct,
      floorPct: dilution.floorPct,
    },
    storesRatio: habit.storesRatio,
    rootMassShare: habit.rootMassShare,
    rootNShare: habit.rootNShare,
    legumeShare: habit.legumeShare,
    airShare: habit.airShare,
    soldMassShare: habit.soldMassShare,
    soldNShare: habit.soldNShare,
    frostKillC: habit.frostKillC,
    yieldResponseFactor: habit.yieldResponseFactor,
  };
}
