/**
 * What want of water and of nitrogen is likely to cost in yield, as an interval.
 *
 * Source  water: Doorenbos & Kassam 1979, FAO 33: loss = Ky (1 - ETa/ETc), Ky recalled, by crop where published; nitrogen: mass reached against mass unstressed is
 *         the run's own; the band about both is common practice (a third either way).
 * Checks  test/yield-lost.test.ts (FAO 33's form; no want, no loss; more want never costs less)
 * Holds   0 ≤ low ≤ typical ≤ high ≤ 1.
 * Leaves out  when in the season the want fell: flowering and bulbing are worse than the mean says.
 */
import { type Interval, intervals } from '@leywright/measures';

/** Taken where no factor is published for a crop: wide, about 1. Common practice. */
export const unknownResponseFactor: Interval = intervals.interval(0.7, 1, 1.3);

/** Share of the yield lost by want of water: transpiration got against wanted (mm). */
export function waterLossShare(gotMm: number, wantedMm: number, yieldResponseFactor: number | null): Interval {
  const wantShare = wantedMm <= 0 ? 0 : Math.max(0, 1 - gotMm / wantedMm);
  const factor =
    yieldResponseFactor === null
      ? unknownResponseFactor
      : intervals.interval(yieldResponseFactor * 0.85, yieldResponseFactor, yieldResponseFactor * 1.15);
  return held({ low: factor.low * wantShare, typ: factor.typ * wantShare, high: factor.high * wantShare });
}

/** Share lost by want of nitrogen: taken up against needed (kg/ha). A crop a tenth short shows little of it. */
export function nitrogenLossShare(gotKgHa: number, wantedKgHa: number): Interval {
  const wantShare = wantedKgHa <= 0 ? 0 : Math.max(0, 1 - gotKgHa / wantedKgHa);
  return held({ low: Math.max(0, wantShare - 0.1) * 0.7, typ: wantShare * 0.7, high: wantShare * 1.2 });
}

/** Both together: what one leaves, the other may take of. */
export function cropAnswer(waterLossShare: Interval, nitrogenLossShare: Interval): Interval {
  const both = (end: keyof Interval) => 1 - (1 - waterLossShare[end]) * (1 - nitrogenLossShare[end]);
  return { low: both('low'), typ: both('typ'), high: both('high') };
}

function held(loss: Interval): Interval {
  const share = (value: number) => Math.min(1, Math.max(0, value));
  return intervals.interval(share(loss.low), share(loss.typ), share(loss.high));
}
