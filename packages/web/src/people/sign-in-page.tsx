import { type FormEvent, useState } from 'react';
import { ask, type Me } from './ask.ts';
import { DoorPage, Field, Refusals, readForm } from './fields.tsx';
import { peopleWords } from './people-words.ts';

const said = peopleWords.signIn;

/** Name and password; the six digits only of who has a second factor, the farm only where there are several. */
export function SignInPage({ note = null }: { readonly note?: string | null }) {
  const [sentences, setSentences] = useState<readonly string[]>([]);
  const [wants, setWants] = useState({ farm: false, code: false });
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const told = await ask<Me>('POST', '/api/sign-in', peopleWords.outOfReach, {
      farm: readForm(form, 'farm'),
      person: (readForm(form, 'person') ?? '').trim(),
      password: readForm(form, 'password') ?? '',
      code: readForm(form, 'code'),
    });
    if (told.kind === 'done') return window.location.assign('/');
    setSentences(told.code === 'code-needed' ? [said.codeWanted] : told.sentences);
    setWants((before) => ({
      farm: before.farm || told.code === 'which-farm',
      code: before.code || told.code === 'code-needed',
    }));
  };
  return (
    <DoorPage headline={said.headline}>
      {note === null ? null : <p className="lead">{note}</p>}
      <form onSubmit={send} className="door-form">
        {wants.farm ? <Field label={said.farm} name="farm" required autoCapitalize="none" /> : null}
        <Field label={said.person} name="person" required autoComplete="username" autoCapitalize="none" />
        <Field label={said.password} name="password" type="password" required autoComplete="current-password" />
        {wants.code ? <Field label={said.code} name="code" required autoComplete="one-time-code" /> : null}
        <Refusals sentences={sentences} />
        <button type="submit" className="button">
          {said.go}
        </button>
      </form>
      <p>{said.lost}</p>
    </DoorPage>
  );
}
