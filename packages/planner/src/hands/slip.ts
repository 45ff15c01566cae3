/**
 * What slips when a job waits: the jobs after it, and whether each still falls in its days.
 *
 * Rule    What is sown or planted takes with it all that grows from it, by as many days; all else only waits until what comes before it is done.
 */
import { type Day, dayAt, dayNumber } from '@leywright/measures';
import type { Job, JobKind, Work } from '../plan/work.ts';

export interface Slip {
  readonly job: string;
  readonly from: Day;
  readonly to: Day;
  readonly slipDays: number;
  /** Its own days are over by then. */
  readonly isTooLate: boolean;
}

const grows: readonly JobKind[] = ['sow', 'plant', 'sow-modules', 'sow-seedbed', 'sow-cover', 'undersow'];

/** The job itself and all that slip with it, by day; empty when there is no such job. */
export function slipOf(work: Work, jobId: string, toDay: Day): readonly Slip[] {
  const job = work.jobs.find((one) => one.id === jobId);
  if (job === undefined) return [];
  const newDays = followed(work, job, dayNumber(toDay));
  return work.jobs.flatMap((one) => {
    const day = newDays.get(one.id);
    if (day === undefined) return [];
    const last = Math.max(dayNumber(one.window.to), dayNumber(one.to));
    const slipDays = day - dayNumber(one.from);
    return [{ job: one.id, from: one.from, to: dayAt(day), slipDays, isTooLate: day > last }];
  });
}

/** The new day of each job that moves, followed along the order until nothing moves further. */
function followed(work: Work, job: Job, toDay: number): ReadonlyMap<string, number> {
  const followers = followersOf(work.jobs);
  const newDays = new Map<string, number>([[job.id, toDay]]);
  const queue = [job];
  for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
    for (const one of followers.get(next.id) ?? []) {
      const least = leastDay(next, newDays.get(next.id) ?? 0, one);
      if (least <= (newDays.get(one.id) ?? dayNumber(one.from))) continue;
      newDays.set(one.id, least);
      queue.push(one);
    }
  }
  return newDays;
}

function leastDay(before: Job, beforeDay: number, job: Job): number {
  const movedDays = Math.max(0, beforeDay - dayNumber(before.from));
  return grows.includes(before.kind) ? dayNumber(job.from) + movedDays : beforeDay;
}

function followersOf(jobs: readonly Job[]): ReadonlyMap<string, readonly Job[]> {
  const followers = new Map<string, Job[]>();
  for (const job of jobs) for (const id of job.after) followers.set(id, [...(followers.get(id) ?? []), job]);
  return followers;
}
