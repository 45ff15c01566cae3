import { useNavigate, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { words } from '../../words.ts';
import type { FarmView } from '../../worker/plan-source.ts';
import type { ToldRecord } from '../../worker/record/wish.ts';
import { WithFarm } from '../no-farm.tsx';
import { readFigure } from './blanks.tsx';
import { RecordFrame } from './record-frame.tsx';
import { asSentence, RecordState } from './record-line.tsx';
import { Field } from './saw-place.tsx';

const said = words.record;

/** A record made some time ago is corrected by another that names it and says why. */
export function CorrectPlace() {
  const { entry } = useParams({ strict: false }) as { readonly entry?: string };
  return <WithFarm>{(view) => <FindRecord view={view} entry={entry ?? ''} />}</WithFarm>;
}

function FindRecord({ view, entry }: { readonly view: FarmView; readonly entry: string }) {
  const record = view.records.find(({ entries }) => entries.includes(entry));
  return record === undefined ? <p className="lead">{said.gone}</p> : <Correct record={record} />;
}

function Correct({ record }: { readonly record: ToldRecord }) {
  const { source } = useAppState();
  const navigate = useNavigate();
  const [way, setWay] = useState<'kg' | 'strike-out'>(record.kg === null ? 'strike-out' : 'kg');
  const [figure, setFigure] = useState(record.kg === null ? '' : String(record.kg));
  const [reason, setReason] = useState('');
  const save = async () => {
    const kg = readFigure(figure);
    if (reason.trim() === '') return said.missingReason;
    if (way === 'kg' && kg === null) return said.missingKilos;
    await source.correct(
      record.entries,
      way === 'kg' && kg !== null
        ? { kind: 'kg', kg, reason: reason.trim() }
        : { kind: 'strike-out', reason: reason.trim() },
    );
    await navigate({ to: '/day' });
    return null;
  };
  return (
    <RecordFrame title={said.correct} onRecord={save}>
      <p className="sentence">{asSentence(record.sentence)}.</p>
      <RecordState record={record} />
      <p>{said.amendLead}</p>
      {record.kg === null ? null : (
        <div className="choices">
          {(['kg', 'strike-out'] as const).map((one) => (
            <label key={one}>
              <input type="radio" name="way" checked={way === one} onChange={() => setWay(one)} />
              <span>{one === 'kg' ? said.change : said.strikeOut}</span>
            </label>
          ))}
        </div>
      )}
      {way === 'kg' ? <Field label={said.kilos} value={figure} isFigure onType={setFigure} /> : null}
      <Field label={said.reason} value={reason} onType={setReason} />
    </RecordFrame>
  );
}
