/** Search over all ways to place the jobs that may move, from the longest job on; stops when nothing better can come, or when it has looked long enough. */
import { type Choices, type Cost, costOf, type Placing } from './choices.ts';

export interface Found {
  readonly placing: Placing;
  readonly proven: boolean;
}

export function searchOn(choices: Choices, first: Placing, mostSteps: number): Found {
  const planned = choices.planned();
  const order = [...choices.movable.keys()].toSorted((a, b) => choices.hoursOf(b) - choices.hoursOf(a));
  if (choices.cost(planned).overH <= 0 || order.length === 0) return { placing: planned, proven: true };
  // Loads of what cannot move; the rest is laid on as it is placed.
  const loads = choices.loads(planned);
  for (const at of order) add(loads, planned[at] ?? 0, -choices.hoursOf(at));
  const search: Search = {
    choices,
    order,
    loads,
    placing: [...planned],
    best: first,
    bestCost: choices.cost(first),
    stepsLeft: mostSteps,
  };
  const proven = place(search, 0, 0);
  return { placing: search.best, proven };
}

interface Search {
  readonly choices: Choices;
  readonly order: readonly number[];
  readonly loads: Float64Array;
  readonly placing: number[];
  best: Placing;
  bestCost: Cost;
  stepsLeft: number;
}

/** Tries every week of the next job; false when the steps ran out. */
function place(search: Search, depth: number, movedHWeeks: number): boolean {
  const { choices, order, loads, placing } = search;
  const cost = costOf(choices.overH(loads), movedHWeeks);
  // What is not placed yet only adds hours: this is the least it can cost.
  if (!cost.isBelow(search.bestCost)) return true;
  const at = order[depth];
  if (at === undefined) {
    if (choices.isAllowed(placing)) Object.assign(search, { best: [...placing], bestCost: cost });
    return true;
  }
  const planned = choices.planned()[at] ?? 0;
  const hoursH = choices.hoursOf(at);
  for (const week of nearestFirst(choices.movable.get(at) ?? [], planned)) {
    if (search.stepsLeft-- <= 0) return false;
    add(loads, week, hoursH);
    placing[at] = week;
    const isDone = place(search, depth + 1, movedHWeeks + hoursH * Math.abs(week - planned));
    add(loads, week, -hoursH);
    placing[at] = planned;
    if (!isDone) return false;
  }
  return true;
}

function add(loads: Float64Array, week: number, hoursH: number): void {
  loads[week] = (loads[week] ?? 0) + hoursH;
}

function nearestFirst(weeks: readonly number[], planned: number): readonly number[] {
  return weeks.toSorted((a, b) => Math.abs(a - planned) - Math.abs(b - planned));
}
