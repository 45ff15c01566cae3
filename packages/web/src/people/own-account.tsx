import { useCallback, useEffect, useState } from 'react';
import { ask, type SessionShown, type Visitor } from './ask.ts';
import { FactorSetUp } from './factor-set-up.tsx';
import { Refusals } from './fields.tsx';
import { peopleWords } from './people-words.ts';

const said = peopleWords.place;

/** One's own account: where one is signed in, the second factor, and going out. */
export function OwnAccount({ visitor }: { readonly visitor: Visitor }) {
  const [sessions, setSessions] = useState<readonly SessionShown[]>([]);
  const [sentences, setSentences] = useState<readonly string[]>([]);
  const [isSetting, setSetting] = useState(false);
  const look = useCallback(async () => {
    const told = await ask<{ readonly sessions: readonly SessionShown[] }>(
      'GET',
      '/api/me/sessions',
      peopleWords.outOfReach,
    );
    if (told.kind === 'done') setSessions(told.value.sessions);
    setSentences(told.kind === 'done' ? [] : told.sentences);
  }, []);
  useEffect(() => void look(), [look]);
  const end = async (path: string) => {
    await ask('DELETE', path, peopleWords.outOfReach);
    await look();
  };
  const signOut = async () => {
    await ask('POST', '/api/sign-out', peopleWords.outOfReach);
    window.location.assign('/');
  };
  const isOn = visitor.secondFactor === 'on';
  return (
    <section className="own-account">
      <h2>{said.own}</h2>
      <p>{said.ownLine(visitor.name, peopleWords.roles[visitor.role])}</p>
      <p>{isOn ? said.factorOn(visitor.recoveryCodesLeft) : said.factorOff}</p>
      {isSetting ? (
        <FactorSetUp isOn={isOn} onDone={() => window.location.reload()} />
      ) : (
        <button type="button" className="button plain" onClick={() => setSetting(true)}>
          {isOn ? said.factorRenew : said.factorSet}
        </button>
      )}
      <h3>{said.sessions}</h3>
      <Sessions sessions={sessions} onEnd={(id) => void end(`/api/me/sessions/${id}`)} />
      {sessions.length > 1 ? (
        <button type="button" className="button plain" onClick={() => void end('/api/me/sessions')}>
          {said.endOthers}
        </button>
      ) : null}{' '}
      <button type="button" className="button" onClick={() => void signOut()}>
        {said.signOut}
      </button>
      <Refusals sentences={sentences} />
      <p className="quiet">{said.onTheDevice}</p>
    </section>
  );
}

interface SessionsProps {
  readonly sessions: readonly SessionShown[];
  readonly onEnd: (id: string) => void;
}

function Sessions({ sessions, onEnd }: SessionsProps) {
  return (
    <ul className="sessions">
      {sessions.map((session) => (
        <li key={session.id}>
          {said.session(session.device.slice(0, 60), session.seenAt.slice(0, 10))}{' '}
          {session.isThis ? (
            <em>{said.thisOne}</em>
          ) : (
            <button type="button" className="link" onClick={() => onEnd(session.id)}>
              {said.end}
            </button>
          )}
        </li>
      ))}
    </ul>
  );
}
