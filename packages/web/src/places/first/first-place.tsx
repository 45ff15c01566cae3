import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { Headline } from '../../look/page/headline.tsx';
import { words } from '../../words.ts';
import type { Beginning, Problem } from '../../worker/plan-source.ts';
import { BareGround } from './bare-ground.tsx';
import { FolderDoor } from './folder-door.tsx';
import { SentenceOfBlanks } from './sentence-of-blanks.tsx';

/** The first day: one sentence with blanks, or a folder of what there is, or the sample farm. */
export function FirstPlace() {
  const { source, week } = useAppState();
  const navigate = useNavigate();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [beginning, setBeginning] = useState<Beginning>({
    plots: null,
    areaHa: null,
    near: null,
    items: null,
    households: null,
    weeks: null,
  });
  const [isBusy, setBusy] = useState(false);
  const follow = async (answer: Promise<readonly Problem[]>) => {
    setBusy(true);
    const found = await answer;
    setBusy(false);
    setProblems(found);
    if (found.length === 0) navigate({ to: '/ground' });
  };
  return (
    <div className="first" aria-busy={isBusy}>
      <Headline sentence={[{ text: words.first.headline, strong: true }, { text: words.first.headlineRest }]} />
      <SentenceOfBlanks beginning={beginning} onChange={setBeginning} onGo={() => follow(source.begin(beginning))} />
      <ProblemList problems={problems} />
      <BareGround plots={beginning.plots ?? 0} fromYear={Number(week.slice(0, 4))} />
      <div className="first-ways">
        <FolderDoor onFiles={(files) => follow(source.openFolder(files))} />
        <section>
          <h2>{words.first.sample}</h2>
          <p>{words.first.sampleBody}</p>
          <button type="button" className="link" onClick={() => follow(source.openSample())}>
            {words.first.sampleGo}
          </button>
        </section>
      </div>
    </div>
  );
}

/** Everything to mend at once, each at its place. */
function ProblemList({ problems }: { readonly problems: readonly Problem[] }) {
  if (problems.length === 0) return null;
  return (
    <section className="problems" role="alert">
      <h2>{words.first.problems(problems.length)}</h2>
      <ol>
        {problems.map((problem) => (
          <li key={problem.id}>
            <b>{problem.where}</b> {problem.sentence}
          </li>
        ))}
      </ol>
    </section>
  );
}
