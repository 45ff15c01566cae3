/** Counts drawn years into odds. */
import type { BoxOdds, CountedOdds, SlotLack, WeekOdds } from './box-odds.ts';
import { drawYear } from './draw-year.ts';
import { runSeason } from './run-season.ts';
import type { Season, SeasonDraw } from './season-lot.ts';

/** A box that has 98 of 100 promised items has kept the promise. */
export const toleratedShare = 0.02;

export interface OddsWish {
  readonly seed: number;
  readonly samples: number;
}

export const usualOdds: OddsWish = { seed: 20_270_101, samples: 400 };

/** What one drawn year made of the boxes of the year in focus. */
export interface YearOutcome {
  /** By box week. */
  readonly servedShare: readonly number[];
  readonly slotLacks: readonly (readonly boolean[])[];
}

export function oddsOfSeason(season: Season, { seed, samples }: OddsWish): BoxOdds {
  const weeks = boxWeeksOf(season);
  const outcomes = Array.from({ length: samples }, (_, at) => outcomeOf(season, drawYear(season, seed, at), weeks));
  const missed = outcomes.map((one) => one.servedShare.filter((share) => !isKept(share)).length);
  const inOrder = missed.toSorted((a, b) => a - b);
  return {
    seed,
    samples,
    toleratedShare,
    weeks: weeks.map((week, at) => weekOdds(season, { week, at, outcomes })),
    missedWeeks: {
      mean: missed.reduce((sum, one) => sum + one, 0) / samples,
      low: atShare(inOrder, 0.1),
      mid: atShare(inOrder, 0.5),
      high: atShare(inOrder, 0.9),
      yearsShare: Array.from(
        { length: Math.max(0, ...missed) + 1 },
        (_, count) => missed.filter((one) => one === count).length / samples,
      ),
    },
    allKept: counted(missed.filter((one) => one === 0).length, samples),
    atMostTwoMissed: counted(missed.filter((one) => one <= 2).length, samples),
  };
}

/** Weeks of the year in focus that have a box with something promised in it. */
export function boxWeeksOf(season: Season): readonly number[] {
  return Array.from({ length: season.weeks - season.fromWeek }, (_, at) => season.fromWeek + at).filter(
    (week) => season.isOpen[week] === true && season.slots.some((slot) => slot.dueWeeks[week] === 1),
  );
}

export function outcomeOf(season: Season, draw: SeasonDraw, weeks: readonly number[]): YearOutcome {
  const missing = runSeason(season, draw);
  return {
    servedShare: weeks.map((week) => {
      let asked = 0;
      let lacked = 0;
      season.slots.forEach((slot, at) => {
        if (slot.dueWeeks[week] !== 1) return;
        asked += slot.boxesShare;
        lacked += (missing[at]?.[week] ?? 0) * slot.boxesShare;
      });
      return 1 - lacked / asked;
    }),
    slotLacks: season.slots.map((_, at) => weeks.map((week) => (missing[at]?.[week] ?? 0) > toleratedShare)),
  };
}

export function isKept(servedShare: number): boolean {
  return servedShare >= 1 - toleratedShare - 1e-9;
}

interface WeekAt {
  readonly week: number;
  readonly at: number;
  readonly outcomes: readonly YearOutcome[];
}

function weekOdds(season: Season, { week, at, outcomes }: WeekAt): WeekOdds {
  const served = outcomes.map((one) => one.servedShare[at] ?? 0);
  const slots = season.slots.filter((slot) => slot.dueWeeks[week] === 1);
  const promised = slots.reduce((sum, slot) => sum + slot.boxesShare, 0);
  const items = served.map((share) => share * promised).toSorted((a, b) => a - b);
  return {
    week: season.names[week] ?? (season.names[0] as WeekOdds['week']),
    promised,
    items: { low: atShare(items, 0.1), mid: atShare(items, 0.5), high: atShare(items, 0.9) },
    heldUpBy: lacksOf(season, { week, at, outcomes }),
    ...counted(served.filter(isKept).length, served.length),
  };
}

function lacksOf(season: Season, { week, at, outcomes }: WeekAt): readonly SlotLack[] {
  return season.slots
    .flatMap((slot, place): SlotLack[] => {
      if (slot.dueWeeks[week] !== 1) return [];
      const years = outcomes.filter((one) => one.slotLacks[place]?.[at] === true).length;
      const crops = slot.offers.map((offer) => season.crops[offer.cropIndex]?.id ?? '');
      return years === 0 ? [] : [{ slot: slot.id, crops, yearsShare: years / outcomes.length }];
    })
    .toSorted((a, b) => b.yearsShare - a.yearsShare || (a.slot < b.slot ? -1 : 1))
    .slice(0, 3);
}

const normal95 = 1.959964;

/** A share counted in so many samples, with its standard error and Wilson's interval. */
export function counted(keptYears: number, samples: number): CountedOdds {
  const p = keptYears / samples;
  const z2 = normal95 ** 2 / samples;
  const middle = (p + z2 / 2) / (1 + z2);
  const reach = (normal95 / (1 + z2)) * Math.sqrt((p * (1 - p)) / samples + z2 / (4 * samples));
  return {
    keptShare: p,
    standardErrorShare: Math.sqrt((p * (1 - p)) / samples),
    lowShare: Math.max(0, middle - reach),
    highShare: Math.min(1, middle + reach),
  };
}

/** The value below which that share of a sorted list lies. */
function atShare(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.round(share * (sorted.length - 1))))] ?? 0;
}
