import { workWords } from '@leywright/api';
import { useNavigate, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { words } from '../../words.ts';
import type { FarmView } from '../../worker/plan-source.ts';
import { isLifting } from '../../worker/record/bodies.ts';
import { type DayJob, jobsOf } from '../day/job-line.tsx';
import { WithFarm } from '../no-farm.tsx';
import { readFigure } from './blanks.tsx';
import { RecordFrame } from './record-frame.tsx';

const said = words.record;

/** A planned job, opened by one tap and recorded by the next; of what is lifted the kilos stand there to be changed. */
export function JobPlace() {
  const { job: id } = useParams({ strict: false }) as { readonly job?: string };
  return <WithFarm>{(view) => <OpenJob key={id} view={view} id={id ?? ''} />}</WithFarm>;
}

function OpenJob({ view, id }: { readonly view: FarmView; readonly id: string }) {
  // As it stood when it was opened: once recorded it leaves the list, and the page must not change under the thumb.
  const [job] = useState(() => lineOf(view, id));
  return job === null ? <p className="lead">{said.jobGone}</p> : <RecordJob view={view} job={job} />;
}

function lineOf({ plan }: FarmView, id: string): DayJob | null {
  const job = plan.work.jobs.find((one) => one.id === id);
  if (job === undefined) return null;
  return jobsOf(plan, job.week, job.plot).find((line) => line.ids.includes(id)) ?? null;
}

function RecordJob({ view, job }: { readonly view: FarmView; readonly job: DayJob }) {
  const { source } = useAppState();
  const navigate = useNavigate();
  const isWeighed = isLifting(job);
  const [figure, setFigure] = useState(() => (job.amount === null ? '' : String(Math.round(job.amount))));
  const plot = view.plan.ground.find((one) => one.plot === job.plot);
  const record = async () => {
    const ids = await source.record({ kind: 'jobs', jobs: job.ids, kg: isWeighed ? readFigure(figure) : null });
    await navigate({ to: '/record/done', hash: ids.join(',') });
    return null;
  };
  return (
    <RecordFrame title={workWords.jobTitle(job)} onRecord={record}>
      <p className="at-plot">
        {plot === undefined ? null : <b>{plot.letter}</b>} {plot?.name ?? words.day.yard}
      </p>
      {isWeighed ? <Keypad figure={figure} asked={job.amount} onType={setFigure} /> : null}
    </RecordFrame>
  );
}

interface KeypadProps {
  readonly figure: string;
  readonly asked: number | null;
  readonly onType: (figure: string) => void;
}

const keys = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '.', '0'] as const;

/** Kilos by wide keys; the first key typed takes the place of what was asked for. */
function Keypad({ figure, asked, onType }: KeypadProps) {
  const [isTyped, setTyped] = useState(false);
  const press = (key: string) => {
    onType(isTyped ? figure + key : key);
    setTyped(true);
  };
  return (
    <>
      <p className="kilos">
        <input
          aria-label={said.kilos}
          inputMode="decimal"
          value={figure}
          onChange={({ target }) => {
            setTyped(true);
            onType(target.value);
          }}
        />{' '}
        {said.kg}
      </p>
      {asked === null ? null : <p className="asked">{said.askedFor(`${Math.round(asked)} kg`)}</p>}
      <div className="keypad">
        {keys.map((key) => (
          <button key={key} type="button" onClick={() => press(key)}>
            {key}
          </button>
        ))}
        <button type="button" onClick={() => onType('')}>
          {said.clear}
        </button>
      </div>
    </>
  );
}
