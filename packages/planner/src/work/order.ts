/**
 * Which job comes after which: on a stand by the kinds of jobs, and between stands by the ground that one leaves to the next.
 *
 * Holds   no job comes after one that is meant for a later day, so that no plan begins with its order broken; nothing comes after itself.
 */
import { addDays } from '@leywright/measures';
import type { PlacedStand, PlotGround } from '../plan/ground.ts';
import type { Job, JobKind } from '../plan/work.ts';
import { husbandry } from './husbandry.ts';

/** What frees the ground, and what needs it free. */
const frees: readonly JobKind[] = ['turn-in', 'lift', 'cut', 'haulm-off', 'unnet'];
const needsFree: readonly JobKind[] = ['make-beds', 'false-seedbed', 'lay-mulch', 'sow', 'plant', 'sow-cover'];

/** What the order is read from: jobs by stand, and for each stand what was there before and what it is sown into. */
interface Ordering {
  readonly jobsOf: (stand: string) => readonly Job[];
  readonly before: ReadonlyMap<string, readonly PlacedStand[]>;
  readonly hosts: ReadonlyMap<string, string>;
}

/** The jobs with what comes before each; in the order they came. */
export function inTheirOrder(jobs: readonly Job[], ground: readonly PlotGround[]): readonly Job[] {
  const ordering = orderingOf(jobs, ground);
  return jobs.map((job) => {
    if (job.stand === null) return job;
    const after = [...onItsStand(job, ordering), ...onItsGround(job, ordering), ...inItsHost(job, ordering)];
    return after.length === 0 ? job : { ...job, after: [...new Set(after)] };
  });
}

function orderingOf(jobs: readonly Job[], ground: readonly PlotGround[]): Ordering {
  const byStand = grouped(jobs);
  const stands = ground.flatMap((plot) =>
    plot.stands.filter((one) => byStand.has(one.id)).map((one) => ({ one, plot })),
  );
  return {
    jobsOf: (stand) => byStand.get(stand) ?? [],
    before: new Map(stands.map(({ one, plot }) => [one.id, standsBefore(one, plot.stands)])),
    hosts: new Map(stands.flatMap(({ one }) => (one.undersownIn === null ? [] : [[one.id, one.undersownIn] as const]))),
  };
}

function grouped(jobs: readonly Job[]): ReadonlyMap<string, readonly Job[]> {
  const byStand = new Map<string, Job[]>();
  for (const job of jobs) {
    if (job.stand === null) continue;
    const ours = byStand.get(job.stand);
    if (ours === undefined) byStand.set(job.stand, [job]);
    else ours.push(job);
  }
  return byStand;
}

function onItsStand(job: Job, { jobsOf }: Ordering): readonly string[] {
  const own = jobsOf(job.stand ?? '');
  return husbandry[job.kind].comesAfter.flatMap((kind) => lastBefore(job, own, kind));
}

function onItsGround(job: Job, { before, jobsOf }: Ordering): readonly string[] {
  if (!needsFree.includes(job.kind)) return [];
  const stands = before.get(job.stand ?? '') ?? [];
  return stands.flatMap((stand) => frees.flatMap((kind) => lastBefore(job, jobsOf(stand.id), kind)));
}

function inItsHost(job: Job, { hosts, jobsOf }: Ordering): readonly string[] {
  const host = job.kind === 'undersow' ? hosts.get(job.stand ?? '') : undefined;
  if (host === undefined) return [];
  return (['sow', 'plant', 'hoe'] as const).flatMap((kind) => lastBefore(job, jobsOf(host), kind));
}

/** The last job of a kind that is meant for no later a day. */
function lastBefore(job: Job, some: readonly Job[], kind: JobKind): readonly string[] {
  const last = some.findLast((one) => one.kind === kind && one.id !== job.id && comesBefore(one, job));
  return last === undefined ? [] : [last.id];
}

/** By day; on one day, where both are of one kind, by their place in the list (their ids tell which pass). */
function comesBefore(one: Job, job: Job): boolean {
  return one.from < job.from || (one.from === job.from && one.kind !== job.kind);
}

/** Stands that were on this ground just before: their last day is no more than half a year earlier. */
function standsBefore(stand: PlacedStand, stands: readonly PlacedStand[]): readonly PlacedStand[] {
  const early = addDays(stand.from, -183);
  return stands.filter(
    (one) =>
      one.id !== stand.id &&
      one.id !== stand.undersownIn &&
      one.to <= stand.from &&
      one.to >= early &&
      one.span.fromShare < stand.span.toShare &&
      one.span.toShare > stand.span.fromShare,
  );
}
