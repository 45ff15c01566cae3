/** What levelling chooses between: for each job the weeks its days allow; what a choice costs; whether it keeps the order. */
import { type Day, dayNumber, mondayOf } from '@leywright/measures';
import type { Job, Work } from '../plan/work.ts';

/** The place of each job's week among the weeks of the work. */
export type Placing = readonly number[];

export interface Cost {
  readonly overH: number;
  readonly movedHWeeks: number;
  readonly isBelow: (other: Cost) => boolean;
}

export interface Choices {
  readonly jobs: readonly Job[];
  /** Jobs with more than one week to choose from, by place, with those weeks. */
  readonly movable: ReadonlyMap<number, readonly number[]>;
  readonly planned: () => Placing;
  readonly hoursOf: (job: number) => number;
  readonly loads: (placing: Placing) => Float64Array;
  readonly cost: (placing: Placing) => Cost;
  readonly overH: (loads: Float64Array) => number;
  /** Hours over the hands that a move of so many hours from one week to another saves. */
  readonly gainH: (
    loads: Float64Array,
    move: { readonly hoursH: number; readonly fromWeek: number; readonly toWeek: number },
  ) => number;
  /** Weeks with more hours than hands. */
  readonly overWeeks: (placing: Placing) => ReadonlySet<number>;
  /** Whether days can be found for all that keep windows and order. */
  readonly isAllowed: (placing: Placing) => boolean;
  /** The day of each job, as near to its own as the order allows. */
  readonly daysOf: (placing: Placing) => readonly number[];
}

const hairH = 1e-9;

export function costOf(overH: number, movedHWeeks: number): Cost {
  return {
    overH,
    movedHWeeks,
    isBelow: (other) =>
      overH < other.overH - hairH || (overH < other.overH + hairH && movedHWeeks < other.movedHWeeks - hairH),
  };
}

export function choicesOf(work: Work, today: Day | null): Choices {
  const placeOf = new Map(work.weeks.map(({ week }, at) => [week as string, at]));
  const jobs = work.jobs.filter((job) => placeOf.has(job.week));
  const timing: Timing = {
    mondays: work.weeks.map(({ week }) => dayNumber(mondayOf(week))),
    planned: jobs.map((job) => placeOf.get(job.week) ?? 0),
    days: jobs.map(({ window, from }) => ({
      fromDay: dayNumber(window.from),
      toDay: dayNumber(window.to),
      ownDay: dayNumber(from),
    })),
  };
  const order = orderOf(jobs);
  return {
    jobs,
    movable: movableOf(jobs, timing, today === null ? Number.NEGATIVE_INFINITY : dayNumber(today)),
    planned: () => timing.planned,
    ...hoursOf(work, jobs, timing),
    isAllowed: (placing) => earliest(placing, order, boundsIn(timing)) !== null,
    daysOf: (placing) => daysNear(placing, order, timing),
  };
}

interface Timing {
  readonly mondays: readonly number[];
  readonly planned: Placing;
  readonly days: readonly { readonly fromDay: number; readonly toDay: number; readonly ownDay: number }[];
}

/** What is begun stays where it is. */
function movableOf(jobs: readonly Job[], { mondays, planned, days }: Timing, firstDay: number): Choices['movable'] {
  const movable = new Map<number, readonly number[]>();
  for (const [at, { fromDay, toDay }] of days.entries()) {
    if ((jobs[at]?.doneShare ?? 0) > 0) continue;
    const weeks = new Set([planned[at] ?? 0, ...weeksWithin(mondays, Math.max(fromDay, firstDay), toDay)]);
    if (weeks.size > 1)
      movable.set(
        at,
        [...weeks].sort((a, b) => a - b),
      );
  }
  return movable;
}

