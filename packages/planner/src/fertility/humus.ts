/**
 * The humus index of a plot: what its crops use up and its leys and covers bring, year by year.
 *
 * Source  agronomy carbon/humus-balance.ts (ordinance of 2004, lower values). Several crops on one piece in a year count as their mean, for the method gives a
 *         figure to the hectare and year.
 * Leaves out  straw, compost and cut herbage taken elsewhere: the book has no register of them yet.
 */
import { carbon } from '@leywright/agronomy';
import { dayNumber, dayOf } from '@leywright/measures';
import type { GroundStand } from '../ground/ground-stand.ts';
import type { HumusAccount } from '../plan/fertility.ts';
import { type Harvest, widthShare } from './harvests.ts';

export interface HumusTerm {
  readonly year: number;
  readonly stand: string;
  readonly name: string;
  /** The row of the table it counts by; null where there is none. */
  readonly use: string | null;
  readonly areaShare: number;
  /** On the ground it stands on. */
  readonly kgCHa: number;
}

export interface HumusInput {
  readonly plot: string;
  readonly harvests: readonly Harvest[];
  readonly stands: readonly GroundStand[];
  readonly years: { readonly fromYear: number; readonly toYear: number };
}

export const humusDoubts = ['humus-is-an-index', 'crops-without-humus-figure'] as const;

export function humusTerms({ harvests, stands, years }: HumusInput): readonly HumusTerm[] {
  const crops = harvests.map((one): HumusTerm => {
    const use = carbon.humusBalance.humusUseOfCrop(one.cropId);
    const { year, stand, name, areaShare } = one;
    return { year, stand, name, areaShare, use: use?.use ?? null, kgCHa: use?.kgCHa ?? 0 };
  });
  const green = stands.flatMap((one) => (one.stand.kind === 'crop' ? [] : greenTerms(one)));
  return [...meanOfCrops(crops), ...green].filter(({ year }) => year >= years.fromYear && year <= years.toYear);
}

/** A year's crops on more than the whole plot are weighed down to the whole of it. */
function meanOfCrops(terms: readonly HumusTerm[]): readonly HumusTerm[] {
  return terms.map((term) => {
    const grown = terms.filter(({ year }) => year === term.year).reduce((sum, one) => sum + one.areaShare, 0);
    return { ...term, areaShare: term.areaShare / Math.max(1, grown) };
  });
}

function greenTerms(one: GroundStand): readonly HumusTerm[] {
  const first = Number(one.stand.from.slice(0, 4));
  const named = (year: number, word: string): HumusTerm => {
    const use = carbon.humusBalance.humusUse(word);
    return {
      year,
      stand: one.stand.id,
      name: one.plant.name,
      use: use?.use ?? null,
      areaShare: widthShare(one) * (one.stand.establishedShare ?? 1),
      kgCHa: use?.kgCHa ?? 0,
    };
  };
  if (one.stand.kind !== 'ley') return [named(first, coverUse(one, first))];
  const later = [];
  for (let year = first + 1; dayNumber(dayOf(year, 7, 1)) < one.toDay; year++)
    later.push(named(year, 'ley (grass, legume, legume-grass) per main year; group 4'));
  return [named(first, leySowingUse(one, first)), ...later];
}

function leySowingUse(one: GroundStand, year: number): string {
  if (one.stand.undersownIn !== null) return 'ley year of sowing: undersown';
  return one.fromDay < dayNumber(dayOf(year, 7, 1))
    ? 'ley year of sowing: spring bare sowing'
    : 'ley year of sowing: summer bare sowing';
}

function coverUse(one: GroundStand, year: number): string {
  if (one.stand.undersownIn !== null) return 'undersowing';
  if (one.fromDay < dayNumber(dayOf(year, 6, 1)) && one.toDay > dayNumber(dayOf(year, 9, 1)))
    return 'sown fallow from spring';
  return one.toDay > dayNumber(dayOf(year + 1, 1, 1)) ? 'winter catch crop' : 'stubble catch crop';
}

export function humusAccount(input: HumusInput): HumusAccount | null {
  const terms = humusTerms(input);
  if (terms.length === 0) return null;
  const years = input.years.toYear - input.years.fromYear + 1;
  const cropped = input.harvests.length;
  const unknown = terms.filter((term) => term.use === null).length;
  return {
    balanceKgCHa: humusMeanKgCHa(terms, years),
    aimKgCHa: carbon.humusBalance.humusAimKgCHa,
    unknownShare: cropped === 0 ? 0 : unknown / cropped,
    doubt: ['humus-is-an-index', ...(unknown > 0 ? ['crops-without-humus-figure'] : [])],
    why: `humus/${input.plot}`,
  };
}

export function humusMeanKgCHa(terms: readonly HumusTerm[], years: number): number {
  return terms.reduce((sum, { areaShare, kgCHa }) => sum + areaShare * kgCHa, 0) / Math.max(1, years);
}
