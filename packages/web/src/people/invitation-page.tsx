import { type FormEvent, useEffect, useState } from 'react';
import { ask, type InvitationSeen } from './ask.ts';
import { DoorPage, Field, Refusals, readForm } from './fields.tsx';
import { peopleWords } from './people-words.ts';
import { SignInPage } from './sign-in-page.tsx';

const said = peopleWords.invitation;

/** Opens the invitation that stands behind # in the address, and takes it out of the address and the history. */
export function InvitationPage() {
  const [link] = useState(() => window.location.hash.slice(1));
  const [seen, setSeen] = useState<InvitationSeen | null>(null);
  const [sentences, setSentences] = useState<readonly string[]>([]);
  const [isTaken, setTaken] = useState(false);
  useEffect(() => {
    window.history.replaceState(null, '', window.location.pathname);
    void ask<InvitationSeen>('POST', '/api/invitations/look', peopleWords.outOfReach, { link }).then((told) =>
      told.kind === 'done' ? setSeen(told.value) : setSentences(told.sentences),
    );
  }, [link]);
  const take = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const password = readForm(event.currentTarget, 'password') ?? '';
    const told = await ask('POST', '/api/invitations/accept', peopleWords.outOfReach, { link, password });
    if (told.kind === 'done') setTaken(true);
    else setSentences(told.sentences);
  };
  if (isTaken) return <SignInPage note={said.taken} />;
  return (
    <DoorPage headline={seen === null ? said.opening : said.headline(seen.name, seen.farmName)}>
      {seen === null ? null : (
        <form onSubmit={take} className="door-form">
          <p className="lead">{said.as(peopleWords.roles[seen.role], seen.person)}</p>
          <input type="hidden" name="username" autoComplete="username" value={seen.person} readOnly />
          <Field
            label={said.password}
            hint={said.hint}
            name="password"
            type="password"
            required
            autoComplete="new-password"
          />
          <button type="submit" className="button">
            {said.go}
          </button>
        </form>
      )}
      <Refusals sentences={sentences} />
    </DoorPage>
  );
}
