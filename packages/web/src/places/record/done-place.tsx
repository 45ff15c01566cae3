import { Link, useRouterState } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { words } from '../../words.ts';
import type { FarmView } from '../../worker/plan-source.ts';
import { WithFarm } from '../no-farm.tsx';
import { asSentence, RecordState } from './record-line.tsx';

const said = words.record;
const undoS = 10;

/** What was just recorded. For ten seconds it is taken back by one tap; after that it is corrected. */
export function DonePlace() {
  return <WithFarm>{(view) => <Done view={view} />}</WithFarm>;
}

function Done({ view }: { readonly view: FarmView }) {
  const { source } = useAppState();
  const ids = useRouterState({ select: (state) => state.location.hash }).split(',');
  const record = view.records.find(({ entries }) => entries.includes(ids[0] ?? ''));
  const left = useSecondsLeft(ids[0] ?? '');
  if (record === undefined) return <p className="lead">{said.gone}</p>;
  return (
    <div className="record">
      <h1>{record.struckOut ? said.takenBack : said.recorded}</h1>
      <p className="sentence">{asSentence(record.sentence)}.</p>
      <RecordState record={record} />
      {record.struckOut ? null : (
        <div className="undo">
          <p>{left > 0 ? said.mistake : said.tooLate}</p>
          {left > 0 ? (
            <button type="button" onClick={() => void source.undo(ids)}>
              {said.undo(left)}
            </button>
          ) : (
            <Link to="/record/correct/$entry" params={{ entry: record.entries[0] ?? '' }}>
              {said.correct}
            </Link>
          )}
        </div>
      )}
      <div className="record-foot">
        <Link className="wide" to="/record/saw">
          {said.sawMore}
        </Link>
        <Link className="wide strong" to="/day">
          {said.back}
        </Link>
      </div>
    </div>
  );
}

/** Seconds of the ten that are left, by the time in the entry's id, so that a page opened again gives no more of them. */
function useSecondsLeft(id: string): number {
  const madeMs = Number.parseInt(id.replaceAll('-', '').slice(0, 12), 16);
  const leftNow = () => {
    const left = Math.ceil(undoS - (Date.now() - madeMs) / 1000);
    return Number.isFinite(left) ? Math.max(0, Math.min(undoS, left)) : 0;
  };
  const [left, setLeft] = useState(leftNow);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the clock runs anew for each record
  useEffect(() => {
    setLeft(leftNow());
    const clock = setInterval(() => setLeft(leftNow()), 250);
    return () => clearInterval(clock);
  }, [id]);
  return left;
}
