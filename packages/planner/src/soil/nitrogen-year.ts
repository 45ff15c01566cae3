/** The yearly nitrogen balance of a plot, summed from its terms, with what its doubt is made of. */
import { type Interval, intervals } from '@leywright/measures';
import type { NitrogenYear, Range } from '../plan/soil.ts';
import { type NitrogenInput, type NitrogenTerm, type NitrogenWay, nitrogenTerms } from './nitrogen-terms.ts';

export const nitrogenDoubts = [
  'fixation-from-tables',
  'stand-not-looked-at',
  'yields-expected',
  'leaching-by-practice',
  'bare-ground-in-winter',
  'ley-broken-before-winter',
  'soil-supply-left-out',
] as const;
export type NitrogenDoubt = (typeof nitrogenDoubts)[number];

export interface NitrogenPlace {
  readonly plot: string;
  readonly courseOf: (year: number) => string | null;
}

/** Balances of the years asked for; a year in which nothing is known to stand has none. */
export function nitrogenYears(
  input: NitrogenInput,
  place: NitrogenPlace,
  years: readonly number[],
): readonly NitrogenYear[] {
  return years.flatMap((year) => {
    const terms = nitrogenTerms(input, year);
    return terms.length === 0 ? [] : [nitrogenYear(terms, { ...place, year, input })];
  });
}

function nitrogenYear(
  terms: readonly NitrogenTerm[],
  at: NitrogenPlace & { readonly year: number; readonly input: NitrogenInput },
): NitrogenYear {
  const [fixed, otherIn, offtake, lost] = (['fixed', 'other-in', 'offtake', 'lost'] as const).map((way) =>
    sumOf(terms, way),
  ) as [Interval, Interval, Interval, Interval];
  return {
    plot: at.plot,
    year: at.year,
    course: at.courseOf(at.year),
    fixedKgHa: range(fixed),
    otherInKgHa: range(otherIn),
    offtakeKgHa: range(offtake),
    lostKgHa: range(lost),
    leftKgHa: {
      low: fixed.low + otherIn.low - offtake.high - lost.high,
      high: fixed.high + otherIn.high - offtake.low - lost.low,
    },
    doubt: doubtsOf(terms, at.input),
    why: `nitrogen/${at.plot}/${at.year}`,
  };
}

export function sumOf(terms: readonly NitrogenTerm[], way: NitrogenWay): Interval {
  return terms
    .filter((term) => term.way === way)
    .reduce((sum, term) => intervals.addIntervals(sum, term.kgHa), intervals.exactly(0));
}

function range({ low, high }: Interval): Range {
  return { low, high };
}

export function doubtsOf(terms: readonly NitrogenTerm[], input: NitrogenInput): readonly NitrogenDoubt[] {
  const stands = new Map(input.stands.map((one) => [one.stand.id as string, one]));
  const fixing = terms.filter((term) => term.way === 'fixed' && term.what !== 'pulse');
  const has = (what: string) => terms.some((term) => term.what === what);
  const doubts: readonly (readonly [NitrogenDoubt, boolean])[] = [
    ['fixation-from-tables', terms.some((term) => term.way === 'fixed')],
    [
      'stand-not-looked-at',
      fixing.some((term) => term.stand !== null && stands.get(term.stand)?.stand.establishedShare == null),
    ],
    [
      'yields-expected',
      terms.some((term) => term.way === 'offtake' && term.stand !== null && input.recordedKgOf(term.stand) === null),
    ],
    ['leaching-by-practice', terms.some((term) => term.what.startsWith('leached'))],
    ['bare-ground-in-winter', has('leached-bare')],
    ['ley-broken-before-winter', has('leached-ley-broken')],
    ['soil-supply-left-out', true],
  ];
  return doubts.filter(([, holds]) => holds).map(([doubt]) => doubt);
}
