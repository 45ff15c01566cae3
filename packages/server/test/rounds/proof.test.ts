/** The proof of rounds by HiGHS: the bound meets the best found by trying every way, and the recorded optimum of our own instance. */
import { readFileSync } from 'node:fs';
import { type RoundsProblem, rounds } from '@leywright/planner';
import { highsSolver } from '@leywright/server';
import { afterAll, expect, test } from 'vitest';

const solver = highsSolver();
afterAll(() => solver.close());

/** The shortest rounds by trying every order and every place to go home. */
function shortestByTrying(problem: RoundsProblem): number {
  const size = problem.legs.placeCount;
  const km = (from: number, to: number) => problem.legs.km[from * size + to] ?? 0;
  const most = problem.vans[0]?.mostBoxes ?? 0;
  interface State {
    readonly at: number;
    readonly left: readonly number[];
    readonly room: number;
    readonly vans: number;
  }
  const go = ({ at, left, room, vans }: State): number => {
    if (left.length === 0) return km(at, 0);
    let best = Number.POSITIVE_INFINITY;
    for (const next of left) {
      const boxes = problem.drops[next - 1]?.boxes ?? 0;
      const rest = left.filter((one) => one !== next);
      if (boxes <= room) best = Math.min(best, km(at, next) + go({ at: next, left: rest, room: room - boxes, vans }));
      if (at !== 0 && vans > 1 && boxes <= most)
        best = Math.min(
          best,
          km(at, 0) + km(0, next) + go({ at: next, left: rest, room: most - boxes, vans: vans - 1 }),
        );
    }
    return best;
  };
  return go({ at: 0, left: problem.drops.map((_, before) => before + 1), room: most, vans: problem.vans.length });
}

function smallProblem(seed: number): RoundsProblem {
  const number = (at: number, below: number) => (Math.imul(seed * 31 + at, 2_654_435_761) >>> 8) % below;
  const points = Array.from({ length: 7 }, (_, at) => [number(at * 2 + 1, 40), number(at * 2 + 2, 40)] as const);
  const km = (from: number, to: number) =>
    Math.round(
      Math.hypot((points[from]?.[0] ?? 0) - (points[to]?.[0] ?? 0), (points[from]?.[1] ?? 0) - (points[to]?.[1] ?? 0)),
    );
  return {
    name: `small ${seed}`,
    drops: points.slice(1).map((_, at) => ({
      id: `d${at}`,
      boxes: 1 + number(40 + at, 6),
      kg: null,
      opensMin: 0,
      closesMin: Number.POSITIVE_INFINITY,
      serviceMin: 0,
      dayIndexes: [0],
    })),
    vans: Array.from({ length: 4 }, (_, at) => ({ id: `v${at}`, mostBoxes: 10, mostKg: null, dayIndexes: [0] })),
    legs: rounds.legsFrom(points.length, km, { stepKm: 1, speedKmH: 40 }),
    yardOpensMin: 0,
    yardClosesMin: Number.POSITIVE_INFINITY,
    lateKmPerMin: 2,
  };
}

test('on small weeks by chance the proven rounds are as short as the shortest by trying every way', async () => {
  for (const seed of [1, 2, 3, 4, 5, 6]) {
    const problem = smallProblem(seed);
    const answer = await rounds.solveRounds(problem, { seeds: [1], tries: 300, proofLimitS: 20 }, solver);
    expect(answer.status).toBe('optimal');
    expect(answer.figures.totalKm).toBe(shortestByTrying(problem));
    expect(answer.boundKm).toBe(answer.figures.totalKm);
  }
}, 60_000);

test('a poor search is put right by the proof, not passed off as proven', async () => {
  const problem = smallProblem(9);
  const answer = await rounds.solveRounds(problem, { seeds: [1], tries: 0, proofLimitS: 20 }, solver);
  expect(answer.figures.totalKm).toBe(shortestByTrying(problem));
}, 60_000);

test('twenty drops and one van are proven at 260.2 km', async () => {
  const url = new URL('../../../../bench/rounds-instances/rounds-20-1-a.json', import.meta.url);
  const read = rounds.readRoundsProblem(JSON.parse(readFileSync(url, 'utf8')));
  if (read.kind !== 'problem') throw new Error('The instance was not read.');
  const answer = await rounds.solveRounds(read.problem, { seeds: [1, 2], tries: 3000, proofLimitS: 60 }, solver);
  expect(answer.status).toBe('optimal');
  expect(answer.boundKm).toBeCloseTo(260.2, 6);
}, 90_000);

test('with opening hours no proof is claimed', async () => {
  const made = smallProblem(1);
  const problem = { ...made, drops: made.drops.map((drop) => ({ ...drop, closesMin: 500 })) };
  const answer = await rounds.solveRounds(problem, { seeds: [1], tries: 100, proofLimitS: 5 }, solver);
  expect(answer.status).toBe('found');
  expect(answer.boundKm).toBeNull();
  expect(answer.whyNoProof).toBe('hours');
});
