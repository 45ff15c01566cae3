/** What a round comes to: kilometres, times of day, lateness. The one place where the times of a trip are reckoned for planning. */
import type { Call, Legs, PlaceIndex, RoundsFigures, RoundsPlan, RoundsProblem } from './problem.ts';

export function legKm(legs: Legs, from: PlaceIndex, to: PlaceIndex): number {
  return legs.km[from * legs.placeCount + to] ?? 0;
}

export function legMin(legs: Legs, from: PlaceIndex, to: PlaceIndex): number {
  return legs.min[from * legs.placeCount + to] ?? 0;
}

/** Kilometres from the yard through the places and back. */
export function tripKm(legs: Legs, places: readonly number[]): number {
  let totalKm = 0;
  let at = 0;
  for (const place of places) {
    totalKm += legKm(legs, at, place);
    at = place;
  }
  return places.length === 0 ? 0 : totalKm + legKm(legs, at, 0);
}

/** The calls of a trip in order, the last one back at the yard. A van leaves when the yard opens and waits where it comes early. */
export function tripCalls(problem: RoundsProblem, places: readonly number[]): readonly Call[] {
  let at = 0;
  let nowMin = problem.yardOpensMin;
  return [...places, 0].map((place) => {
    const drop = problem.drops[place - 1];
    const arriveMin = nowMin + legMin(problem.legs, at, place);
    const startMin = Math.max(arriveMin, drop?.opensMin ?? problem.yardOpensMin);
    const leaveMin = startMin + (drop?.serviceMin ?? 0);
    const lateMin = Math.max(0, startMin - (drop?.closesMin ?? problem.yardClosesMin));
    at = place;
    nowMin = leaveMin;
    return { place, arriveMin, startMin, leaveMin, lateMin };
  });
}

export function figuresOf(problem: RoundsProblem, plan: RoundsPlan): RoundsFigures {
  const calls = plan.trips.map((trip) => (trip.places.length === 0 ? [] : tripCalls(problem, trip.places)));
  return {
    totalKm: plan.trips.reduce((sum, trip) => sum + tripKm(problem.legs, trip.places), 0),
    lateMin: calls.flat().reduce((sum, call) => sum + call.lateMin, 0),
    calls,
  };
}
