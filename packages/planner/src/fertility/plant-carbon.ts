/**
 * Carbon that plants leave on a plot, by day: what a crop leaves behind, what covers and leys grow and drop.
 *
 * Source  dry matter of covers and leys: covers table; fresh residues of crops: crops table. Dry matter of vegetable residues 12 %, roots a fifth of a crop's
 *         dry matter, three tenths of a cover's and half of a ley's tops: common practice, with a third more or less as the doubt.
 * Leaves out  root exudates while a crop stands, weeds.
 */
import { carbon } from '@leywright/agronomy';
import { dayNumber, dayOf, type Interval, intervals } from '@leywright/measures';
import type { GroundStand } from '../ground/ground-stand.ts';
import { widthShare } from './harvests.ts';

export interface PlantCarbon {
  readonly dayNumber: number;
  readonly stand: string;
  readonly name: string;
  /** Spread over the whole plot. */
  readonly carbonTHa: Interval;
}

const residueDryShare = 0.12;
const rootsOfTops = { crop: 0.2, cover: 0.3, ley: 0.5 } as const;
const cropDoubt = intervals.interval(2 / 3, 1, 4 / 3);

export function plantCarbon(stands: readonly GroundStand[]): readonly PlantCarbon[] {
  return stands.flatMap((one) => {
    const drops = one.stand.kind === 'ley' ? leyDrops(one) : [{ dayNumber: one.toDay - 1, dryTHa: dryAtEnd(one) }];
    const width = widthShare(one) * (one.stand.establishedShare ?? 1);
    return drops
      .filter(({ dryTHa }) => dryTHa.high > 0)
      .map((drop) => ({
        dayNumber: drop.dayNumber,
        stand: one.stand.id,
        name: one.plant.name,
        carbonTHa: intervals.scaleInterval(drop.dryTHa, carbon.rothc.carbonOfDryMatterShare * width),
      }));
  });
}

/** Dry matter, roots in it, that a crop or a cover leaves when it goes. */
function dryAtEnd(one: GroundStand): Interval {
  const { crop, cover } = one.plant;
  if (cover !== null) return intervals.scaleInterval(coverDryTHa(one), 1 + rootsOfTops.cover);
  if (crop === null) return intervals.exactly(0);
  const product = (crop.yieldTypTHa * (crop.dmPct ?? 12)) / 100;
  const residue = (crop.residueFreshTypTHa ?? 0) * residueDryShare;
  return intervals.scaleInterval(cropDoubt, residue + rootsOfTops.crop * (product + residue));
}

/** Tops of a cover by its weeks: its first use up to that use's weeks, its second from there on. */
function coverDryTHa({ plant, fromDay, toDay }: GroundStand): Interval {
  const { cover } = plant;
  if (cover === null) return intervals.exactly(0);
  const weeks = (toDay - fromDay) / 7;
  const { secondWeeks, dm2LowTHa: low2, dm2HighTHa: high2 } = cover;
  if (secondWeeks !== null && low2 !== null && high2 !== null && weeks >= secondWeeks) return band(low2, high2);
  return intervals.scaleInterval(band(cover.dmLowTHa, cover.dmHighTHa), Math.min(1, weeks / cover.mainWeeks));
}

/** A ley drops its tops at each cut: a seventh of the year's in each month from April to October in which it stands. */
function leyDrops(one: GroundStand): readonly { readonly dayNumber: number; readonly dryTHa: Interval }[] {
  const { cover } = one.plant;
  if (cover === null) return [];
  const main = band(cover.dmLowTHa, cover.dmHighTHa);
  const second = cover.dm2LowTHa === null || cover.dm2HighTHa === null ? main : band(cover.dm2LowTHa, cover.dm2HighTHa);
  const firstYear = Number(one.stand.from.slice(0, 4));
  const drops = [];
  for (let year = firstYear; dayNumber(dayOf(year, 1, 1)) < one.toDay; year++) {
    for (let month = 4; month <= 10; month++) {
      const day = dayNumber(dayOf(year, month, 15));
      if (day < one.fromDay || day >= one.toDay) continue;
      const yearTops = year === firstYear ? main : second;
      drops.push({ dayNumber: day, dryTHa: intervals.scaleInterval(yearTops, (1 + rootsOfTops.ley) / 7) });
    }
  }
  return drops;
}

function band(low: number, high: number): Interval {
  return intervals.interval(low, (low + high) / 2, high);
}