function hoursOf(
  work: Work,
  jobs: readonly Job[],
  { planned, mondays }: Timing,
): Pick<Choices, 'hoursOf' | 'loads' | 'overH' | 'cost' | 'gainH' | 'overWeeks'> {
  const caps = work.weeks.map(({ handsH }) => handsH ?? Number.POSITIVE_INFINITY);
  const hours = jobs.map((job) => job.hours.typ);
  const loads = (placing: Placing) => {
    const sums = new Float64Array(mondays.length);
    placing.forEach((week, at) => {
      sums[week] = (sums[week] ?? 0) + (hours[at] ?? 0);
    });
    return sums;
  };
  const overH = (sums: Float64Array) => sums.reduce((sum, load, at) => sum + Math.max(0, load - (caps[at] ?? 0)), 0);
  return {
    hoursOf: (at) => hours[at] ?? 0,
    loads,
    overH,
    cost: (placing) =>
      costOf(
        overH(loads(placing)),
        placing.reduce((sum, week, at) => sum + (hours[at] ?? 0) * Math.abs(week - (planned[at] ?? 0)), 0),
      ),
    gainH: (sums, { hoursH, fromWeek, toWeek }) => {
      const over = (week: number, moreH: number) => Math.max(0, (sums[week] ?? 0) + moreH - (caps[week] ?? 0));
      return over(fromWeek, 0) - over(fromWeek, -hoursH) + over(toWeek, 0) - over(toWeek, hoursH);
    },
    overWeeks: (placing) =>
      new Set([...loads(placing)].flatMap((load, week) => (load > (caps[week] ?? 0) + hairH ? [week] : []))),
  };
}

/** A job that is not moved may be meant for days outside its window as the plan has it; it stays allowed where it is. */
function boundsIn({ mondays, planned, days }: Timing): BoundsOf {
  return (placing, at) => {
    const monday = mondays[placing[at] ?? 0] ?? 0;
    const { fromDay, toDay, ownDay } = days[at] ?? { fromDay: 0, toDay: 0, ownDay: 0 };
    const isHome = placing[at] === planned[at];
    return {
      low: Math.max(monday, isHome ? Math.min(fromDay, ownDay) : fromDay),
      high: Math.min(monday + 6, isHome ? Math.max(toDay, ownDay) : toDay),
    };
  };
}

function weeksWithin(mondays: readonly number[], from: number, to: number): readonly number[] {
  return mondays.flatMap((monday, at) => (monday + 6 >= from && monday <= to ? [at] : []));
}

/** Jobs so that each stands after those that come before it, and their places. */
interface Order {
  readonly sorted: readonly number[];
  readonly before: readonly (readonly number[])[];
}

function orderOf(jobs: readonly Job[]): Order {
  const placeOf = new Map(jobs.map((job, at) => [job.id, at]));
  const before = jobs.map((job) =>
    job.after.flatMap((id) => {
      const at = placeOf.get(id);
      return at === undefined ? [] : [at];
    }),
  );
  const sorted: number[] = [];
  const seen = new Set<number>();
  const visit = (at: number) => {
    if (seen.has(at)) return;
    seen.add(at);
    for (const one of before[at] ?? []) visit(one);
    sorted.push(at);
  };
  jobs.forEach((_, at) => {
    visit(at);
  });
  return { sorted, before };
}

type BoundsOf = (placing: Placing, at: number) => { readonly low: number; readonly high: number };

/** The earliest day of each job that keeps week, window and order; null when some job has none. */
function earliest(placing: Placing, { sorted, before }: Order, boundsOf: BoundsOf): readonly number[] | null {
  const days = new Array<number>(placing.length).fill(0);
  for (const at of sorted) {
    const { low, high } = boundsOf(placing, at);
    const day = (before[at] ?? []).reduce((latest, one) => Math.max(latest, days[one] ?? latest), low);
    if (day > high) return null;
    days[at] = day;
  }
  return days;
}

/** Each job as near to its own day as those before and after it leave room. */
function daysNear(placing: Placing, { sorted, before }: Order, timing: Timing): readonly number[] {
  const boundsOf = boundsIn(timing);
  const latest = placing.map((_, at) => boundsOf(placing, at).high);
  for (const at of sorted.toReversed())
    for (const one of before[at] ?? []) latest[one] = Math.min(latest[one] ?? 0, latest[at] ?? 0);
  const days = new Array<number>(placing.length).fill(0);
  for (const at of sorted) {
    const low = (before[at] ?? []).reduce((most, one) => Math.max(most, days[one] ?? most), boundsOf(placing, at).low);
    const own = timing.days[at]?.ownDay ?? low;
    days[at] = Math.min(Math.max(own, low), Math.max(low, latest[at] ?? low));
  }
  return days;
}
