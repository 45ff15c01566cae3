import { Link } from '@tanstack/react-router';
import { type FormEvent, type ReactNode, useState } from 'react';
import { words } from '../../words.ts';

const said = words.record;

interface RecordFrameProps {
  readonly title: string;
  readonly children: ReactNode;
  /** Records it; says what is missing, or null when it is done. */
  readonly onRecord: () => Promise<string | null>;
}

/** A page on which one thing is recorded: a sentence or a figure above, and the one wide button under the thumb. */
export function RecordFrame({ title, children, onRecord }: RecordFrameProps) {
  const [missing, setMissing] = useState<string | null>(null);
  const [isBusy, setBusy] = useState(false);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (isBusy) return;
    setBusy(true);
    setMissing(await onRecord());
    setBusy(false);
  };
  return (
    <form className="record" onSubmit={submit} noValidate>
      <h1>{title}</h1>
      {children}
      <div className="record-foot">
        <p role="alert">{missing}</p>
        <Link className="wide" to="/day">
          {said.back}
        </Link>
        <button type="submit" className="wide strong">
          {said.recordIt}
        </button>
      </div>
    </form>
  );
}
