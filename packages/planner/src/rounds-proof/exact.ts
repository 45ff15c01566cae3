/**
 * Proves rounds: the shortest way, or a length no rounds can beat.
 *
 * Model   one column for each pair of places, how often a van drives between them; two journeys at each drop; no more rounds than vans;
 *         borders of sets of drops crossed often enough for their boxes. The last are too many to write down: they are added as broken.
 * Source  Laporte, Nobert & Desrochers 1985 (two-index model); capacity cuts as in Augerat et al. 1995.
 * Holds   only without windows, with vans alike, all drops on any day, distances the same both ways; else it says why not.
 * Leaves out  branching of our own: once the relaxed answer breaks nothing found, whole numbers are left to the solver, and its answer cut again.
 */
import { draftModel, type LinearModel, type Term } from '../rotation-model/draft-model.ts';
import type { SolveAnswer, Solver, StopSign } from '../rotation-solver/solver.ts';
import { isSymmetric } from '../rounds/distances.ts';
import { hasWindows, type RoundsPlan, type RoundsProblem, seatsOf } from '../rounds/problem.ts';
import { legKm } from '../rounds/route.ts';
import { type BorderCut, borderCuts, type CutAsk, type EdgeUse } from './cuts.ts';

export const whyNoProof = [
  'hours',
  'vans-differ',
  'days-differ',
  'one-way',
  'weights',
  'too-many-drops',
  'no-room',
] as const;
export type WhyNoProof = (typeof whyNoProof)[number];

export interface ExactAsk {
  readonly timeLimitS: number;
  /** The length of a plan already known. */
  readonly knownKm: number;
  readonly stop?: StopSign;
}

export interface ExactAnswer {
  readonly boundKm: number | null;
  /** Better than what was known; null when there is none or none was found. */
  readonly plan: RoundsPlan | null;
  readonly whyNot: WhyNoProof | null;
}

export const mostExactDrops = 110;
const tiny = 1e-6;

/** Why this problem cannot be proven; null when it can be tried. */
export function whyNotExact(problem: RoundsProblem): WhyNoProof | null {
  const [first] = problem.vans;
  if (problem.drops.length > mostExactDrops) return 'too-many-drops';
  if (hasWindows(problem)) return 'hours';
  if (problem.vans.some((van) => van.mostKg !== null)) return 'weights';
  if (problem.vans.some((van) => van.mostBoxes !== first?.mostBoxes)) return 'vans-differ';
  const dayCount = new Set(problem.vans.flatMap((van) => van.dayIndexes)).size;
  if ([...problem.vans, ...problem.drops].some((one) => one.dayIndexes.length < dayCount)) return 'days-differ';
  if (!isSymmetric(problem.legs)) return 'one-way';
  const boxes = problem.drops.reduce((sum, drop) => sum + drop.boxes, 0);
  return boxes > (first?.mostBoxes ?? 0) * seatsOf(problem).length + tiny ? 'no-room' : null;
}

export async function proveRounds(problem: RoundsProblem, ask: ExactAsk, solver: Solver): Promise<ExactAnswer> {
  const whyNot = whyNotExact(problem);
  if (whyNot !== null) return { boundKm: null, plan: null, whyNot };
  const endS = solver.nowS() + ask.timeLimitS;
  const proof = startProof(problem, ask.knownKm);
  const stop = ask.stop === undefined ? {} : { stop: ask.stop };
  let isWhole = false;
  while (solver.nowS() < endS && ask.stop?.isStopped() !== true) {
    const timeLimitS = Math.max(0.1, endS - solver.nowS());
    const answer = await solver.solve({ model: proof.model(isWhole), timeLimitS, gapShare: 0, ...stop });
    proof.hear(answer, isWhole);
    if (proof.isProven() || answer.ending !== 'optimal' || answer.values === null) break;
    const cuts = proof.cutsAgainst(answer.values);
    proof.add(cuts);
    if (cuts.length === 0 && isWhole) return proof.finish(answer.values);
    isWhole = isWhole || cuts.length === 0;
  }
  return proof.finish(null);
}

interface Pair {
  readonly from: number;
  readonly to: number;
}

function startProof(problem: RoundsProblem, knownKm: number) {
  const placeCount = problem.drops.length + 1;
  const seatCount = seatsOf(problem).length;
  const pairs: Pair[] = [];
  for (let to = 1; to < placeCount; to++) for (let from = 0; from < to; from++) pairs.push({ from, to });
  const boxesOf = (place: number) => problem.drops[place - 1]?.boxes ?? 0;
  const mostBoxes = seatCount === 1 ? Number.POSITIVE_INFINITY : (problem.vans[0]?.mostBoxes ?? 0);
  const cutAsk: CutAsk = { placeCount, boxesOf, mostBoxes };
  const cuts: BorderCut[] = [];
  const known = new Set<string>();
  let boundKm = 0;
  return {
    model: (isWhole: boolean) => modelOf(problem, { pairs, cuts, seatCount, cutAsk, isWhole }),
    hear: (answer: SolveAnswer, isWhole: boolean) => {
      const score = isWhole ? answer.boundScore : relaxedScore(problem, pairs, answer);
      if (answer.ending === 'infeasible') boundKm = knownKm;
      else if (Number.isFinite(score)) boundKm = Math.max(boundKm, upToStep(score, problem.legs.stepKm));
    },
    isProven: () => boundKm >= knownKm - tiny,
    cutsAgainst: (values: Float64Array): readonly BorderCut[] =>
      borderCuts(usesOf(pairs, values), cutAsk).filter((cut) => !known.has(cut.places.join(' '))),
    add: (more: readonly BorderCut[]) => {
      for (const cut of more) {
        known.add(cut.places.join(' '));
        cuts.push(cut);
      }
    },
    finish: (values: Float64Array | null): ExactAnswer => ({
      boundKm: Math.min(boundKm, knownKm),
      plan: values === null ? null : planOfUses(problem, usesOf(pairs, values)),
      whyNot: null,
    }),
  };
}

