/**
 * How much of its own ground a stand covers, day by day.
 *
 * Source  canopy curves of agronomy (cover/canopy-choice.ts), thermal time from emergence by recorded weather, else climate; no growth on days under
 *         ten hours (common practice); tunnel ground 3 °C warmer (common practice); mown leys dip and regrow; crops cleared bed by bed over their
 *         harvest leave steps; a cover that took in part covers that part.
 * Leaves out  the shade of a host on what is sown into it, drought, and weeds, which cover ground too.
 */
import { type CanopyChoice, canopyChoice, canopyCurve, emergence, thermal } from '@leywright/agronomy';
import type { GroundStand } from '../ground/ground-stand.ts';
import type { PlacedStand } from '../plan/ground.ts';
import type { ClimateDays } from '../plan/inputs.ts';
import { killedOn } from './frost.ts';
import { mowingDays } from './mowing.ts';

export interface CoverSetting {
  readonly climate: ClimateDays;
  /** Days written: those of the plan's weeks. */
  readonly fromDay: number;
  readonly toDay: number;
  readonly isTunnel: boolean;
  /** The day a ley's host leaves it alone; its own first day when it has none. */
  readonly aloneFromDay: number;
  /** First and last harvest, when they are known. */
  readonly harvestFromDay: number | null;
  readonly harvestToDay: number | null;
}

export interface StandCover {
  /** Day of the first figure. */
  readonly firstDay: number;
  /** One figure a day, 0..1, of the stand's own ground. */
  readonly dayShare: Float64Array;
  readonly basis: PlacedStand['coverBasis'];
  readonly emergedOnDay: number;
  readonly killedOnDay: number | null;
  readonly mownOnDays: readonly number[];
}

/** The curve a stand grows by. What no table knows is drawn as a leafy crop, and says that it is not known. */
export function canopyOf(one: GroundStand): {
  readonly choice: CanopyChoice;
  readonly basis: PlacedStand['coverBasis'];
} {
  const id = one.plant.cover?.id ?? one.plant.crop?.id ?? null;
  if (id === null) return { choice: canopyChoice.canopyFor('lettuce-head'), basis: 'unknown' };
  const choice = canopyChoice.canopyFor(id);
  return { choice, basis: choice.basis };
}

export function standCover(one: GroundStand, setting: CoverSetting): StandCover {
  const { climate } = setting;
  const { choice, basis } = canopyOf(one);
  const emergedOnDay = emergenceDay(one, setting);
  const firstDay = Math.max(one.fromDay, setting.fromDay);
  const endDay = Math.max(firstDay, Math.min(one.toDay, setting.toDay));
  const dayShare = new Float64Array(endDay - firstDay);
  const mownOnDays =
    one.stand.kind === 'ley'
      ? mowingDays(climate, { aloneFromDay: setting.aloneFromDay, sownOnDay: one.fromDay, toDay: one.toDay })
      : [];
  const killedOnDay = setting.isTunnel
    ? null
    : killedOn(one.plant, climate, { fromDay: emergedOnDay, toDay: one.toDay });
  const sums = climate.sums({
    baseC: choice.curve.baseC,
    warmerByC: setting.isTunnel ? thermal.tunnelWarmerByC : 0,
    restInShortDaysLatDeg: climate.latDeg,
  });
  const span = {
    startDayNumber: emergedOnDay,
    endDayNumber: one.toDay,
    checkDays: one.stand.plantedOn === null ? 0 : choice.checkDays,
    mownOnDays,
  };
  canopyCurve.writeCover(dayShare, firstDay, { curve: choice.curve, sums, span });
  if (killedOnDay !== null) lieDead(dayShare, firstDay, killedOnDay);
  clearByHarvest(dayShare, firstDay, { one, setting });
  scaleBy(dayShare, one.stand.establishedShare ?? 1);
  return { firstDay, dayShare, basis, emergedOnDay, killedOnDay, mownOnDays };
}

