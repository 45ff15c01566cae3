/**
 * Share of the ground a stand covers, by thermal time since emergence or planting.
 *
 * Source  Raes, Steduto, Hsiao & Fereres 2009, Agronomy Journal 101:438 (growth: read in two published transcriptions; decline: recalled);
 *         98 % of the greatest cover at `tFullCd` fixes the rate.
 * Checks  test/checks/science.csv cc-01, cc-02; test/canopy.test.ts (rise, joins, decline, cutting)
 * Holds   0 ≤ cover ≤ greatest cover; never falls before the decline; half of the greatest cover where the two branches meet.
 * Leaves out  drought, hunger, frost and slugs. ± 25 % on the time to full cover is common: a farm's own date of full cover is worth more.
 */
import type { ThermalSums } from '../growth/thermal-sums.ts';

/** The curve of one stand. Covers are fractions, 0 to 1. */
export interface CanopyCurve {
  readonly startCoverShare: number;
  readonly fullCoverShare: number;
  /** Thermal time (°C d above `baseC`) to 98 % of `fullCoverShare`. */
  readonly tFullCd: number;
  readonly baseC: number;
  /** Thermal time at which the leaves begin to die, and how long they take; null for what is harvested or cut green. */
  readonly declineFromCd: number | null;
  readonly declineOverCd: number | null;
}

/** Growth rate (per °C d) that brings the cover to 98 % of its greatest at `tFullCd`. */
export function canopyRate(startCoverShare: number, fullCoverShare: number, tFullCd: number): number {
  return Math.log((12.5 * fullCoverShare) / startCoverShare) / tFullCd;
}

/** Cover (0-1) while it grows, at a thermal time since the start. */
export function growingCover(
  curve: Pick<CanopyCurve, 'startCoverShare' | 'fullCoverShare'>,
  ratePerCd: number,
  tCd: number,
): number {
  const exponential = curve.startCoverShare * Math.exp(ratePerCd * tCd);
  if (exponential <= curve.fullCoverShare / 2) return exponential;
  return curve.fullCoverShare - 0.25 * (curve.fullCoverShare ** 2 / curve.startCoverShare) * Math.exp(-ratePerCd * tCd);
}

/** Rate of decline (per °C d) at which the cover has gone to nought after `declineOverCd`. */
export function declineRate(fullCoverShare: number, declineOverCd: number): number {
  return (Math.log(21) * (fullCoverShare + 2.29)) / (3.33 * declineOverCd);
}

/** Cover (0-1) at a thermal time since the start, decline included. */
export function canopyCover(curve: CanopyCurve, tCd: number): number {
  if (tCd < 0) return 0;
  const grown = growingCover(curve, canopyRate(curve.startCoverShare, curve.fullCoverShare, curve.tFullCd), tCd);
  const { declineFromCd, declineOverCd } = curve;
  if (declineFromCd === null || declineOverCd === null || tCd <= declineFromCd) return grown;
  const dying =
    0.05 *
    (Math.exp(
      (3.33 * declineRate(curve.fullCoverShare, declineOverCd) * (tCd - declineFromCd)) / (curve.fullCoverShare + 2.29),
    ) -
      1);
  return Math.max(0, Math.min(grown, curve.fullCoverShare * (1 - dying)));
}

/** Thermal time at which a growing cover is reached: the other way round. Null above 99.9 % of the greatest cover. */
export function thermalTimeAtCover(curve: CanopyCurve, coverShare: number): number | null {
  if (coverShare >= 0.999 * curve.fullCoverShare) return null;
  if (coverShare <= curve.startCoverShare) return 0;
  const rate = canopyRate(curve.startCoverShare, curve.fullCoverShare, curve.tFullCd);
  if (coverShare <= curve.fullCoverShare / 2) return Math.log(coverShare / curve.startCoverShare) / rate;
  return (
    Math.log((0.25 * curve.fullCoverShare ** 2) / (curve.startCoverShare * (curve.fullCoverShare - coverShare))) / rate
  );
}

/** What a mown ley keeps: 0.3 to 0.5 of the ground at each cut, common practice. */
export const leftByMowingShare = 0.4;

/** One stand's days on the ground, for writing its cover day by day. */
export interface CoverSpan {
  /** The day it has come up or is planted. */
  readonly startDayNumber: number;
  /** The first day it is no longer there. */
  readonly endDayNumber: number;
  /** Transplants stand still before they grow: 5-10 days, common practice. */
  readonly checkDays?: number;
  /** Days on which it is mown down to `leftByMowingShare`, in order. */
  readonly mownOnDays?: readonly number[];
}

/**
 * Writes the cover of every day from `firstDayNumber` on into `coverShare`; days outside the span become 0.
 * Plain numbers throughout: ten years of fourteen plots are written on every change of a plan.
 */
export function writeCover(
  coverShare: Float64Array,
  firstDayNumber: number,
  stand: { readonly curve: CanopyCurve; readonly sums: ThermalSums; readonly span: CoverSpan },
): void {
  const { curve, sums, span } = stand;
  const coverAt = coverByThermalTime(curve);
  const growsFrom = span.startDayNumber + (span.checkDays ?? 0);
  const last = sums.sumCd.length - 1;
  const sumAt = (day: number) => sums.sumCd[Math.min(Math.max(day - sums.startDayNumber, 0), last)] ?? 0;
  const mows = span.mownOnDays ?? [];
  const afterMowCd = thermalTimeAtCover(curve, leftByMowingShare) ?? 0;
  const from = Math.min(coverShare.length, Math.max(0, span.startDayNumber - firstDayNumber));
  const to = Math.max(from, Math.min(coverShare.length, span.endDayNumber - firstDayNumber));
  let origin = sumAt(growsFrom);
  let nextMow = 0;
  coverShare.fill(0, 0, from);
  for (let at = from; at < to; at++) {
    const day = firstDayNumber + at;
    for (let mow = mows[nextMow]; mow !== undefined && day >= mow; mow = mows[nextMow]) {
      // Mown while still lower than the cut leaves it: nothing is lost.
      if (sumAt(mow) - origin > afterMowCd) origin = sumAt(mow) - afterMowCd;
      nextMow++;
    }
    coverShare[at] = coverAt(day < growsFrom ? 0 : sumAt(day) - origin);
  }
  coverShare.fill(0, to);
}

/** The curve with its constants worked out once. */
function coverByThermalTime(curve: CanopyCurve): (tCd: number) => number {
  const { startCoverShare, fullCoverShare, declineFromCd } = curve;
  const rate = canopyRate(startCoverShare, fullCoverShare, curve.tFullCd);
  const fastTo = Math.log(fullCoverShare / (2 * startCoverShare)) / rate;
  const slow = (0.25 * fullCoverShare ** 2) / startCoverShare;
  return (t) => {
    if (declineFromCd !== null && t > declineFromCd) return canopyCover(curve, t);
    return t <= fastTo ? startCoverShare * Math.exp(rate * t) : fullCoverShare - slow * Math.exp(-rate * t);
  };
}
