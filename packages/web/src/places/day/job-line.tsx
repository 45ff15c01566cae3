import { workWords } from '@leywright/api';
import type { Shows } from '@leywright/book';
import type { IsoWeek } from '@leywright/measures';
import type { Job, JobKind, Plan } from '@leywright/planner';
import { Link } from '@tanstack/react-router';
import { dayAndMonth } from '../../look/head/year-weeks.ts';
import { RowMark, type RowMarkName } from '../../look/marks/row-mark.tsx';
import { areaText } from '../../pictures/ribbon/gutter.tsx';
import { words } from '../../words.ts';

/** The mark of each kind of job. */
export const jobMarks: Readonly<Record<JobKind, RowMarkName>> = {
  sow: 'sow',
  'sow-modules': 'sow',
  plant: 'plant',
  hoe: 'hoe',
  'hand-weed': 'hoe',
  net: 'net',
  unnet: 'net',
  undersow: 'undersow',
  lift: 'lift',
  cut: 'cut',
  'turn-in': 'turn-in',
  mow: 'mow',
  'sow-cover': 'sow',
  'make-beds': 'hoe',
  pack: 'store',
  deliver: 'store',
  'whole-course': 'look',
  'false-seedbed': 'hoe',
  'sow-seedbed': 'sow',
  'prick-out': 'plant',
  'tend-plants': 'look',
  'harden-off': 'look',
  chit: 'store',
  'lay-mulch': 'net',
  flame: 'hoe',
  brush: 'hoe',
  ridge: 'hoe',
  irrigate: 'look',
  stake: 'plant',
  train: 'look',
  top: 'cut',
  'haulm-off': 'mow',
  'into-store': 'store',
  grade: 'store',
  'cut-hedge': 'mow',
  'mow-margin': 'mow',
};

/** One line of the day: a job, or the same job on several pieces of a plot by the same day. */
export interface DayJob extends Job {
  readonly pieces: number;
  /** The jobs of the plan that it stands for. */
  readonly ids: readonly string[];
}

/** The jobs of a week that are not done, on one plot or, for null, off the plots. */
export function jobsOf(plan: Plan, week: IsoWeek, plot: string | null): readonly DayJob[] {
  const lines = new Map<string, DayJob>();
  for (const job of plan.work.jobs) {
    if (job.week !== week || job.plot !== plot || job.doneShare >= 1) continue;
    const same = [job.kind, job.name, job.to, job.amountUnit].join('|');
    const before = lines.get(same);
    lines.set(same, before === undefined ? { ...job, pieces: 1, ids: [job.id] } : together(before, job));
  }
  return [...lines.values()];
}

function together(line: DayJob, job: Job): DayJob {
  const { low, typ, high } = line.hours;
  return {
    ...line,
    pieces: line.pieces + 1,
    ids: [...line.ids, job.id],
    areaM2: sum(line.areaM2, job.areaM2),
    rowM: sum(line.rowM, job.rowM),
    amount: sum(line.amount, job.amount),
    hours: { low: low + job.hours.low, typ: typ + job.hours.typ, high: high + job.hours.high },
  };
}

/** Not known once a part of it is not. */
function sum(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : a + b;
}

/** One job: its mark, what and how much, how long it takes. */
export function JobLine({
  job,
  isNext,
  shows,
}: {
  readonly job: DayJob;
  readonly isNext: boolean;
  readonly shows: Shows;
}) {
  const title = workWords.jobTitle(job);
  return (
    <li className={isNext ? 'job next' : 'job'}>
      <RowMark mark={jobMarks[job.kind]} width={54} />
      <div>
        <Link to="/record/job/$job" params={{ job: job.id }} aria-label={words.record.recordJob(title)}>
          <b>{title}</b>
        </Link>
        <span>{howMuch(job, shows)}</span>
      </div>
      <span className="hours">{hoursText(job.hours.typ)}</span>
    </li>
  );
}

function howMuch(job: DayJob, shows: Shows): string {
  const parts = [
    job.amount === null || job.amountUnit === null
      ? null
      : `${Math.round(job.amount).toLocaleString('en-GB')} ${job.amountUnit}`,
    job.rowM === null ? null : `${Math.round(job.rowM).toLocaleString('en-GB')} m of row`,
    job.areaM2 === null ? null : job.areaM2 < 1000 ? `${Math.round(job.areaM2)} m²` : areaText(job.areaM2, shows.area),
    job.pieces === 1 ? null : words.day.pieces(job.pieces),
    `${words.day.by} ${dayAndMonth(job.to)}`,
    job.caution === null ? null : words.day.mind(job.caution),
  ];
  return parts.filter((part) => part !== null).join(', ');
}

/** "2.5 h", whole from ten hours on. */
export function hoursText(hours: number): string {
  return hours >= 10 ? `${Math.round(hours)} h` : `${Number(hours.toFixed(1))} h`;
}
