/**
 * The root zone as one bucket: the worked form, for following a crop by hand and for saying when and how much to irrigate.
 *
 * Source  FAO-56 (Allen et al. 1998) eqs 82-85 and 88 with one coefficient; the rule of the morning after the trigger is common practice.
 * Checks  test/soil-water.test.ts (twelve days of celeriac worked by hand, with irrigation, its volume and the days a daily limit asks for)
 * Holds   0 ≤ depletion; what drains is what did not fit; volume = depth × area over the efficiency.
 * Leaves out  stress (a crop kept by this rule does not meet it), runoff, the layers.
 */
import { readilyAvailableMm, stepRootZone, totalAvailableMm } from './available-water.ts';

export interface BucketCrop {
  readonly fieldCapacityShare: number;
  readonly wiltingPointShare: number;
  readonly rootDepthM: number;
  readonly depletionFraction: number;
  readonly kc: number;
}

/** When to irrigate: the morning after the depletion reached the readily available water, back to what leaves room for rain; so often at most. */
export interface IrrigationRule {
  readonly roomForRainMm: number;
  readonly applications: number;
}

export interface BucketDay {
  readonly depletionMm: number;
  readonly irrigationMm: number;
  readonly drainedMm: number;
  /** At the day's end the readily available water is gone. */
  readonly triggers: boolean;
}

/** The bucket over days of reference evapotranspiration and rain (mm). A day without rain given has none. */
export function runBucket(
  crop: BucketCrop,
  weather: { readonly startDepletionMm: number; readonly etoMm: readonly number[]; readonly rainMm: readonly number[] },
  rule: IrrigationRule | null,
): readonly BucketDay[] {
  const totalMm = totalAvailableMm(crop.fieldCapacityShare, crop.wiltingPointShare, crop.rootDepthM);
  const readilyMm = readilyAvailableMm(totalMm, crop.depletionFraction);
  let depletionMm = weather.startDepletionMm;
  let timesLeft = rule?.applications ?? 0;
  let dueMm = 0;
  return weather.etoMm.map((etoMm, at) => {
    const irrigationMm = dueMm;
    const day = { rainMm: weather.rainMm[at] ?? 0, irrigationMm, usedMm: crop.kc * etoMm };
    const step = stepRootZone(depletionMm, day, Number.POSITIVE_INFINITY);
    depletionMm = step.depletionMm;
    const triggers = depletionMm >= readilyMm;
    const irrigates = triggers && rule !== null && timesLeft > 0;
    dueMm = irrigates ? Math.max(0, depletionMm - rule.roomForRainMm) : 0;
    if (irrigates) timesLeft--;
    return { depletionMm, irrigationMm, drainedMm: step.drainedMm, triggers };
  });
}

/** What a net depth on an area takes from the source, and over how many days a daily limit spreads it. */
export interface WaterDrawn {
  readonly grossMm: number;
  readonly volumeM3: number;
  readonly days: number;
  readonly areaPerDayM2: number;
}

/** Volume for a net depth (mm) on an area, and the days it takes under the most that may be drawn in any one day. */
export function waterDrawn(
  netMm: number,
  on: { readonly areaM2: number; readonly efficiencyFraction: number; readonly mostM3Day: number },
): WaterDrawn {
  const grossMm = netMm / on.efficiencyFraction;
  const volumeM3 = (grossMm * on.areaM2) / 1000;
  const days = Math.ceil(volumeM3 / on.mostM3Day - 1e-9);
  return { grossMm, volumeM3, days, areaPerDayM2: grossMm > 0 ? (on.mostM3Day * 1000) / grossMm : on.areaM2 };
}

/** Whole days until the readily available water is gone, from today's depletion; null if it lasts through the days given. */
export function daysUntilStress(
  depletionMm: number,
  readilyMm: number,
  ahead: { readonly cropDemandMm: readonly number[]; readonly rainMm: readonly number[] },
): number | null {
  let now = depletionMm;
  if (now >= readilyMm) return 0;
  for (let day = 0; day < ahead.cropDemandMm.length; day++) {
    now = Math.max(0, now - (ahead.rainMm[day] ?? 0) + (ahead.cropDemandMm[day] ?? 0));
    if (now >= readilyMm) return day + 1;
  }
  return null;
}
