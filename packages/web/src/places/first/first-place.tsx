import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { Headline } from '../../look/page/headline.tsx';
import { words } from '../../words.ts';
import type { Beginning, FolderAnswer, FolderReading, Problem } from '../../worker/plan-source.ts';
import { BareGround } from './bare-ground.tsx';
import { FarmsHere } from './farms-here.tsx';
import { FolderDoor } from './folder-door.tsx';
import { FolderMending } from './folder-mending.tsx';
import { ProblemList } from './problem-list.tsx';
import { SentenceOfBlanks } from './sentence-of-blanks.tsx';

/** The first day: one sentence with blanks, or a folder of what there is, or the sample farm. */
export function FirstPlace() {
  const { source } = useAppState();
  const [reading, setReading] = useState<FolderReading | null>(null);
  const ways = useWays(setReading);
  if (reading === null) return <Doors ways={ways} />;
  return (
    <FolderMending
      reading={reading}
      problems={ways.problems}
      isBusy={ways.isBusy}
      onMend={(mends) => ways.read(source.mendFolder(mends))}
      onTake={() => ways.follow(source.takeFolder())}
      onLeave={() => {
        ways.clear();
        setReading(null);
      }}
    />
  );
}

interface Ways {
  readonly problems: readonly Problem[];
  readonly isBusy: boolean;
  readonly clear: () => void;
  /** Goes to the farm when there is nothing to mend. */
  readonly follow: (answer: Promise<readonly Problem[]>) => Promise<void>;
  readonly read: (answer: Promise<FolderAnswer>) => Promise<void>;
}

function useWays(onReading: (reading: FolderReading) => void): Ways {
  const navigate = useNavigate();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isBusy, setBusy] = useState(false);
  const waitFor = async <T,>(answer: Promise<T>, then: (value: T) => void) => {
    setBusy(true);
    try {
      then(await answer);
    } catch {
      setProblems([{ id: 'fault', where: '', sentence: words.state.failed }]);
    } finally {
      setBusy(false);
    }
  };
  return {
    problems,
    isBusy,
    clear: () => setProblems([]),
    follow: (answer) =>
      waitFor(answer, (found) => {
        setProblems(found);
        if (found.length === 0) navigate({ to: '/' });
      }),
    read: (answer) =>
      waitFor(answer, (read) => {
        setProblems(read.kind === 'read' ? [] : read.problems);
        if (read.kind === 'read') onReading(read.reading);
      }),
  };
}

const allBlank: Beginning = { plots: null, areaHa: null, near: null, items: null, households: null, weeks: null };

function Doors({ ways }: { readonly ways: Ways }) {
  const { source, week } = useAppState();
  const [beginning, setBeginning] = useState<Beginning>(allBlank);
  return (
    <div className="first" aria-busy={ways.isBusy}>
      <Headline sentence={[{ text: words.first.headline, strong: true }, { text: words.first.headlineRest }]} />
      <SentenceOfBlanks
        beginning={beginning}
        onChange={setBeginning}
        onGo={() => ways.follow(source.begin(beginning))}
      />
      <ProblemList problems={ways.problems} />
      <BareGround plots={beginning.plots ?? 0} fromYear={Number(week.slice(0, 4))} />
      <div className="first-ways">
        <FolderDoor onFiles={(files) => ways.read(source.readFolder(files))} />
        <section>
          <h2>{words.first.sample}</h2>
          <p>{words.first.sampleBody}</p>
          <button type="button" className="link" onClick={() => ways.follow(source.openSample())}>
            {words.first.sampleGo}
          </button>
        </section>
        <FarmsHere onOpen={(id) => ways.follow(source.openFarm(id))} />
      </div>
    </div>
  );
}
