import { type FormEvent, useEffect, useRef, useState } from 'react';
import { Headline } from '../../look/page/headline.tsx';
import { words } from '../../words.ts';
import type { FolderMend, FolderProblem, FolderReading, Problem } from '../../worker/plan-source.ts';
import { MendLine } from './mend-line.tsx';
import { ProblemList } from './problem-list.tsx';

interface FolderMendingProps {
  readonly reading: FolderReading;
  /** What went wrong on taking it in. */
  readonly problems: readonly Problem[];
  readonly isBusy: boolean;
  readonly onMend: (mends: readonly FolderMend[]) => void;
  readonly onTake: () => void;
  readonly onLeave: () => void;
}

const said = words.folder;

/** Everything that is wrong with a folder, each mended in its place; nothing is kept until all is well. */
export function FolderMending({ reading, problems, isBusy, onMend, onTake, onLeave }: FolderMendingProps) {
  const form = useRef<HTMLFormElement>(null);
  const [changed, setChanged] = useState<ReadonlyMap<string, string>>(new Map());
  const stops = reading.problems.filter((problem) => problem.stops);
  const looks = reading.problems.filter((problem) => !problem.stops);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each reading begins anew at its first problem
  useEffect(() => {
    setChanged(new Map());
    form.current?.querySelector<HTMLElement>('input, textarea, .button')?.focus();
  }, [reading]);
  const change = (id: string, to: string) => setChanged((now) => new Map(now).set(id, to));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (reading.canBeTaken && changed.size === 0) onTake();
    else onMend([...changed].map(([problem, to]) => ({ problem, to })));
  };
  const lines = (list: readonly FolderProblem[]) => (
    <ol className="mend-lines">
      {list.map((problem) => (
        <MendLine
          key={problem.id}
          problem={problem}
          now={changed.get(problem.id) ?? problem.written}
          onChange={(to) => change(problem.id, to)}
        />
      ))}
    </ol>
  );
  return (
    <form ref={form} className="first folder-mending" aria-busy={isBusy} onSubmit={submit}>
      <Headline sentence={headline(reading, stops.length)} />
      <ProblemList problems={problems} />
      {lines(stops)}
      <div className="blanks-go">
        <button type="submit" className="button">
          {reading.canBeTaken && changed.size === 0 ? said.take : said.checkAgain}
        </button>
        <button type="button" className="link" onClick={onLeave}>
          {said.another}
        </button>
      </div>
      {looks.length === 0 ? null : (
        <details className="mend-looks" open={looks.length < 6}>
          <summary>{said.look(looks.length)}</summary>
          {lines(looks)}
        </details>
      )}
    </form>
  );
}

function headline({ canBeTaken, name }: FolderReading, stops: number) {
  return canBeTaken
    ? [{ text: said.clean(name), strong: true }, { text: said.nothingKept }]
    : [{ text: said.mendFirst(stops), strong: true }, { text: said.before(name) }, { text: said.nothingKept }];
}
