import { readDay } from '@leywright/measures';
import { Link } from '@tanstack/react-router';
import { dayAndMonth } from '../../look/head/year-weeks.ts';
import { words } from '../../words.ts';
import type { ToldRecord } from '../../worker/record/wish.ts';

const said = words.record;

export function asSentence(text: string): string {
  return text.charAt(0).toLocaleUpperCase('en') + text.slice(1);
}

/** When it was, whether it has been sent, and how it was corrected. */
export function RecordState({ record }: { readonly record: ToldRecord }) {
  const day = readDay(record.doneOn);
  const when = [day === null ? record.doneOn : dayAndMonth(day), record.doneAt].filter((part) => part !== null);
  const parts = [when.join(', '), record.waits ? said.waits : said.sent];
  if (record.corrected !== null)
    parts.push(record.struckOut ? said.struckOut(record.corrected) : said.correctedBecause(record.corrected));
  return <p className="record-state">{parts.join(' · ')}</p>;
}

/** The records of the last days, each with the way to correct it. */
export function RecordList({ records }: { readonly records: readonly ToldRecord[] }) {
  return (
    <section className="record-list">
      <h2>{said.lately}</h2>
      {records.length === 0 ? <p>{said.none}</p> : null}
      <ul>
        {records.slice(0, 12).map((record) => (
          <li key={record.entries[0]} className={record.struckOut ? 'struck-out' : undefined}>
            <div>
              <p>{asSentence(record.sentence)}</p>
              <RecordState record={record} />
            </div>
            {record.struckOut ? null : (
              <Link
                to="/record/correct/$entry"
                params={{ entry: record.entries[0] ?? '' }}
                aria-label={`${said.correct}: ${record.sentence}`}
              >
                {said.correct}
              </Link>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
