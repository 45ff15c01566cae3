/**
 * Weeks with more work than hands, levelled: what may move inside its days is moved to weeks that have room.
 *
 * Rule    First the fewest hours over the hands, then the fewest hours moved, each counted by the weeks it is moved. A job keeps to the days it may be done in
 *         and to its order; it is not split. A first answer by moving one job at a time is bettered by search over all, as long as it is let; the answer
 *         says whether it is proven.
 * Checks  test/hands/level.test.ts (equal to trying every way on small random cases; order and days kept on random farms)
 * Holds   never more hours over the hands than before; no job lost, none twice.
 */
import { type Day, dayAt, dayNumber, type IsoWeek, weekOf } from '@leywright/measures';
import type { Work } from '../plan/work.ts';
import { type Choices, choicesOf, type Placing } from './choices.ts';
import { searchOn } from './search.ts';

export interface Moved {
  readonly job: string;
  readonly from: Day;
  readonly to: Day;
  readonly week: IsoWeek;
  readonly hoursH: number;
}

export interface Levelled {
  /** Hours over the hands, all weeks together, before and after. */
  readonly overBeforeH: number;
  readonly overAfterH: number;
  readonly moved: readonly Moved[];
  readonly weeks: readonly { readonly week: IsoWeek; readonly hoursH: number; readonly handsH: number | null }[];
  /** Whether no other way is better. */
  readonly proven: boolean;
  /** Jobs of weeks that are still over, the longest first, and why each stays: its days, its order, or no room anywhere. */
  readonly stuck: readonly {
    readonly job: string;
    readonly week: IsoWeek;
    readonly why: 'days' | 'order' | 'no-room';
  }[];
}

export interface LevelWish {
  /** Ways looked at before the search stops; 20,000 when not said. */
  readonly mostSteps?: number;
  /** Nothing is moved to a week before this day. */
  readonly today?: Day;
}

/** The work of a year levelled against its hands. Without hands nothing moves. */
export function levelWork(work: Work, wish: LevelWish = {}): Levelled {
  const choices = choicesOf(work, wish.today ?? null);
  const start = choices.planned();
  const first = oneByOne(choices, start);
  const found = searchOn(choices, first, wish.mostSteps ?? 20_000);
  return told(work, choices, found);
}

/** The best single move, again and again, until none makes it better. */
function oneByOne(choices: Choices, start: Placing): Placing {
  let best = start;
  for (;;) {
    const next = bestMove(choices, best);
    if (next === null) return best;
    best = next;
  }
}

/** Of all single moves out of a week that is over, the one that helps most and keeps the order; null when none helps. */
function bestMove(choices: Choices, at: Placing): Placing | null {
  const loads = choices.loads(at);
  const overWeeks = choices.overWeeks(at);
  const planned = choices.planned();
  const moves = [...choices.movable].flatMap(([job, weeks]) => {
    const from = at[job] ?? -1;
    if (!overWeeks.has(from)) return [];
    const hoursH = choices.hoursOf(job);
    const own = planned[job] ?? 0;
    return weeks.flatMap((week) => {
      if (week === from) return [];
      const gainH = choices.gainH(loads, { hoursH, fromWeek: from, toWeek: week });
      return gainH > leastGainH ? [{ job, week, gainH, movedH: hoursH * Math.abs(week - own) }] : [];
    });
  });
  const best = moves
    .toSorted((a, b) => b.gainH - a.gainH || a.movedH - b.movedH)
    .find(({ job, week }) => choices.isAllowed(at.with(job, week)));
  return best === undefined ? null : at.with(best.job, best.week);
}

const leastGainH = 1e-6;

function told(work: Work, choices: Choices, { placing, proven }: { placing: Placing; proven: boolean }): Levelled {
  const planned = choices.planned();
  const days = choices.daysOf(placing);
  const moved = choices.jobs.flatMap((job, at): Moved[] => {
    if (placing[at] === planned[at]) return [];
    const day = dayAt(days[at] ?? dayNumber(job.from));
    return [{ job: job.id, from: job.from, to: day, week: weekOf(day), hoursH: choices.hoursOf(at) }];
  });
  const loads = choices.loads(placing);
  return {
    overBeforeH: choices.cost(planned).overH,
    overAfterH: choices.cost(placing).overH,
    moved,
    weeks: work.weeks.map(({ week, handsH }, at) => ({ week, hoursH: loads[at] ?? 0, handsH })),
    proven,
    stuck: stuckIn(work, choices, placing),
  };
}

function stuckIn(work: Work, choices: Choices, placing: Placing): Levelled['stuck'] {
  const overWeeks = choices.overWeeks(placing);
  const jobs = choices.jobs.map((job, at) => ({ job, at })).filter(({ at }) => overWeeks.has(placing[at] ?? -1));
  return jobs
    .toSorted((a, b) => choices.hoursOf(b.at) - choices.hoursOf(a.at))
    .slice(0, 24)
    .map(({ job, at }) => ({
      job: job.id,
      week: work.weeks[placing[at] ?? 0]?.week ?? job.week,
      why: whyStuck(choices, placing, at),
    }));
}

function whyStuck(choices: Choices, placing: Placing, at: number): Levelled['stuck'][number]['why'] {
  const others = (choices.movable.get(at) ?? []).filter((week) => week !== placing[at]);
  if (others.length === 0) return 'days';
  return others.some((week) => choices.isAllowed(placing.with(at, week))) ? 'no-room' : 'order';
}