/** The day it is up: at once for what is planted with leaves, else by thermal time from sowing. Beyond the known weather: at once. */
function emergenceDay(one: GroundStand, { climate, isTunnel }: CoverSetting): number {
  const { crop, cover } = one.plant;
  const isPlanted = one.stand.plantedOn !== null;
  const sum =
    cover !== null
      ? emergence.emergenceOfCover(cover.id)
      : crop === null
        ? null
        : emergence.emergenceOfCrop(crop.id, !isPlanted);
  if (sum === null || sum.kind === 'planted' || one.fromDay < climate.firstDay) return one.fromDay;
  const baseC = isTunnel ? sum.baseC - thermal.tunnelWarmerByC : sum.baseC;
  return climate.dayOfSum(baseC, one.fromDay, sum.sumCd) ?? one.toDay;
}

/** Dead leaves lie where they fell and rot away, a third gone in a month (common practice): they still keep the rain off the soil. */
const rotDays = 80;

function lieDead(dayShare: Float64Array, firstDay: number, killedOnDay: number): void {
  const at = Math.max(0, killedOnDay - firstDay);
  const lyingShare = dayShare[at] ?? 0;
  for (let day = at; day < dayShare.length; day++)
    dayShare[day] = lyingShare * Math.exp(-(firstDay + day - killedOnDay) / rotDays);
}

/** Picked over and over, their leaves stay; all others leave bare ground where they stood. Common practice. */
const pickedOver =
  /^(kale|brussels|broccoli|courgette|cucumber|tomato|pepper|aubergine|french-bean|runner-bean|chard|perpetual-spinach|parsley|asparagus|rhubarb|winter-salad|winter-purslane)/;
const leftWhenPickedShare = 0.7;
const leftWhenClearedShare = 0.15;
/** Ground cleared within this time is cleared in one go. */
const atOnceDays = 28;

function clearByHarvest(
  dayShare: Float64Array,
  firstDay: number,
  at: { readonly one: GroundStand; readonly setting: CoverSetting },
): void {
  const { harvestFromDay, harvestToDay } = at.setting;
  if (at.one.stand.kind !== 'crop' || harvestFromDay === null || harvestToDay === null) return;
  const endDay = Math.min(harvestToDay, at.one.toDay);
  if (endDay - harvestFromDay <= atOnceDays) return;
  const crop = at.one.plant.crop;
  const leftShare = crop !== null && pickedOver.test(crop.id) ? leftWhenPickedShare : leftWhenClearedShare;
  const steps = Math.ceil((endDay - harvestFromDay) / 7);
  for (let day = Math.max(0, harvestFromDay - firstDay); day < dayShare.length; day++) {
    const step = Math.min(steps, Math.floor((firstDay + day - harvestFromDay) / 7));
    dayShare[day] = (dayShare[day] ?? 0) * (1 - ((1 - leftShare) * step) / steps);
  }
}

function scaleBy(dayShare: Float64Array, share: number): void {
  if (share === 1) return;
  for (let day = 0; day < dayShare.length; day++) dayShare[day] = (dayShare[day] ?? 0) * share;
}

/** Means by week of a stand's own days in it, from the week of its first written day. */
export function weeklyCover(
  cover: StandCover,
  planFirstDay: number,
): { readonly coverFromWeek: number; readonly coverShare: readonly number[] } {
  const coverFromWeek = Math.floor((cover.firstDay - planFirstDay) / 7);
  const coverShare: number[] = [];
  let sum = 0;
  let days = 0;
  for (let at = 0; at < cover.dayShare.length; at++) {
    sum += cover.dayShare[at] ?? 0;
    days++;
    const isWeekEnd = (cover.firstDay + at - planFirstDay) % 7 === 6;
    if (isWeekEnd || at === cover.dayShare.length - 1) {
      coverShare.push(sum / days);
      sum = 0;
      days = 0;
    }
  }
  return { coverFromWeek, coverShare };
}
