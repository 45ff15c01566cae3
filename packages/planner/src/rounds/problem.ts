/**
 * Delivery rounds: which van calls at which drop, on which day, in which order.
 *
 * Places are numbered: 0 is the yard, 1 and up are the drops in their order. Legs are kept as numbers of one row after another.
 * Windows are soft: a van may come late, each minute costs so many kilometres. A drop no van can take is left over, and named.
 */

/** Places in their order: 0 is the yard, 1 the first drop. */
export type PlaceIndex = number;
/** Days of the week's rounds, from 0. */
export type DayIndex = number;

export interface RoundDrop {
  readonly id: string;
  readonly boxes: number;
  /** Null = boxes are not weighed. */
  readonly kg: number | null;
  /** Minutes of the day between which the drop is open; a van that comes early waits. */
  readonly opensMin: number;
  readonly closesMin: number;
  readonly serviceMin: number;
  /** Days of the week's rounds on which it may be called at, counted from 0. */
  readonly dayIndexes: readonly DayIndex[];
}

export interface Van {
  readonly id: string;
  readonly mostBoxes: number;
  /** Null = weight is not what limits it. */
  readonly mostKg: number | null;
  readonly dayIndexes: readonly DayIndex[];
}

/** Distances and times between places, row by row: from the yard to the yard, to drop 1 … */
export interface Legs {
  readonly placeCount: number;
  readonly km: Float64Array;
  readonly min: Float64Array;
  /** All legs are whole multiples of this, so a bound may be rounded up to one; null = they are not. */
  readonly stepKm: number | null;
}

export interface RoundsProblem {
  readonly name: string;
  readonly drops: readonly RoundDrop[];
  readonly vans: readonly Van[];
  readonly legs: Legs;
  readonly yardOpensMin: number;
  /** A van back later than this is late. */
  readonly yardClosesMin: number;
  /** Kilometres one would drive to save a minute of coming late. */
  readonly lateKmPerMin: number;
}

/** One van on one day. */
export interface Trip {
  readonly vanIndex: number;
  readonly dayIndex: number;
  /** Places in the order of the round, without the yard. */
  readonly places: readonly PlaceIndex[];
}

export interface RoundsPlan {
  readonly trips: readonly Trip[];
  /** Places of drops no van could take. */
  readonly unserved: readonly PlaceIndex[];
}

export interface RoundsFigures {
  readonly totalKm: number;
  readonly lateMin: number;
  /** Times of day at each place, by trip and place in its order; what a round sheet shows. */
  readonly calls: readonly (readonly Call[])[];
}

export interface Call {
  readonly place: PlaceIndex;
  readonly arriveMin: number;
  readonly startMin: number;
  readonly leaveMin: number;
  readonly lateMin: number;
}

/** A van that may be sent on a day: what a trip fills. */
export interface Seat {
  readonly vanIndex: number;
  readonly dayIndex: number;
  readonly mostBoxes: number;
  readonly mostKg: number;
}

export function seatsOf(problem: RoundsProblem): readonly Seat[] {
  return problem.vans.flatMap((van, vanIndex) =>
    van.dayIndexes.map((dayIndex) => ({
      vanIndex,
      dayIndex,
      mostBoxes: van.mostBoxes,
      mostKg: van.mostKg ?? Number.POSITIVE_INFINITY,
    })),
  );
}

/** Whether hours can make a van late at all. */
export function hasWindows(problem: RoundsProblem): boolean {
  return (
    Number.isFinite(problem.yardClosesMin) ||
    problem.drops.some((drop) => Number.isFinite(drop.closesMin) || drop.opensMin > problem.yardOpensMin)
  );
}
