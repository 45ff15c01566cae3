/**
 * Finds good rounds: takes strings of neighbouring drops out, puts them back where they cost least, and keeps what is better or, early on,
 * only a little worse.
 *
 * Source  Christiaens & Vanden Berghe 2020, Slack Induction by String Removals for Vehicle Routing Problems, Transportation Science 54(2):
 *         the ruin by adjacent strings and the recreate with blinks are theirs; soft windows, days and drops left over are ours.
 * Holds   the same problem, seed and count of tries give the same plan on any machine; capacity and days are never broken; lateness is
 *         priced, never forbidden; a drop is left over only when no van has room for it or fetching it would cost more than `leftOverKm`.
 */
import { chanceFrom } from '../rotation-solver/seeded.ts';
import { type DraftRounds, emptyDraft, planCostKm, planOf, searchContext } from './draft-rounds.ts';
import { hasWindows, type RoundsPlan, type RoundsProblem, seatsOf } from './problem.ts';
import { makeRecreate } from './recreate.ts';
import { makeRuin } from './ruin.ts';

export interface SearchAsk {
  readonly seed: number;
  /** How often drops are taken out and put back; a count, not a time, so that the answer can be had again. */
  readonly tries: number;
}

/** Tries that have been enough for the published problems and ours, by how many drops there are. */
export function commonTries(dropCount: number): number {
  return 15_000 + 600 * dropCount;
}

export function searchRounds(problem: RoundsProblem, { seed, tries }: SearchAsk): RoundsPlan {
  const seats = seatsOf(problem);
  const chance = chanceFrom(seed * 2_654_435_761 + 12_345);
  const context = searchContext({
    problem,
    seats,
    chance,
    hasHours: hasWindows(problem),
    leftOverKm: leftOverKm(problem),
  });
  const ruin = makeRuin(context);
  const recreate = makeRecreate(context);
  let now = emptyDraft(problem, seats.length);
  recreate(now);
  let nowKm = planCostKm(context, now);
  let best = now;
  let bestKm = nowKm;
  const meanKm = meanLegKm(problem);
  const [startKm, endKm] = [meanKm * 0.3, meanKm * 0.002];
  for (let at = 0; at < tries; at++) {
    const next: DraftRounds = { rounds: now.rounds.slice(), left: now.left.slice() };
    ruin(next);
    recreate(next);
    const nextKm = planCostKm(context, next);
    const heatKm = startKm * (endKm / startKm) ** (at / tries);
    if (nextKm >= nowKm - heatKm * Math.log(chance() + 1e-12)) continue;
    now = next;
    nowKm = nextKm;
    if (nextKm < bestKm - 1e-9) {
      best = next;
      bestKm = nextKm;
    }
  }
  return planOf(seats, best);
}

function meanLegKm(problem: RoundsProblem): number {
  const { km, placeCount } = problem.legs;
  return km.reduce((sum, one) => sum + one, 0) / Math.max(1, placeCount * (placeCount - 1)) || 1;
}

/** What leaving one drop over is priced at: more than any detour, so that it happens only where no van has room. */
function leftOverKm(problem: RoundsProblem): number {
  return (
    10 * (1 + problem.legs.km.reduce((most, one) => Math.max(most, one), 0)) + 600 * Math.min(problem.lateKmPerMin, 10)
  );
}
