/**
 * A dated stand of the plan as the ground's daily account takes it.
 *
 * Rule    It begins the day it is up or planted and ends the day its ground is free, or the night that kills it. A crop is sold and leaves its residue, a ley or
 *         cover is turned in, unless the record says otherwise. Leys are mown and left on the days the plan expects. A ley that sees a second season grows
 *         as the table's second year, its first year as the first.
 * Leaves out  crops picked over weeks: all is sold on the last day.
 */
import { type CoverUse, type SoilStand, type StandEnding, type StandHabit, soilAccount } from '@leywright/agronomy';
import type { StandCover } from '../cover/stand-cover.ts';
import type { GroundStand } from '../ground/ground-stand.ts';
import type { CropBook } from '../plan/inputs.ts';

/** Seed of what is drilled or raised in modules brings about this much nitrogen. Common practice. */
const smallSeedNKgHa = 0.5;
/** A ley that stands longer than this has a second season. */
const oneSeasonDays = 300;

/** Null for a plant that no table knows: the ground lies as if bare under it. */
export function standOfGround(one: GroundStand, cover: StandCover, crops: CropBook): SoilStand | null {
  const habit = habitOf(one, crops);
  if (habit === null) return null;
  const startDayNumber = cover.emergedOnDay;
  const endDayNumber = Math.min(one.toDay, cover.killedOnDay ?? one.toDay);
  if (endDayNumber <= startDayNumber) return null;
  const isKilled = cover.killedOnDay !== null && cover.killedOnDay < one.toDay;
  return {
    id: one.stand.id,
    habit,
    startDayNumber,
    endDayNumber,
    ending: isKilled ? 'left' : endingOf(one),
    seedNKgHa: seedOf(one),
    establishedShare: one.stand.establishedShare ?? 1,
    cuts: cover.mownOnDays
      .filter((day) => day > startDayNumber && day < endDayNumber)
      .map((dayNumber) => ({ dayNumber, use: 'left' as const })),
    groundWorked: one.stand.undersownIn === null,
  };
}

function habitOf(one: GroundStand, crops: CropBook): StandHabit | null {
  const { cover, crop } = one.plant;
  if (cover !== null) return soilAccount.habitOfCover(cover.id, useOf(one));
  if (crop === null) return null;
  const known = crops.cropOf(one.plant.id)?.yieldMarketableTHa ?? null;
  const yieldTHa = one.stand.yieldTHa ?? known?.value ?? crop.yieldTypTHa;
  return yieldTHa > 0 ? soilAccount.habitOfCrop(crop.id, yieldTHa) : null;
}

export function useOf(one: GroundStand): CoverUse {
  const days = one.toDay - one.fromDay;
  if (one.stand.kind === 'ley') return days > oneSeasonDays ? 'second' : 'main';
  const secondWeeks = one.plant.cover?.secondWeeks ?? null;
  return secondWeeks !== null && days / 7 >= secondWeeks ? 'second' : 'main';
}

function endingOf({ stand }: GroundStand): StandEnding {
  const { endedBy, kind } = stand;
  if (endedBy === 'failed' || endedBy === 'lost') return 'failed';
  if (kind === 'crop') return endedBy === 'turned-in' ? 'turned-in' : 'sold';
  return endedBy === 'cut' || endedBy === 'frost-killed' ? 'left' : 'turned-in';
}

function seedOf({ plant: { crop } }: GroundStand): number {
  if (crop === null || crop.plantingUnitG === null) return smallSeedNKgHa;
  const seedTHa = (crop.stationsPerHaTyp * crop.plantingUnitG) / 1e6;
  return (seedTHa * (crop.nLowKgT + crop.nHighKgT)) / 2;
}
