/**
 * What brings nitrogen to a plot in a year and what takes it away, term by term.
 *
 * Source  agronomy nitrogen/fixation.ts and yearly-balance.ts (tables and bands named there). A cover's or ley's fixation is its table figure for the use,
 *         laid over the years by the warmth each year gave it; off-take is expected or recorded yield times its nitrogen; leaching is the band
 *         of what stands, or does not, on each day of the leaching season.
 * Leaves out  what the soil's humus gives and takes: the daily account takes this seat later.
 */
import { fixation, nitrogenBalance } from '@leywright/agronomy';
import { dayNumber, dayOf, type Interval, intervals } from '@leywright/measures';
import type { GroundStand } from '../ground/ground-stand.ts';
import type { ClimateDays, CropBook } from '../plan/inputs.ts';
import type { WinterShares } from './winter-ground.ts';

export const nitrogenWays = ['fixed', 'other-in', 'offtake', 'lost'] as const;
export type NitrogenWay = (typeof nitrogenWays)[number];

export interface NitrogenTerm {
  readonly way: NitrogenWay;
  /** Code for words: ley, cover, pulse, deposition, seed, crop, leached-bare … */
  readonly what: string;
  readonly stand: string | null;
  readonly name: string | null;
  /** Row of the crops or covers table it was reckoned from. */
  readonly plantId: string | null;
  /** Share of the plot it stands for. */
  readonly areaShare: number;
  /** Spread over the whole plot. */
  readonly kgHa: Interval;
}

export interface NitrogenInput {
  readonly stands: readonly GroundStand[];
  readonly winterShares: WinterShares;
  readonly climate: ClimateDays;
  readonly crops: CropBook;
  readonly isTunnel: boolean;
  /** Last day of harvest by stand, and kilos recorded, when there are any. */
  readonly harvestYearOf: (stand: GroundStand) => number;
  readonly recordedKgOf: (stand: string) => number | null;
  readonly netM2: number;
}

/** All terms of a calendar year; none when nothing is known of the plot in it. */
export function nitrogenTerms(input: NitrogenInput, year: number): readonly NitrogenTerm[] {
  const yearFrom = dayNumber(dayOf(year, 1, 1));
  const yearTo = dayNumber(dayOf(year + 1, 1, 1));
  const here = input.stands.filter((one) => one.fromDay < yearTo && one.toDay > yearFrom);
  if (here.length === 0) return [];
  const { depositionKgHa, gaseousLossKgHa } = nitrogenBalance;
  return [
    ...here.flatMap((one) => [
      ...fixedTerms(one, year, input),
      ...seedTerms(one, year),
      ...offtakeTerms(one, year, input),
    ]),
    ...(input.isTunnel
      ? []
      : [
          {
            way: 'other-in' as const,
            what: 'deposition',
            stand: null,
            name: null,
            plantId: null,
            areaShare: 1,
            kgHa: depositionKgHa,
          },
        ]),
    ...leachedTerms(input, year),
    { way: 'lost', what: 'gas', stand: null, name: null, plantId: null, areaShare: 1, kgHa: gaseousLossKgHa },
  ];
}

function widthOfStand(one: GroundStand): number {
  return one.stand.span.toShare - one.stand.span.fromShare;
}

function fixedTerms(one: GroundStand, year: number, input: NitrogenInput): readonly NitrogenTerm[] {
  const { cover, crop } = one.plant;
  const areaShare = widthOfStand(one);
  const took = one.stand.establishedShare ?? 1;
  const make = (what: string, kgHa: Interval): readonly NitrogenTerm[] =>
    kgHa.high <= 0
      ? []
      : [
          {
            way: 'fixed',
            what,
            stand: one.stand.id,
            name: one.plant.name,
            plantId: one.plant.cover?.id ?? one.plant.crop?.id ?? null,
            areaShare,
            kgHa: intervals.scaleInterval(kgHa, areaShare * took),
          },
        ];
  if (cover?.nFixing) return make(one.stand.kind === 'ley' ? 'ley' : 'cover', coverFixedKgHa(one, year, input));
  if (crop !== null && one.stand.kind === 'crop' && input.harvestYearOf(one) === year && hasYield(one))
    return make('pulse', fixation.fixedByCropKgHa(crop.id));
  return [];
}

const growthBaseC = 4;