function usesOf(pairs: readonly Pair[], values: Float64Array): readonly EdgeUse[] {
  return pairs.flatMap(({ from, to }, at) => {
    const use = values[at] ?? 0;
    return use > tiny ? [{ from, to, useShare: use }] : [];
  });
}

/** A relaxed answer bounds only when solved to its end; its length is reckoned from the answer itself. */
function relaxedScore(problem: RoundsProblem, pairs: readonly Pair[], { ending, values }: SolveAnswer): number {
  if (ending !== 'optimal' || values === null) return Number.NEGATIVE_INFINITY;
  return pairs.reduce((sum, { from, to }, at) => sum + (values[at] ?? 0) * legKm(problem.legs, from, to), 0);
}

/** The solver's bound may lie a hair under the truth; a hair over a step does not count as the next one. */
function upToStep(boundKm: number, stepKm: number | null): number {
  if (stepKm === null) return boundKm;
  return Math.round(Math.ceil(boundKm / stepKm - 1e-5) * stepKm * 1e9) / 1e9;
}

interface ModelParts {
  readonly pairs: readonly Pair[];
  readonly cuts: readonly BorderCut[];
  readonly seatCount: number;
  readonly cutAsk: CutAsk;
  readonly isWhole: boolean;
}

function modelOf(problem: RoundsProblem, { pairs, cuts, seatCount, cutAsk, isWhole }: ModelParts): LinearModel {
  const draft = draftModel();
  const isOneTour = seatCount === 1 && problem.drops.length > 1;
  const columns = pairs.map(({ from, to }) =>
    draft.column({ high: from === 0 && !isOneTour ? 2 : 1, costWeight: legKm(problem.legs, from, to), isWhole }),
  );
  const touching: Term[][] = Array.from({ length: cutAsk.placeCount }, () => []);
  pairs.forEach(({ from, to }, at) => {
    touching[from]?.push([columns[at] ?? 0, 1]);
    touching[to]?.push([columns[at] ?? 0, 1]);
  });
  touching.forEach((terms, place) => {
    if (place > 0) draft.row(2, 2, terms);
    else draft.row(fewestAtYard(cutAsk), 2 * seatCount, terms);
  });
  for (const cut of cuts) addCut(draft, { cut, pairs, columns });
  return draft.finish();
}

function fewestAtYard({ boxesOf, mostBoxes, placeCount }: CutAsk): number {
  let boxes = 0;
  for (let place = 1; place < placeCount; place++) boxes += boxesOf(place);
  return Number.isFinite(mostBoxes) ? 2 * Math.max(1, Math.ceil(boxes / mostBoxes - 1e-9)) : 2;
}

/** Written by the fewer terms: border crossed at least so often, or inside driven at most so often; the same by the two journeys at each drop. */
function addCut(
  draft: ReturnType<typeof draftModel>,
  {
    cut,
    pairs,
    columns,
  }: { readonly cut: BorderCut; readonly pairs: readonly Pair[]; readonly columns: readonly number[] },
): void {
  const inside = new Set(cut.places);
  const within: Term[] = [];
  const across: Term[] = [];
  pairs.forEach(({ from, to }, at) => {
    const ends = Number(inside.has(from)) + Number(inside.has(to));
    if (ends === 2) within.push([columns[at] ?? 0, 1]);
    if (ends === 1) across.push([columns[at] ?? 0, 1]);
  });
  if (within.length <= across.length)
    draft.row(Number.NEGATIVE_INFINITY, cut.places.length - cut.fewestCount / 2, within);
  else draft.row(cut.fewestCount, Number.POSITIVE_INFINITY, across);
}

/** The rounds that whole-number uses describe. */
function planOfUses(problem: RoundsProblem, uses: readonly EdgeUse[]): RoundsPlan {
  const left = uses.flatMap((one) =>
    Array.from({ length: Math.round(one.useShare) }, () => ({ from: one.from, to: one.to })),
  );
  const rounds: number[][] = [];
  const takeFrom = (at: number): number | null => {
    const index = left.findIndex((one) => one.from === at || one.to === at);
    const [edge] = index < 0 ? [] : left.splice(index, 1);
    return edge === undefined ? null : edge.from === at ? edge.to : edge.from;
  };
  for (let next = takeFrom(0); next !== null; next = takeFrom(0)) {
    const round: number[] = [];
    for (let at: number | null = next; at !== null && at !== 0; at = takeFrom(at)) round.push(at);
    rounds.push(round);
  }
  const trips = seatsOf(problem).map(({ vanIndex, dayIndex }, at) => ({
    vanIndex,
    dayIndex,
    places: rounds[at] ?? [],
  }));
  return { trips, unserved: [] };
}
