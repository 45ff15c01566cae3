/** Work, the day and the orders of a farm as `leywright work|day|order --json` and the API answer them. */
import type { Farm } from '@leywright/book';
import { type Day, weekOf } from '@leywright/measures';
import { hands, type Job, orders, type Plan } from '@leywright/planner';
import { jobAmount, jobHow, jobTitle } from './job-words.ts';

/** The year's work: hours by week before and after levelling, what moves and what cannot, and the totals by everything. */
export function tellWork(farm: Farm, plan: Plan) {
  const { work, today } = plan;
  const levelled = hands.levelWork(work, { today });
  const by = Object.fromEntries(
    hands.hoursBy.map((one) => [one, Object.fromEntries(hands.hoursAddedUp(work, one, farm))]),
  );
  return {
    farm: plan.farm.name,
    today,
    year: work.year,
    yearH: work.yearH,
    overBeforeH: levelled.overBeforeH,
    overAfterH: levelled.overAfterH,
    proven: levelled.proven,
    weeks: work.weeks.map(({ week, hours, handsH }, at) => ({
      week,
      hours,
      handsH,
      levelledH: levelled.weeks[at]?.hoursH ?? hours.typ,
    })),
    moved: levelled.moved.map((one) => ({ ...one, title: titleOf(work.jobs, one.job) })),
    stuck: levelled.stuck.map((one) => ({ ...one, title: titleOf(work.jobs, one.job) })),
    hoursBy: by,
    jobs: work.jobs,
  };
}

function titleOf(jobs: readonly Job[], id: string): string {
  const job = jobs.find((one) => one.id === id);
  return job === undefined ? id : jobTitle(job);
}

/** What is to be done in the week of the farm's day, in the order of the walk; for one person or for all. */
export function tellDay(farm: Farm, plan: Plan, person: string | null) {
  const week = weekOf(plan.today);
  const walk = new Map(plan.ground.map((plot, at) => [plot.plot, at]));
  const due = jobsFor(farm, plan, person).filter(({ job }) => job.doneShare < 1 && isDue(job, plan.today, week));
  const placeOf = (job: Job) => (job.plot === null ? walk.size : (walk.get(job.plot) ?? walk.size));
  const sorted = due.toSorted((a, b) => placeOf(a.job) - placeOf(b.job) || (a.job.from < b.job.from ? -1 : 1));
  return {
    farm: plan.farm.name,
    today: plan.today,
    week,
    person,
    hoursH: due.reduce((sum, one) => sum + one.hoursH * (1 - one.job.doneShare), 0),
    jobs: sorted.map(({ job, hoursH }) => ({
      id: job.id,
      letter: job.letter,
      plot: plan.ground.find((one) => one.plot === job.plot)?.name ?? null,
      title: jobTitle(job),
      amount: jobAmount(job),
      how: jobHow(job),
      hoursH: hoursH * (1 - job.doneShare),
      from: job.from,
      by: job.window.to,
      isLate: job.week < week,
      caution: job.caution,
    })),
    sownToday: orders.sownOnDay(orders.plantsRaised(farm, plan), plan.today),
  };
}

/** This week's, and what was meant for an earlier one and may still be done. */
function isDue(job: Job, today: Day, week: string): boolean {
  return job.week === week || (job.week < week && job.window.to >= today);
}

/** Seed to order and plants to raise. */
export function tellOrders(farm: Farm, plan: Plan) {
  const found = orders.seedOrders(farm, plan);
  return {
    farm: plan.farm.name,
    today: plan.today,
    year: plan.year,
    term: found.term,
    orders: found.orders,
    lines: found.lines,
    plants: orders.plantsRaised(farm, plan),
  };
}

/** A person's jobs with their share of the hours; for nobody in particular, all jobs with all of theirs. */
export function jobsFor(
  farm: Farm,
  plan: Plan,
  person: string | null,
): readonly { readonly job: Job; readonly hoursH: number }[] {
  if (person === null) return plan.work.jobs.map((job) => ({ job, hoursH: job.hours.typ }));
  const shares = new Map<string, number>();
  for (const line of hands.assignHands(plan.work, farm))
    if (line.person === person) shares.set(line.job, (shares.get(line.job) ?? 0) + line.hoursH);
  return plan.work.jobs.flatMap((job) => {
    const hoursH = shares.get(job.id);
    return hoursH === undefined ? [] : [{ job, hoursH }];
  });
}
