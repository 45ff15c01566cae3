/** Walks through the sample farm's plots: what was looked for, how many of how many, and nought where there was none. */
import { addDays, asDay, type Day } from '@leywright/measures';
import type { Chance } from '../make/chance.ts';
import type { Done } from './done.ts';

/** What, from and to which day of a year, on how many plants or holes, and how many as a rule. */
const looked = [
  ['mealy aphid', '06-08', '09-28', 20, 4],
  ['flea beetle', '05-04', '06-29', 20, 7],
  ['ladybirds', '05-18', '08-31', 20, 5],
  ['hoverfly larvae', '06-01', '09-07', 20, 3],
  ['potato blight', '06-22', '08-31', 40, 0],
  ['carrot fly on traps', '05-11', '09-14', 5, 1],
  ['slugs under boards', '03-16', '05-11', 6, 4],
  ['earthworms', '10-12', '10-26', 10, 9],
] as const;

const plots = ['a', 'b', 'c', 'd', 'e', 'f'] as const;

export function looksAround(today: Day, chance: Chance): readonly Done[] {
  const done: Done[] = [];
  for (const year of [2025, 2026]) {
    for (const [what, from, to, of, usual] of looked) {
      for (let on = asDay(`${year}-${from}`); on <= asDay(`${year}-${to}`); on = addDays(on, chance.whole(14, 24))) {
        if (on > today) break;
        const count = Math.max(0, usual + chance.whole(-usual, usual + 1));
        done.push({ on, body: { kind: 'observation', plot: chance.oneOf(plots), what, count, of, words: null } });
      }
    }
  }
  return done;
}
