/** Short ways to write a farm in a test: say what matters, the rest is plain and harmless. Bad ids and days throw. */

import {
  type About,
  aboutFarm,
  type Conventions,
  emptyFarm,
  type Farm,
  type Field,
  type Part,
  type Plot,
  type Span,
  wholePlot,
} from '@leywright/book';
import { asDay, asId, asMonthDay, type CropId, type Day } from '@leywright/measures';

/** Where farms of tests lie unless they say otherwise: lowland England, invented. */
const somewhere: About['place'] = {
  latDeg: 52.6,
  lonDeg: 0.9,
  elevationM: 90,
  near: null,
  jurisdiction: 'England',
  timeZone: 'Europe/London',
};

export type AboutPieces = Partial<Omit<About, 'conventions' | 'id'>> & {
  readonly id?: string;
  readonly conventions?: Partial<Conventions>;
};

/** What a farm says about itself, with its own conventions over the usual ones. */
export function aboutWith(pieces: AboutPieces = {}): About {
  const { id, conventions, ...rest } = pieces;
  const about = aboutFarm(id ?? 'test-farm', 'Test farm', somewhere);
  return { ...about, ...rest, conventions: { ...about.conventions, ...conventions } };
}

export type FarmPieces = Partial<Omit<Farm, 'about'>> & { readonly about?: AboutPieces };

/** A farm of these pieces and nothing else. */
export function farmWith(pieces: FarmPieces = {}): Farm {
  const { about, ...rest } = pieces;
  return { ...emptyFarm(aboutWith(about)), ...rest };
}

export type PlotPieces = Partial<Omit<Plot, 'id' | 'field' | 'courseAtStart'>> & {
  readonly id?: string;
  readonly field?: string;
  readonly courseAtStart?: string | null;
};

/** A plot of 1 ha, typed, organic since before all records, no hedge, no bank, no headland of its own. */
export function plot(letter: string, pieces: PlotPieces = {}): Plot {
  const { id, field, courseAtStart, ...rest } = pieces;
  return {
    id: asId(id ?? letter.toLowerCase()),
    letter,
    name: `Plot ${letter}`,
    field: field === undefined ? null : asId(field),
    kind: 'rotation',
    grossM2: 10_000,
    measuredBy: 'typed',
    hedgeM: 0,
    bankM2: 0,
    headlandShare: 0,
    soil: null,
    bedCentresM: 1.8,
    bedCount: null,
    courseAtStart: courseAtStart === undefined || courseAtStart === null ? null : asId(courseAtStart),
    from: null,
    to: null,
    status: 'organic',
    statusSince: day('2010-01-01'),
    ring: null,
    ...rest,
  };
}

/** A field whose law-measured area and hedges are as given. */
export function field(id: string, areaM2: number | null, hedgesOver5Years: boolean | null = null): Field {
  return { id: asId(id), name: `Field ${id}`, areaM2, hedgesOver5Years };
}

/** A part of a plot from a day on, with its parents. */
export function part(
  id: string,
  ofPlot: string,
  pieces: Pick<Part, 'span'> & Partial<Omit<Part, 'id' | 'plot'>> & { readonly from: Day },
): Part {
  return { id: asId(id), plot: asId(ofPlot), to: null, parents: [], why: null, ...pieces };
}

/** A day that a test wrote. */
export const day = asDay;
export const monthDay = asMonthDay;
export const cropId = (id: string): CropId => asId(id);

/** Shares of a plot's width; the whole plot when nothing is said. */
export function span(fromShare = wholePlot.fromShare, toShare = wholePlot.toShare): Span {
  return { fromShare, toShare };
}
