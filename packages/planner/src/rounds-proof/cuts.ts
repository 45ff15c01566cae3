/**
 * Finds what a fractional answer breaks: sets of drops that too few journeys enter. Every cut found holds for all lawful rounds; not
 * finding one proves nothing.
 */
import type { PlaceIndex } from '../rounds/problem.ts';

export interface EdgeUse {
  /** Places, 0 is the yard. */
  readonly from: PlaceIndex;
  readonly to: PlaceIndex;
  readonly useShare: number;
}

/** At least `fewest` journeys cross the border of these drops (each round that serves some crosses it twice). */
export interface BorderCut {
  readonly places: readonly number[];
  readonly fewestCount: number;
  /** By how much the answer falls short. */
  readonly missingCount: number;
}

export interface CutAsk {
  readonly placeCount: number;
  readonly boxesOf: (place: number) => number;
  /** Boxes of the largest van; infinite where one van does it all. */
  readonly mostBoxes: number;
}

const tiny = 1e-6;
const worthwhile = 0.02;
/** More at once make the next answer slow without making it better. */
const mostCutsAtOnce = 60;

export function borderCuts(uses: readonly EdgeUse[], ask: CutAsk): readonly BorderCut[] {
  const weight = weightsOf(uses, ask.placeCount);
  const found = new Map<string, BorderCut>();
  const consider = (places: readonly number[]) => {
    if (places.length < 2) return;
    const sorted = places.slice().sort((one, other) => one - other);
    const fewest = fewestJourneys(sorted, ask);
    const missing = fewest - borderUse(weight, sorted);
    if (missing > worthwhile)
      found.set(sorted.join(' '), { places: sorted, fewestCount: fewest, missingCount: missing });
  };
  for (const least of [tiny, 0.25, 0.5, 0.75, 0.999]) for (const part of components(weight, least)) consider(part);
  for (const part of weakSets(weight)) consider(part);
  if (Number.isFinite(ask.mostBoxes)) {
    for (const part of components(weight, tiny)) growFrom(part, weight, { ask, consider });
    for (let seed = 1; seed < ask.placeCount; seed++) grow(seed, weight, { ask, consider });
  }
  return [...found.values()].sort((one, other) => other.missingCount - one.missingCount).slice(0, mostCutsAtOnce);
}

export function fewestJourneys(places: readonly number[], { boxesOf, mostBoxes }: CutAsk): number {
  const boxes = places.reduce((sum, place) => sum + boxesOf(place), 0);
  return 2 * Math.max(1, Math.ceil(boxes / mostBoxes - 1e-9));
}

type Weights = readonly Float64Array[];

function weightsOf(uses: readonly EdgeUse[], placeCount: number): Weights {
  const rows = Array.from({ length: placeCount }, () => new Float64Array(placeCount));
  for (const { from, to, useShare } of uses) {
    const [one, other] = [rows[from], rows[to]];
    if (one === undefined || other === undefined) continue;
    one[to] = (one[to] ?? 0) + useShare;
    other[from] = (other[from] ?? 0) + useShare;
  }
  return rows;
}

function between(weight: Weights, one: number, other: number): number {
  return weight[one]?.[other] ?? 0;
}

function borderUse(weight: Weights, places: readonly number[]): number {
  const inside = new Set(places);
  let use = 0;
  for (const place of places)
    for (let other = 0; other < weight.length; other++) if (!inside.has(other)) use += between(weight, place, other);
  return use;
}

/** Drops joined by journeys of at least so much use, the yard left out. */
function components(weight: Weights, least: number): readonly (readonly number[])[] {
  const seen = new Set<number>([0]);
  const parts: number[][] = [];
  for (let start = 1; start < weight.length; start++) {
    if (seen.has(start)) continue;
    const part = [start];
    seen.add(start);
    for (const at of part)
      for (let next = 1; next < weight.length; next++)
        if (!seen.has(next) && between(weight, at, next) >= least) {
          seen.add(next);
          part.push(next);
        }
    parts.push(part);
  }
  return parts;
}

/** Weak borders met on the way of the minimum cut of Stoer and Wagner (1997); each is a set of drops, the yard outside. */
function weakSets(weight: Weights): readonly (readonly number[])[] {
  const count = weight.length;
  const rows = weight.map((row) => Float64Array.from(row));
  const groups = Array.from({ length: count }, (_, place) => [place]);
  let alive = groups.map((_, place) => place);
  const sets: (readonly number[])[] = [];
  while (alive.length > 1) {
    const { before, last, pullOfLast } = lastTwo(rows, alive);
    const group = groups[last] ?? [];
    if (pullOfLast < 2 - worthwhile) sets.push(withoutYard(group, count));
    merge(rows, before, last);
    groups[before] = [...(groups[before] ?? []), ...group];
    alive = alive.filter((one) => one !== last);
  }
  return sets;
}

/** Takes the groups in the order of how strongly they are joined to those taken before; the last one's pull is its border. */
function lastTwo(rows: readonly Float64Array[], alive: readonly number[]) {
  const pull = new Float64Array(rows.length);
  const open = new Set(alive);
  let [last, before] = [-1, -1];
  while (open.size > 0) {
    const next = strongest(open, pull);
    open.delete(next);
    [before, last] = [last, next];
    addPull(pull, open, rows[next]);
  }
  return { before, last, pullOfLast: pull[last] ?? 0 };
}

function strongest(open: ReadonlySet<number>, pull: Float64Array): number {
  let best = -1;
  for (const one of open) if (best < 0 || (pull[one] ?? 0) > (pull[best] ?? 0) + tiny) best = one;
  return best;
}

function addPull(pull: Float64Array, open: ReadonlySet<number>, row: Float64Array | undefined): void {
  for (const one of open) pull[one] = (pull[one] ?? 0) + (row?.[one] ?? 0);
}

function withoutYard(group: readonly number[], count: number): readonly number[] {
  if (!group.includes(0)) return group;
  const inside = new Set(group);
  return Array.from({ length: count }, (_, place) => place).filter((place) => !inside.has(place));
}

function merge(rows: readonly Float64Array[], into: number, from: number): void {
  for (let one = 0; one < rows.length; one++) {
    const row = rows[into];
    const column = rows[one];
    if (row === undefined || column === undefined || one === into) continue;
    row[one] = (row[one] ?? 0) + (rows[from]?.[one] ?? 0);
    column[into] = row[one] ?? 0;
  }
}

interface Growing {
  readonly ask: CutAsk;
  readonly consider: (places: readonly number[]) => void;
}

/** From one drop on, the drop most strongly joined is added, and each set on the way considered. */
function grow(seed: number, weight: Weights, growing: Growing): void {
  growFrom([seed], weight, growing);
}

function growFrom(start: readonly number[], weight: Weights, { ask, consider }: Growing): void {
  const inside = start.slice();
  const open = new Set<number>();
  for (let place = 1; place < ask.placeCount; place++) if (!inside.includes(place)) open.add(place);
  const pull = new Float64Array(ask.placeCount);
  for (const place of inside) addPull(pull, open, weight[place]);
  const most = Math.min(ask.placeCount - 2, 60);
  while (inside.length < most && open.size > 0) {
    consider(inside);
    const next = strongest(open, pull);
    open.delete(next);
    inside.push(next);
    addPull(pull, open, weight[next]);
  }
}
