/** Rounds while they are being made: one list of places a seat, and what is not on any. Lists are replaced, never changed in place. */
import type { Chance } from '../rotation-solver/seeded.ts';
import type { PlaceIndex, RoundsPlan, RoundsProblem, Seat } from './problem.ts';

export interface DraftRounds {
  readonly rounds: (readonly number[])[];
  left: PlaceIndex[];
}

/** What the search asks again and again, laid flat: index 0 is the yard. */
export interface SearchContext {
  readonly problem: RoundsProblem;
  readonly seats: readonly Seat[];
  readonly chance: Chance;
  readonly hasHours: boolean;
  readonly leftOverKm: number;
  readonly opensMin: Float64Array;
  readonly closesMin: Float64Array;
  readonly serviceMin: Float64Array;
  readonly loadOf: (round: readonly number[]) => RoundLoad;
}

/** What is known of one list of places. */
export interface RoundLoad {
  readonly boxes: number;
  readonly weightKg: number;
  /** Kilometres, and minutes late at their price. */
  readonly costKm: number;
  /** By call, the last one at the yard; empty where no hours count. */
  readonly leaveMin: Float64Array;
  readonly lateMin: Float64Array;
}

interface Wanted {
  readonly problem: RoundsProblem;
  readonly seats: readonly Seat[];
  readonly chance: Chance;
  readonly hasHours: boolean;
  readonly leftOverKm: number;
}

export function searchContext(wanted: Wanted): SearchContext {
  const { problem } = wanted;
  const opensMin = Float64Array.from([problem.yardOpensMin, ...problem.drops.map((drop) => drop.opensMin)]);
  const closesMin = Float64Array.from([problem.yardClosesMin, ...problem.drops.map((drop) => drop.closesMin)]);
  const serviceMin = Float64Array.from([0, ...problem.drops.map((drop) => drop.serviceMin)]);
  const flat = { ...wanted, opensMin, closesMin, serviceMin };
  const known = new WeakMap<readonly number[], RoundLoad>();
  const loadOf = (round: readonly number[]): RoundLoad => {
    const before = known.get(round);
    if (before !== undefined) return before;
    const load = loadOfRound(flat, round);
    known.set(round, load);
    return load;
  };
  return { ...flat, loadOf };
}

const noTimes = new Float64Array(0);

function loadOfRound(context: Omit<SearchContext, 'loadOf'>, round: readonly number[]): RoundLoad {
  const { problem, hasHours, opensMin, closesMin, serviceMin } = context;
  const { km, min, placeCount } = problem.legs;
  const isTimed = hasHours && round.length > 0;
  const leaveMin = isTimed ? new Float64Array(round.length + 1) : noTimes;
  const lateMin = isTimed ? new Float64Array(round.length + 1) : noTimes;
  let [boxes, weightKg, costKm, nowMin, at] = [0, 0, 0, problem.yardOpensMin, 0];
  const calls = round.length === 0 ? 0 : round.length + 1;
  for (let index = 0; index < calls; index++) {
    const place = round[index] ?? 0;
    const drop = problem.drops[place - 1];
    boxes += drop?.boxes ?? 0;
    weightKg += drop?.kg ?? 0;
    costKm += km[at * placeCount + place] ?? 0;
    if (isTimed) {
      const startMin = Math.max(nowMin + (min[at * placeCount + place] ?? 0), opensMin[place] ?? 0);
      const late = Math.max(0, startMin - (closesMin[place] ?? 0));
      nowMin = startMin + (serviceMin[place] ?? 0);
      leaveMin[index] = nowMin;
      lateMin[index] = late;
      costKm += late * problem.lateKmPerMin;
    }
    at = place;
  }
  return { boxes, weightKg, costKm, leaveMin, lateMin };
}

export function emptyDraft(problem: RoundsProblem, seatCount: number): DraftRounds {
  return { rounds: Array.from({ length: seatCount }, () => []), left: problem.drops.map((_, before) => before + 1) };
}

/** Kilometres, minutes late at their price, and what is left over. */
export function planCostKm(context: SearchContext, draft: DraftRounds): number {
  let totalKm = draft.left.length * context.leftOverKm;
  for (const round of draft.rounds) totalKm += context.loadOf(round).costKm;
  return totalKm;
}

export function planOf(seats: readonly Seat[], draft: DraftRounds): RoundsPlan {
  return {
    trips: seats.map(({ vanIndex, dayIndex }, at) => ({ vanIndex, dayIndex, places: draft.rounds[at] ?? [] })),
    unserved: draft.left.slice().sort((one, other) => one - other),
  };
}
