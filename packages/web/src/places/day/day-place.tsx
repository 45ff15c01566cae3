import { workWords } from '@leywright/api';
import type { PlotGround, WorkWeek } from '@leywright/planner';
import { Link } from '@tanstack/react-router';
import { Fragment } from 'react';
import { useAppState } from '../../app-state.tsx';
import { Figure } from '../../look/page/figure.tsx';
import { Headline } from '../../look/page/headline.tsx';
import { TableTwin, type TwinTable } from '../../look/page/table-twin.tsx';
import { words } from '../../words.ts';
import type { FarmView } from '../../worker/plan-source.ts';
import { WithFarm } from '../no-farm.tsx';
import { RecordList } from '../record/record-line.tsx';
import { HoursBricks } from './hours-bricks.tsx';
import { hoursText, JobLine, jobsOf } from './job-line.tsx';
import { WalkLine } from './walk-line.tsx';

/** What is to be done in the chosen week, in the order of the walk. */
export function DayPlace() {
  return <WithFarm>{(view) => <Day view={view} />}</WithFarm>;
}

function Day({ view }: { readonly view: FarmView }) {
  const { week } = useAppState();
  const { plan } = view;
  const stops = plan.ground
    .map((plot) => ({ plot, jobs: jobsOf(plan, week, plot.plot), done: doneOn(view, plot, week) }))
    .filter(({ jobs, done }) => jobs.length > 0 || done !== null);
  const yard = jobsOf(plan, week, null);
  const workWeek = plan.work.weeks.find((one) => one.week === week);
  const next = stops.find(({ jobs }) => jobs.length > 0)?.jobs[0]?.id ?? yard[0]?.id;
  return (
    <>
      <Headline sentence={view.told.headline.day} />
      <div className="day">
        <WalkLine letters={stops.map(({ plot }) => plot.letter)}>
          {stops.map(({ plot, jobs, done }) => (
            <Fragment key={plot.plot}>
              <header>
                <h2>{plot.name}</h2>
                {done === null ? null : (
                  <p>
                    {words.day.doneBefore} {done}
                  </p>
                )}
              </header>
              <ol className="jobs">
                {jobs.map((job) => (
                  <JobLine key={job.id} job={job} isNext={job.id === next} shows={view.shows} />
                ))}
              </ol>
            </Fragment>
          ))}
        </WalkLine>
        {stops.length === 0 ? <p className="lead">{words.day.none}</p> : null}
        <aside className="day-side">
          <nav className="record-ways" aria-label={words.record.ways}>
            <Link to="/record/saw">{words.record.sawButton}</Link>
            <Link to="/record/did">{words.record.didButton}</Link>
          </nav>
          {workWeek === undefined ? null : <Hours workWeek={workWeek} />}
          {yard.length === 0 ? null : (
            <>
              <h2>{words.day.yard}</h2>
              <ol className="jobs small">
                {yard.map((job) => (
                  <JobLine key={job.id} job={job} isNext={job.id === next} shows={view.shows} />
                ))}
              </ol>
            </>
          )}
          <RecordList records={view.records} />
        </aside>
      </div>
      <TableTwin tables={() => [weekTwin(view, week)]} />
    </>
  );
}

function Hours({ workWeek }: { readonly workWeek: WorkWeek }) {
  return (
    <section className="hours-week">
      <h2>
        <Figure id={workWeek.why}>{hoursText(workWeek.hours.typ)}</Figure>{' '}
        <small>
          {hoursText(workWeek.hours.low)} to {hoursText(workWeek.hours.high)}
        </small>
      </h2>
      <HoursBricks askedH={workWeek.hours.typ} handsH={workWeek.handsH} />
      <p>
        {workWeek.handsH === null ? words.day.handsUnknown : `${words.day.hoursThere}: ${hoursText(workWeek.handsH)}`}
      </p>
    </section>
  );
}

function doneOn({ plan }: FarmView, { plot }: PlotGround, week: string): string | null {
  const done = plan.work.jobs
    .filter((job) => job.week === week && job.plot === plot && job.doneShare >= 1)
    .map((job) => workWords.jobTitle(job).toLowerCase());
  return done.length === 0 ? null : done.join(', ');
}

function weekTwin({ plan }: FarmView, week: string): TwinTable {
  return {
    caption: words.day.thisWeek,
    columns: ['Job', 'Plot', 'From', 'By', 'Hours', 'Done'],
    rows: plan.work.jobs
      .filter((job) => job.week === week)
      .map((job) => ({
        id: job.id,
        cells: [
          workWords.jobTitle(job),
          plan.ground.find(({ plot }) => plot === job.plot)?.name ?? words.day.yard,
          job.from,
          job.to,
          `${hoursText(job.hours.low)} to ${hoursText(job.hours.high)}`,
          `${Math.round(job.doneShare * 100)} %`,
        ],
      })),
  };
}