/** A year's part of what a cover fixes: its first use by the warmth up to that use's weeks, a ley's later years by the warmth of the growing year. */
function coverFixedKgHa(one: GroundStand, year: number, { climate }: NitrogenInput): Interval {
  const cover = one.plant.cover;
  if (cover === null) return intervals.exactly(0);
  const main = fixation.fixedByCoverKgHa(cover.id, 'main') ?? intervals.exactly(0);
  const second = fixation.fixedByCoverKgHa(cover.id, 'second');
  const from = Math.max(one.fromDay, dayNumber(dayOf(year, 1, 1)));
  const to = Math.min(one.toDay, dayNumber(dayOf(year + 1, 1, 1)));
  const inYearCd = climate.degreeDays(growthBaseC, from, to);
  if (one.stand.kind === 'ley' && second !== null && one.fromDay < dayNumber(dayOf(year, 1, 1))) {
    const wholeYearCd = climate.degreeDays(growthBaseC, dayNumber(dayOf(year, 1, 1)), dayNumber(dayOf(year + 1, 1, 1)));
    return intervals.scaleInterval(second, wholeYearCd <= 0 ? 0 : Math.min(1, inYearCd / wholeYearCd));
  }
  const weeks = (one.toDay - one.fromDay) / 7;
  const isLong =
    one.stand.kind === 'cover' && second !== null && cover.secondWeeks !== null && weeks >= cover.secondWeeks;
  const use = isLong && second !== null ? second : main;
  const useWeeks = isLong ? (cover.secondWeeks ?? cover.mainWeeks) : cover.mainWeeks;
  const useCd = climate.degreeDays(growthBaseC, one.fromDay, one.fromDay + Math.round(7 * useWeeks));
  return intervals.scaleInterval(use, useCd <= 0 ? 0 : Math.min(1, inYearCd / useCd));
}

function hasYield(one: GroundStand): boolean {
  return one.stand.endedBy !== 'failed' && one.stand.endedBy !== 'lost';
}

/** Seed tubers, sets and cloves bring their own nitrogen. */
function seedTerms(one: GroundStand, year: number): readonly NitrogenTerm[] {
  const { crop } = one.plant;
  if (crop === null || crop.plantingUnitG === null || seasonYearOf(one) !== year) return [];
  const seedTHa = (crop.stationsPerHaTyp * crop.plantingUnitG) / 1e6;
  const areaShare = widthOfStand(one);
  const kgHa = intervals.interval(
    seedTHa * crop.nLowKgT,
    (seedTHa * (crop.nLowKgT + crop.nHighKgT)) / 2,
    seedTHa * crop.nHighKgT,
  );
  return [
    {
      way: 'other-in',
      what: 'seed',
      stand: one.stand.id,
      name: one.plant.name,
      plantId: one.plant.cover?.id ?? one.plant.crop?.id ?? null,
      areaShare,
      kgHa: intervals.scaleInterval(kgHa, areaShare),
    },
  ];
}

function seasonYearOf(one: GroundStand): number {
  return Number(one.stand.from.slice(0, 4));
}

function offtakeTerms(one: GroundStand, year: number, input: NitrogenInput): readonly NitrogenTerm[] {
  const { crop } = one.plant;
  if (one.stand.kind !== 'crop' || crop === null || input.harvestYearOf(one) !== year || !hasYield(one)) return [];
  const areaShare = widthOfStand(one);
  const yieldTHa = standYieldTHa(one, input);
  if (yieldTHa === null) return [];
  return [
    {
      way: 'offtake',
      what: 'crop',
      stand: one.stand.id,
      name: one.plant.name,
      plantId: one.plant.cover?.id ?? one.plant.crop?.id ?? null,
      areaShare,
      kgHa: intervals.scaleInterval(nitrogenBalance.offtakeKgHa(crop.id, yieldTHa), areaShare),
    },
  ];
}

/** Kilos recorded go before the stand's own figure, that before the crop's; the table's spread is laid about any of the expected ones. */
export function standYieldTHa(one: GroundStand, input: NitrogenInput): Interval | null {
  const recordedKg = input.recordedKgOf(one.stand.id);
  const areaHa = (input.netM2 * widthOfStand(one)) / 10_000;
  if (recordedKg !== null && areaHa > 0) return intervals.exactly(recordedKg / 1000 / areaHa);
  const crop = input.crops.cropOf(one.plant.id);
  const known = crop?.yieldMarketableTHa ?? crop?.yieldPackedTHa ?? crop?.yieldGrossTHa ?? null;
  const typ = one.stand.yieldTHa ?? known?.value ?? null;
  if (typ === null) return null;
  const table = one.plant.crop;
  const took = one.stand.establishedShare ?? 1;
  const [lowShare, highShare] =
    table === null ? [1, 1] : [table.yieldLowTHa / table.yieldTypTHa, table.yieldHighTHa / table.yieldTypTHa];
  return intervals.interval(typ * took * lowShare, typ * took, typ * took * highShare);
}

function leachedTerms(input: NitrogenInput, year: number): readonly NitrogenTerm[] {
  const shares = input.isTunnel ? undefined : input.winterShares.get(year);
  if (shares === undefined) return [];
  return nitrogenBalance.winterGrounds.flatMap((ground) => {
    const share = shares[ground];
    return share === 0
      ? []
      : [
          {
            way: 'lost' as const,
            what: `leached-${ground}`,
            stand: null,
            name: null,
            plantId: null,
            areaShare: share,
            kgHa: intervals.scaleInterval(nitrogenBalance.leachingKgHa[ground], share),
          },
        ];
  });
}
