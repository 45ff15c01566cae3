import { workWords } from '@leywright/api';
import { addDays, type IsoWeek } from '@leywright/measures';
import { hands, type Job, type Slip } from '@leywright/planner';
import { useMemo, useState } from 'react';
import { dayAndMonth, spokenWeek } from '../../look/head/year-weeks.ts';
import { words } from '../../words.ts';
import type { FarmView } from '../../worker/plan-source.ts';
import { hoursText } from '../day/job-line.tsx';

const shown = 40;

/** The jobs of a week with the days they have, and what slips when one of them waits a week. */
export function WeekJobs({ view, week }: { readonly view: FarmView; readonly week: IsoWeek }) {
  const { work, ground } = view.plan;
  const [waiting, setWaiting] = useState<string | null>(null);
  const jobs = useMemo(
    () =>
      work.jobs.filter((job) => job.week === week && job.doneShare < 1).toSorted((a, b) => b.hours.typ - a.hours.typ),
    [work, week],
  );
  const waits = jobs.find((job) => job.id === waiting) ?? null;
  const slips = useMemo(
    () => (waits === null ? [] : hands.slipOf(work, waits.id, addDays(waits.from, 7))),
    [work, waits],
  );
  const plotOf = (job: Job) => ground.find((plot) => plot.plot === job.plot)?.name ?? words.day.yard;
  return (
    <section className="week-jobs" aria-labelledby="week-jobs-title">
      <h2 id="week-jobs-title">{words.work.jobsOf(spokenWeek(week))}</h2>
      {jobs.length === 0 ? <p>{words.day.none}</p> : null}
      <ol>
        {jobs.slice(0, shown).map((job) => (
          <li key={job.id}>
            <div>
              <b>{workWords.jobTitle(job)}</b>
              <span>
                {plotOf(job)}, {hoursText(job.hours.typ)}, {words.work.between} {dayAndMonth(job.window.from)}{' '}
                {words.ribbon.to} {dayAndMonth(job.window.to)}. {workWords.jobHow(job)}
              </span>
            </div>
            <button
              type="button"
              className="link"
              aria-expanded={job.id === waiting}
              aria-label={words.work.ifItWaits(workWords.jobTitle(job), plotOf(job))}
              onClick={() => setWaiting(job.id === waiting ? null : job.id)}
            >
              {words.work.waits}
            </button>
            {waits?.id === job.id ? <Slips slips={slips} jobs={work.jobs} own={job.id} /> : null}
          </li>
        ))}
      </ol>
      {jobs.length > shown ? <p>{words.work.more(jobs.length - shown)}</p> : null}
    </section>
  );
}

function Slips({
  slips,
  jobs,
  own,
}: {
  readonly slips: readonly Slip[];
  readonly jobs: readonly Job[];
  readonly own: string;
}) {
  const others = slips.filter((slip) => slip.job !== own);
  const isTooLate = slips.find((slip) => slip.job === own)?.isTooLate === true;
  return (
    <div className="slips" role="status">
      <p>{isTooLate ? words.work.tooLate : words.work.inTime}</p>
      {others.length === 0 ? <p>{words.work.nothingSlips}</p> : null}
      <ul>
        {others.map((slip) => {
          const job = jobs.find((one) => one.id === slip.job);
          return (
            <li key={slip.job}>
              {job === undefined ? slip.job : workWords.jobTitle(job)}: {dayAndMonth(slip.from)} {words.work.becomes}{' '}
              {dayAndMonth(slip.to)}
              {slip.isTooLate ? ` (${words.work.late})` : ''}
            </li>
          );
        })}
      </ul>
    </div>
  );
}
