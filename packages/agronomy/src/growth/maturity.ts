/**
 * When a stand can first be harvested, and until when it stands without loss.
 *
 * Source  reference/crops.csv: published or derived thermal time, days to maturity, harvest window and standing time.
 * Checks  test/maturity.test.ts (the derived sums come back on the days they were made from; windows hold; later sowing is never earlier)
 * Holds   a crop is never ready before it is sown or planted; bulbing and wintered crops keep their window.
 * Leaves out  variety: days to maturity of varieties differ by weeks, so a farm's own date is always better.
 */
import { addDays, type Day, dayAt, dayInYear, dayNumber, endOfWindow, yearOf } from '@leywright/measures';
import type { Crop } from '../reference/crop-columns.ts';
import { reference } from '../reference/reference.ts';
import { dayWhenReached, type ThermalSums } from './thermal-sums.ts';

export interface Maturity {
  readonly ready: Day;
  /** The last day on which it stands without marked loss, by the middle of the standing weeks. */
  readonly standsUntil: Day;
  /** thermal-time: by the sum of warmth; days: the year ends before the sum is reached or there is none; window: by the months in which it is picked. */
  readonly by: 'thermal-time' | 'days' | 'window';
}

/** Which sums a crop's maturity needs: base and total; null where days or the window decide. */
export function maturitySum(cropId: string): { readonly baseC: number; readonly sumCd: number } | null {
  const crop = cropOf(cropId);
  if (crop.ttDerivedUse !== 'scale' || crop.ttDerivedBaseC === null || crop.ttDerivedCd === null) return null;
  if (crop.id === 'pea' && crop.ttBaseC !== null && crop.ttLowCd !== null && crop.ttHighCd !== null) {
    return { baseC: crop.ttBaseC, sumCd: (crop.ttLowCd + crop.ttHighCd) / 2 };
  }
  return { baseC: crop.ttDerivedBaseC, sumCd: crop.ttDerivedCd };
}

/**
 * Maturity of a crop started (sown where `dtmFrom` is sow, else planted) on a day.
 * @param sums thermal sums above the base of `maturitySum`, or null to go by days.
 */
export function maturityOf(cropId: string, started: Day, sums: ThermalSums | null): Maturity {
  const crop = cropOf(cropId);
  const middleDays = Math.round((crop.dtmLowDays + crop.dtmHighDays) / 2);
  if (crop.ttDerivedUse !== 'scale') return byWindow(crop, started, middleDays);
  const needed = maturitySum(cropId);
  const reached = sums === null || needed === null ? null : dayWhenReached(sums, dayNumber(started), needed.sumCd);
  const ready = reached === null ? addDays(started, middleDays) : dayAt(reached);
  return { ready, standsUntil: standing(crop, ready), by: reached === null ? 'days' : 'thermal-time' };
}

function byWindow(crop: Crop, started: Day, middleDays: number): Maturity {
  const harvestYear = yearOf(started) + crop.harvestYearOffset;
  const opens = dayInYear(crop.harvestFrom, harvestYear);
  const wraps = crop.harvestTo < crop.harvestFrom;
  const closes = endOfWindow(crop.harvestTo, harvestYear + (wraps ? 1 : 0));
  const earliest = addDays(started, crop.dtmLowDays);
  // Sown too late for its window it is still not ready before its days have passed.
  const ready = opens >= earliest ? opens : earliest <= closes ? earliest : addDays(started, middleDays);
  return {
    ready,
    standsUntil: closes > ready ? closes : standing(crop, ready),
    by: opens >= earliest || earliest <= closes ? 'window' : 'days',
  };
}

function standing(crop: Crop, ready: Day): Day {
  return addDays(ready, Math.round(((crop.standingLowWeeks + crop.standingHighWeeks) / 2) * 7));
}

function cropOf(cropId: string): Crop {
  const crop = reference.crops.get(cropId);
  if (crop === undefined) throw new Error(`There is no crop "${cropId}" in the tables.`);
  return crop;
}
