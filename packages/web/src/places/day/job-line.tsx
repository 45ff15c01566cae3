import type { Shows } from '@leywright/book';
import type { IsoWeek } from '@leywright/measures';
import type { Job, JobKind, Plan } from '@leywright/planner';
import { dayAndMonth } from '../../look/head/year-weeks.ts';
import { RowMark, type RowMarkName } from '../../look/marks/row-mark.tsx';
import { areaText } from '../../pictures/ribbon/gutter.tsx';
import { words } from '../../words.ts';

/** The mark and the verb of each kind of job. */
export const jobWords: Readonly<Record<JobKind, { readonly mark: RowMarkName; readonly verb: string }>> = {
  sow: { mark: 'sow', verb: 'Sow' },
  'sow-modules': { mark: 'sow', verb: 'Sow in modules:' },
  plant: { mark: 'plant', verb: 'Plant out' },
  hoe: { mark: 'hoe', verb: 'Hoe' },
  'hand-weed': { mark: 'hoe', verb: 'Hand-weed' },
  net: { mark: 'net', verb: 'Net' },
  unnet: { mark: 'net', verb: 'Take the nets off' },
  undersow: { mark: 'undersow', verb: 'Undersow' },
  lift: { mark: 'lift', verb: 'Lift' },
  cut: { mark: 'cut', verb: 'Cut' },
  'turn-in': { mark: 'turn-in', verb: 'Turn in' },
  mow: { mark: 'mow', verb: 'Mow' },
  'sow-cover': { mark: 'sow', verb: 'Sow' },
  'make-beds': { mark: 'hoe', verb: 'Make beds for' },
  pack: { mark: 'store', verb: 'Pack' },
  deliver: { mark: 'store', verb: 'Deliver' },
  'whole-course': { mark: 'look', verb: 'All work on' },
};

/** The jobs of a week that are not done, on one plot or, for null, off the plots. */
export function jobsOf(plan: Plan, week: IsoWeek, plot: string | null): readonly Job[] {
  return plan.work.jobs.filter((job) => job.week === week && job.plot === plot && job.doneShare < 1);
}

/** One job: its mark, what and how much, how long it takes. */
export function JobLine({
  job,
  isNext,
  shows,
}: {
  readonly job: Job;
  readonly isNext: boolean;
  readonly shows: Shows;
}) {
  const { mark, verb } = jobWords[job.kind];
  return (
    <li className={isNext ? 'job next' : 'job'}>
      <RowMark mark={mark} width={54} />
      <div>
        <b>
          {verb} {job.name.charAt(0).toLowerCase() + job.name.slice(1)}
        </b>
        <span>{howMuch(job, shows)}</span>
        {job.caution === null ? null : <span className="to-right">{job.caution}</span>}
      </div>
      <span className="hours">{hoursText(job.hours.typ)}</span>
    </li>
  );
}

function howMuch(job: Job, shows: Shows): string {
  const parts = [
    job.amount === null || job.amountUnit === null
      ? null
      : `${Math.round(job.amount).toLocaleString('en-GB')} ${job.amountUnit}`,
    job.rowM === null ? null : `${Math.round(job.rowM).toLocaleString('en-GB')} m of row`,
    job.areaM2 === null ? null : job.areaM2 < 1000 ? `${Math.round(job.areaM2)} m²` : areaText(job.areaM2, shows.area),
    `${words.day.by} ${dayAndMonth(job.to)}`,
  ];
  return parts.filter((part) => part !== null).join(', ');
}

/** "2.5 h", whole from ten hours on. */
export function hoursText(hours: number): string {
  return hours >= 10 ? `${Math.round(hours)} h` : `${Number(hours.toFixed(1))} h`;
}
