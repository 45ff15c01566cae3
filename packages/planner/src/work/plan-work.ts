/** The year's jobs, from stands, lots and boxes, and their hours by week against the hands there are. */
import type { IsoWeek } from '@leywright/measures';
import { handsInWeek } from '../hands/hands.ts';
import type { PlacedStand, PlotGround } from '../plan/ground.ts';
import type { SupplyInput } from '../plan/inputs.ts';
import type { Job, JobKind, Work, WorkWeek } from '../plan/work.ts';
import { type SupplyRun, supplyRun } from '../supply/supply-run.ts';
import { boxJobs } from './jobs/box-jobs.ts';
import { countedCourse, courseJobs, wholeCropJobs } from './jobs/course-jobs.ts';
import { coverJobs } from './jobs/cover-jobs.ts';
import { establishJobs } from './jobs/establish-jobs.ts';
import { habitatJobs } from './jobs/habitat-jobs.ts';
import { harvestJobs } from './jobs/harvest-jobs.ts';
import { type StandAt, standAt } from './jobs/job.ts';
import { netJobs } from './jobs/net-jobs.ts';
import { raiseJobs } from './jobs/raise-jobs.ts';
import { storeJobs } from './jobs/store-jobs.ts';
import { tendJobs } from './jobs/tend-jobs.ts';
import { weedJobs } from './jobs/weed-jobs.ts';
import { inTheirOrder } from './order.ts';
import { addHours } from './rates.ts';

export function planWork(input: SupplyInput): Work {
  return workOf(supplyRun(input));
}

export function workOf(run: SupplyRun): Work {
  const weekNames = Array.from({ length: run.toWeek - run.fromWeek }, (_, at) => run.axis.nameOf(run.fromWeek + at));
  const inYear = new Set<string>(weekNames);
  const counted = new Set(
    run.input.ground.flatMap((plot) => plot.stands.filter(countedOn(run, plot)).map((stand) => stand.what)),
  );
  const all = [
    ...run.input.ground.flatMap((plot) => plotJobs(run, plot)),
    ...boxJobs(run),
    ...storeJobs(run, (crop) => counted.has(crop)),
    ...habitatJobs(run),
  ];
  const jobs = doneJobs(
    run,
    all.flatMap((job) => (job !== null && inYear.has(job.week) ? [job] : [])),
  );
  const sorted = inTheirOrder(
    jobs.toSorted((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0)),
    run.input.ground,
  );
  const weeks = workWeeks(run, weekNames, sorted);
  return { year: run.input.year, jobs: sorted, weeks, yearH: weeks.reduce((sum, week) => sum + week.hours.typ, 0) };
}

function plotJobs(run: SupplyRun, plot: PlotGround): readonly (Job | null)[] {
  const course = countedCourse(run, plot);
  const isCounted = countedOn(run, plot);
  const byCourse = course === null ? [] : courseJobs(run, plot, course);
  const inReach = plot.stands.filter((stand) => touchesYear(run, stand) && !isLost(stand));
  const byStand = inReach.flatMap((stand) => {
    const at = standAt(run, plot, stand);
    const own = ownHours(run, stand);
    if (own !== null) return wholeCropJobs(at, own);
    return isCounted(stand) ? [] : jobsOfStand(at);
  });
  const counted = new Set(plot.stands.filter(isCounted).map((stand) => stand.id));
  return [...byCourse, ...byStand, ...harvestJobs(run, plot, (stand) => counted.has(stand))];
}

/** Whether the hours of a stand are those of its course or of its crop as a whole. */
function countedOn(run: SupplyRun, plot: PlotGround): (stand: PlacedStand) => boolean {
  const course = countedCourse(run, plot);
  return (stand) => (course !== null && stand.courseYear === run.input.year) || ownHours(run, stand) !== null;
}

function jobsOfStand(at: StandAt): readonly (Job | null)[] {
  return [...raiseJobs(at), ...establishJobs(at), ...weedJobs(at), ...tendJobs(at), ...netJobs(at), ...coverJobs(at)];
}

function ownHours(run: SupplyRun, stand: PlacedStand): number | null {
  return stand.kind === 'crop' ? (run.input.crops.cropOf(stand.what)?.hoursPerHa?.value ?? null) : null;
}

/** Stands planted early next year have their plants sown in this one. */
const longestRaisingDays = 120;

function touchesYear(run: SupplyRun, stand: PlacedStand): boolean {
  const { axis, fromWeek, toWeek } = run;
  const first = stand.sownOn !== null && stand.sownOn < stand.from ? stand.sownOn : stand.from;
  return first < axis.textOf(axis.dayOf(toWeek) + longestRaisingDays) && stand.to >= axis.textOf(axis.dayOf(fromWeek));
}

function isLost(stand: PlacedStand): boolean {
  return stand.endedBy === 'lost';
}

/** Shares of jobs done, as recorded; never more than the whole. */
function doneJobs(run: SupplyRun, jobs: readonly Job[]): readonly Job[] {
  const done = new Map<string, number>();
  for (const record of run.input.farm.jobsDone)
    done.set(record.job, Math.min(1, (done.get(record.job) ?? 0) + record.share));
  return done.size === 0 ? jobs : jobs.map((job) => ({ ...job, doneShare: done.get(job.id) ?? 0 }));
}

function workWeeks(run: SupplyRun, names: readonly IsoWeek[], jobs: readonly Job[]): readonly WorkWeek[] {
  const byWeek = new Map<string, Job[]>();
  for (const job of jobs) byWeek.set(job.week, [...(byWeek.get(job.week) ?? []), job]);
  return names.map((week) => {
    const ours = byWeek.get(week) ?? [];
    const byKind: Partial<Record<JobKind, number>> = {};
    for (const job of ours) byKind[job.kind] = (byKind[job.kind] ?? 0) + job.hours.typ;
    return {
      week,
      hours: ours.reduce((sum, job) => addHours(sum, job.hours), { low: 0, typ: 0, high: 0 }),
      handsH: handsInWeek(run.input.farm.people, week, run.input.farm.absences),
      byKind,
      why: `hours/${week}`,
    };
  });
}
