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
  readonly startCover: number;
  readonly fullCover: number;
  /** Thermal time (°C d above `baseC`) to 98 % of `fullCover`. */
  readonly tFullCd: number;
  readonly baseC: number;
  /** Thermal time at which the leaves begin to die, and how long they take; null for what is harvested or cut green. */
  readonly declineFromCd: number | null;
  readonly declineOverCd: number | null;
}

/** Growth rate (per °C d) that brings the cover to 98 % of its greatest at `tFullCd`. */
export function canopyRate(startCover: number, fullCover: number, tFullCd: number): number {
  return Math.log((12.5 * fullCover) / startCover) / tFullCd;
}

/** Cover (0-1) while it grows, at a thermal time since the start. */
export function growingCover(curve: Pick<CanopyCurve, 'startCover' | 'fullCover'>, ratePerCd: number, tCd: number): number {
  const exponential = curve.startCover * Math.exp(ratePerCd * tCd);
  if (exponential <= curve.fullCover / 2) return exponential;
  return curve.fullCover - 0.25 * (curve.fullCover ** 2 / curve.startCover) * Math.exp(-ratePerCd * tCd);
}

/** Rate of decline (per °C d) at which the cover has gone to nought after `declineOverCd`. */
export function declineRate(fullCover: number, declineOverCd: number): number {
  return (Math.log(21) * (fullCover + 2.29)) / (3.33 * declineOverCd);
}

/** Cover (0-1) at a thermal time since the start, decline included. */
export function canopyCover(curve: CanopyCurve, tCd: number): number {
  if (tCd < 0) return 0;
  const grown = growingCover(curve, canopyRate(curve.startCover, curve.fullCover, curve.tFullCd), tCd);
  const { declineFromCd, declineOverCd } = curve;
  if (declineFromCd === null || declineOverCd === null || tCd <= declineFromCd) return grown;
  const dying = 0.05 * (Math.exp((3.33 * declineRate(curve.fullCover, declineOverCd) * (tCd - declineFromCd)) / (curve.fullCover + 2.29)) - 1);
  return Math.max(0, Math.min(grown, curve.fullCover * (1 - dying)));
}

/** Thermal time at which a growing cover is reached: the other way round. Null above 99.9 % of the greatest cover. */
export function thermalTimeAtCover(curve: CanopyCurve, cover: number): number | null {
  if (cover >= 0.999 * curve.fullCover) return null;
  if (cover <= curve.startCover) return 0;
  const rate = canopyRate(curve.startCover, curve.fullCover, curve.tFullCd);
  if (cover <= curve.fullCover / 2) return Math.log(cover / curve.startCover) / rate;
  return Math.log((0.25 * curve.fullCover ** 2) / (curve.startCover * (curve.fullCover - cover))) / rate;
}

/** What a mown ley keeps: 0.3 to 0.5 of the ground at each cut, common practice. */
export const coverLeftByMowing = 0.4;

/** One stand's days on the ground, for writing its cover day by day. */
export interface CoverSpan {
  /** The day it has come up or is planted. */
  readonly startDayNumber: number;
  /** The first day it is no longer there. */
  readonly endDayNumber: number;
  /** Transplants stand still before they grow: 5-10 days, common practice. */
  readonly checkDays?: number;
  /** Days on which it is mown down to `coverLeftByMowing`, in order. */
  readonly mowDayNumbers?: readonly number[];
}

/**
 * Writes the cover of every day from `outStartDayNumber` on into `out`; days outside the span become 0.
 * Plain numbers throughout: ten years of fourteen plots are written on every change of a plan.
 */
export function writeCover(out: Float64Array, outStartDayNumber: number, stand: { readonly curve: CanopyCurve; readonly sums: ThermalSums; readonly span: CoverSpan }): void {
  const { curve, sums, span } = stand;
  const rate = canopyRate(curve.startCover, curve.fullCover, curve.tFullCd);
  const fastTo = Math.log(curve.fullCover / (2 * curve.startCover)) / rate;
  const slow = (0.25 * curve.fullCover ** 2) / curve.startCover;
  const growsFrom = span.startDayNumber + (span.checkDays ?? 0);
  const last = sums.sumCd.length - 1;
  const sumAt = (day: number) => sums.sumCd[Math.min(Math.max(day - sums.startDayNumber, 0), last)] ?? 0;
  const mows = span.mowDayNumbers ?? [];
  const afterMowCd = thermalTimeAtCover(curve, coverLeftByMowing) ?? 0;
  let origin = sumAt(growsFrom);
  let nextMow = 0;
  for (let at = 0; at < out.length; at++) {
    const day = outStartDayNumber + at;
    if (day < span.startDayNumber || day >= span.endDayNumber) {
      out[at] = 0;
      continue;
    }
    for (let mow = mows[nextMow]; mow !== undefined && day >= mow; mow = mows[nextMow]) {
      // Mown while still lower than the cut leaves it: nothing is lost.
      if (sumAt(mow) - origin > afterMowCd) origin = sumAt(mow) - afterMowCd;
      nextMow++;
    }
    const t = day < growsFrom ? 0 : sumAt(day) - origin;
    if (curve.declineFromCd !== null && t > curve.declineFromCd) out[at] = canopyCover(curve, t);
    else out[at] = t <= fastTo ? curve.startCover * Math.exp(rate * t) : curve.fullCover - slow * Math.exp(-rate * t);
  }
}
