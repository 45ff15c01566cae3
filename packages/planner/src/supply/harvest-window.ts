/**
 * When a stand can be cut: from the crop table, moved by the thermal time its own ground has had.
 *
 * Rule    A stand's own cutting time is the table's harvest season less the table's sowing (or planting) season: what is left is how long one
 *         sowing goes on. Of that, the standing time is waiting, not ripening. So kilos become ready evenly over (cutting time - standing time),
 *         at least a week, and each kilo then stands for the standing time (middle of the table's range).
 *         Crops marked `scale` begin on the day their thermal sum is reached, tunnel ground taken 3 C warmer. Crops marked `window` follow day
 *         length or cold: they keep the table's season, but begin no earlier than the least days to maturity after planting.
 * Source  crops.csv: dates, standing weeks, tt columns (reference/README.md, Thermal time to maturity); the rule is ours.
 * Checks  test/supply/harvest-window.test.ts
 * Holds   readyFromDay < readyToDay <= standsUntil; a later sowing is never ready earlier.
 * Leaves out  variety, water, frost on the crop, cold spells that stop leafy crops.
 */

import { type Crop, maturity } from '@leywright/agronomy';
import { addDays, type Day, dayInYear, dayNumber, endOfWindow, type MonthDay, yearOf } from '@leywright/measures';
import type { ClimateDays } from '../plan/inputs.ts';

export interface StandDays {
  readonly sownOn: Day | null;
  readonly plantedOn: Day | null;
  readonly from: Day;
  readonly to: Day;
}

/** Day numbers, half open. */
export interface HarvestWindow {
  readonly readyFromDay: number;
  readonly readyToDay: number;
  readonly standsUntil: number;
  readonly by: 'thermal-time' | 'season' | 'stand-end';
}

const tunnelWarmthC = 3;

/** The harvest of a stand; several for ground that carries its crop for years. Without a crop in the table: the last week before its end. */
export function harvestWindows(
  stand: StandDays,
  crop: Crop | null,
  climate: ClimateDays,
  isTunnel: boolean,
): readonly HarvestWindow[] {
  const end = dayNumber(stand.to);
  if (crop === null) return [{ readyFromDay: end - 7, readyToDay: end, standsUntil: end, by: 'stand-end' }];
  if (crop.establishment === 'crown') return perennialWindows(stand, crop);
  const window =
    crop.ttDerivedUse === 'scale' ? scaledWindow(stand, crop, { climate, isTunnel }) : seasonWindow(stand, crop);
  return [fitToEnd(window, crop, end)];
}

function scaledWindow(stand: StandDays, crop: Crop, at: { climate: ClimateDays; isTunnel: boolean }): HarvestWindow {
  const sum = maturity.maturitySum(crop.id);
  const sums = sum === null ? null : at.climate.sums({ baseC: sum.baseC, warmerByC: at.isTunnel ? tunnelWarmthC : 0 });
  const { ready, by } = maturity.maturityOf(crop.id, growthStart(stand, crop), sums);
  const readyFromDay = dayNumber(ready);
  const standingDays = standingDaysOf(crop);
  const readyToDay = readyFromDay + Math.max(7, ownCuttingDays(crop) - standingDays);
  return {
    readyFromDay,
    readyToDay,
    standsUntil: readyToDay + standingDays,
    by: by === 'thermal-time' ? by : 'season',
  };
}

function seasonWindow(stand: StandDays, crop: Crop): HarvestWindow {
  const { ready, standsUntil } = maturity.maturityOf(crop.id, growthStart(stand, crop), null);
  const readyFromDay = dayNumber(ready);
  const until = Math.max(dayNumber(standsUntil) + 1, readyFromDay + 7);
  const standingDays = Math.min(standingDaysOf(crop), until - readyFromDay - 7);
  return { readyFromDay, readyToDay: until - standingDays, standsUntil: until, by: 'season' };
}

function perennialWindows(stand: StandDays, crop: Crop): readonly HarvestWindow[] {
  const windows: HarvestWindow[] = [];
  const end = dayNumber(stand.to);
  for (let year = yearOf(stand.plantedOn ?? stand.from) + crop.harvestYearOffset; year <= yearOf(stand.to); year += 1) {
    const season = seasonDays(crop.harvestFrom, crop.harvestTo, year);
    if (season.from < end)
      windows.push({ readyFromDay: season.from, readyToDay: season.to, standsUntil: season.to, by: 'season' });
  }
  return windows;
}

/**
 * A grower who ends a stand before the table would have it ready knows the ground and the variety better: the window moves earlier, but by no
 * more than half the table's own spread of days to maturity. What would ripen after that is not cut.
 */
function fitToEnd(window: HarvestWindow, crop: Crop, end: number): HarvestWindow {
  const late = window.readyToDay - end;
  if (late <= 0) return window;
  const shift = Math.min(late, Math.floor((crop.dtmHighDays - crop.dtmLowDays) / 2));
  return {
    ...window,
    readyFromDay: window.readyFromDay - shift,
    readyToDay: window.readyToDay - shift,
    standsUntil: window.standsUntil - shift,
  };
}

/** Day from which the table counts days to maturity; a crop raised in modules but drilled where it stands needs its raising weeks first. */
function growthStart(stand: StandDays, crop: Crop): Day {
  if (crop.dtmFrom === 'sow') return stand.sownOn ?? stand.from;
  if (stand.plantedOn !== null || stand.sownOn === null || stand.sownOn < stand.from)
    return stand.plantedOn ?? stand.from;
  const raisingWeeks = ((crop.raiseLowWeeks ?? 0) + (crop.raiseHighWeeks ?? 0)) / 2;
  return addDays(stand.sownOn, Math.round(7 * raisingWeeks));
}

export function standingDaysOf(crop: Crop): number {
  return Math.round((7 * (crop.standingLowWeeks + crop.standingHighWeeks)) / 2);
}

function ownCuttingDays(crop: Crop): number {
  const [from, to] =
    crop.dtmFrom === 'plant'
      ? [crop.plantFrom, crop.plantTo]
      : [crop.sowOutFrom ?? crop.sowCoverFrom, crop.sowOutTo ?? crop.sowCoverTo];
  const startDays = from === null || to === null ? 0 : windowDays(from, to);
  return windowDays(crop.harvestFrom, crop.harvestTo) - startDays;
}

/** Days of a yearly window, in a year without a leap day. */
export function windowDays(from: MonthDay, to: MonthDay): number {
  const season = seasonDays(from, to, 2025);
  return season.to - season.from - 1;
}

/** The window that begins in that year, half open, as day numbers. */
export function seasonDays(from: MonthDay, to: MonthDay, year: number): { readonly from: number; readonly to: number } {
  return { from: dayNumber(dayInYear(from, year)), to: dayNumber(endOfWindow(to, to < from ? year + 1 : year)) + 1 };
}
