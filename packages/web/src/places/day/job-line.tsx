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
  'false-seedbed': { mark: 'hoe', verb: 'False seedbed for' },
  'sow-seedbed': { mark: 'sow', verb: 'Sow in the seedbed:' },
  'prick-out': { mark: 'plant', verb: 'Pot on' },
  'tend-plants': { mark: 'look', verb: 'Water and turn the trays of' },
  'harden-off': { mark: 'look', verb: 'Harden off' },
  chit: { mark: 'store', verb: 'Set up to sprout:' },
  'lay-mulch': { mark: 'net', verb: 'Lay mulch for' },
  flame: { mark: 'hoe', verb: 'Flame' },
  brush: { mark: 'hoe', verb: 'Brush' },
  ridge: { mark: 'hoe', verb: 'Ridge up' },
  irrigate: { mark: 'look', verb: 'Irrigate' },
  stake: { mark: 'plant', verb: 'Stake' },
  train: { mark: 'look', verb: 'Train and side-shoot' },
  top: { mark: 'cut', verb: 'Take the tops out of' },
  'haulm-off': { mark: 'mow', verb: 'Flail the haulm off' },
  'into-store': { mark: 'store', verb: 'Into store:' },
  grade: { mark: 'store', verb: 'Grade and wash' },
  'cut-hedge': { mark: 'mow', verb: 'Cut the hedge:' },
  'mow-margin': { mark: 'mow', verb: 'Mow' },
};

/** One line of the day: a job, or the same job on several pieces of a plot by the same day. */
export interface DayJob extends Job {
  readonly pieces: number;
}

/** The jobs of a week that are not done, on one plot or, for null, off the plots. */
export function jobsOf(plan: Plan, week: IsoWeek, plot: string | null): readonly DayJob[] {
  const lines = new Map<string, DayJob>();
  for (const job of plan.work.jobs) {
    if (job.week !== week || job.plot !== plot || job.doneShare >= 1) continue;
    const same = [job.kind, job.name, job.to, job.amountUnit].join('|');
    const before = lines.get(same);
    lines.set(same, before === undefined ? { ...job, pieces: 1 } : together(before, job));
  }
  return [...lines.values()];
}

function together(line: DayJob, job: Job): DayJob {
  const { low, typ, high } = line.hours;
  return {
    ...line,
    pieces: line.pieces + 1,
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
  const { mark, verb } = jobWords[job.kind];
  return (
    <li className={isNext ? 'job next' : 'job'}>
      <RowMark mark={mark} width={54} />
      <div>
        <b>
          {verb} {job.name.charAt(0).toLowerCase() + job.name.slice(1)}
        </b>
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
