/** Stands, courses and rests for tests and for the sample farm. */

import {
  type Course,
  type CourseStand,
  type OwnRest,
  type Rotation,
  type Span,
  type Stand,
  type StandKind,
  wholePlot,
} from '@leywright/book';
import { asDay, asId, asMonthDay } from '@leywright/measures';

export interface StandPieces
  extends Partial<Omit<Stand, 'id' | 'plot' | 'undersownIn' | 'course' | 'sownOn' | 'plantedOn'>> {
  readonly id?: string;
  readonly sownOn?: string | null;
  readonly plantedOn?: string | null;
  readonly undersownIn?: string | null;
  readonly course?: string | null;
}

/** First day on the ground, and first day it is free again. */
export type Stay = readonly [from: string, to: string];

/** A stand of `what` on a plot over [from, to), agreed, sown on its first day. */
export function stand(plot: string, what: string, [from, to]: Stay, pieces: StandPieces = {}): Stand {
  const { id, sownOn, plantedOn, undersownIn, course, ...rest } = pieces;
  return {
    id: asId(id ?? `${plot}-${from.slice(0, 4)}-${what}`),
    succession: null,
    plot: asId(plot),
    span: wholePlot,
    what,
    kind: 'crop',
    variety: null,
    state: 'agreed',
    sownOn: sownOn === null || plantedOn !== undefined ? (sownOn ? asDay(sownOn) : null) : asDay(sownOn ?? from),
    plantedOn: plantedOn ? asDay(plantedOn) : null,
    from: asDay(from),
    to: asDay(to),
    undersownIn: undersownIn ? asId(undersownIn) : null,
    course: course ? asId(course) : null,
    courseYear: null,
    establishedShare: null,
    endedBy: null,
    reason: null,
    yieldTHa: null,
    ...rest,
  };
}

/** A cover or ley: as `stand`, with its kind. */
export function cover(plot: string, what: string, stay: Stay, pieces: StandPieces = {}): Stand {
  return stand(plot, what, stay, { kind: 'cover', ...pieces });
}

export interface CourseStandPieces {
  readonly kind?: StandKind;
  readonly variety?: string;
  readonly span?: Span;
  readonly sow?: string;
  readonly plant?: string;
  readonly startYearOffset?: number;
  readonly end: string;
  readonly endYearOffset?: number;
  readonly undersownIn?: string;
}

/** One stand of a course; months and days as MM-DD. */
export function courseStand(key: string, what: string, pieces: CourseStandPieces): CourseStand {
  return {
    key,
    what,
    kind: pieces.kind ?? 'crop',
    variety: pieces.variety ?? null,
    span: pieces.span ?? wholePlot,
    sow: pieces.sow === undefined ? null : asMonthDay(pieces.sow),
    plant: pieces.plant === undefined ? null : asMonthDay(pieces.plant),
    startYearOffset: pieces.startYearOffset ?? 0,
    end: asMonthDay(pieces.end),
    endYearOffset: pieces.endYearOffset ?? 0,
    undersownIn: pieces.undersownIn ?? null,
  };
}

/** A course with its stands; hours by job unless given. */
export function course(
  id: string,
  stands: readonly CourseStand[] = [],
  pieces: Partial<Omit<Course, 'id' | 'stands'>> = {},
): Course {
  return { id: asId(id), name: id, stands, hoursPerHa: null, hoursFollow: 'ground', ...pieces };
}

/** Courses in their order from a year on, agreed. */
export function rotation(
  firstYear: number,
  courses: readonly Course[],
  pieces: Partial<Pick<Rotation, 'state' | 'agreedOn'>> = {},
): Rotation {
  return { firstYear, courses, state: 'agreed', agreedOn: null, ...pieces };
}

/** An own rest of years for a family; covers and undersown stands count. */
export function ownRest(family: string, years: number, pieces: Partial<OwnRest> = {}): OwnRest {
  return {
    id: family.toLowerCase(),
    name: family,
    family,
    hosts: [],
    years,
    force: 'hard',
    countsCovers: true,
    countsUndersown: true,
    ...pieces,
  };
}
