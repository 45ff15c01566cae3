import { type FormEvent, useState } from 'react';
import { ask, type NewFactor } from './ask.ts';
import { Field, Refusals, readForm } from './fields.tsx';
import { peopleWords } from './people-words.ts';

const said = peopleWords.factor;

/** Sets a second factor up: the password, the key, a code of it, and the recovery codes. */
export function FactorSetUp({ isOn, onDone }: { readonly isOn: boolean; readonly onDone: () => void }) {
  const [factor, setFactor] = useState<NewFactor | null>(null);
  const [codes, setCodes] = useState<readonly string[] | null>(null);
  const [sentences, setSentences] = useState<readonly string[]>([]);
  const begin = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const told = await ask<NewFactor>('POST', '/api/me/second-factor', peopleWords.outOfReach, {
      password: readForm(form, 'password') ?? '',
      code: readForm(form, 'code'),
    });
    setSentences(told.kind === 'done' ? [] : told.sentences);
    if (told.kind === 'done') setFactor(told.value);
  };
  const confirm = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const told = await ask<{ readonly recoveryCodes: readonly string[] }>(
      'POST',
      '/api/me/second-factor/confirm',
      peopleWords.outOfReach,
      { code: readForm(event.currentTarget, 'code') ?? '' },
    );
    setSentences(told.kind === 'done' ? [] : told.sentences);
    if (told.kind === 'done') setCodes(told.value.recoveryCodes);
  };
  if (codes !== null) return <RecoveryCodes codes={codes} onDone={onDone} />;
  return (
    <section>
      <p>{said.body}</p>
      {factor === null ? (
        <form onSubmit={begin} className="door-form">
          <Field
            label={peopleWords.place.password}
            name="password"
            type="password"
            required
            autoComplete="current-password"
          />
          {isOn ? <Field label={peopleWords.place.oldCode} name="code" required autoComplete="one-time-code" /> : null}
          <button type="submit" className="button">
            {said.begin}
          </button>
        </form>
      ) : (
        <KeyForm factor={factor} onSubmit={confirm} />
      )}
      <Refusals sentences={sentences} />
    </section>
  );
}

function RecoveryCodes({ codes, onDone }: { readonly codes: readonly string[]; readonly onDone: () => void }) {
  return (
    <section>
      <p>{said.codes}</p>
      <ul className="recovery-codes">
        {codes.map((code) => (
          <li key={code}>{code}</li>
        ))}
      </ul>
      <button type="button" className="button" onClick={onDone}>
        {said.kept}
      </button>
    </section>
  );
}

interface KeyFormProps {
  readonly factor: NewFactor;
  readonly onSubmit: (event: FormEvent<HTMLFormElement>) => void;
}

function KeyForm({ factor, onSubmit }: KeyFormProps) {
  return (
    <form onSubmit={onSubmit} className="door-form">
      <p>
        {said.key}: <code className="factor-key">{factor.secret}</code>
      </p>
      <p>
        <a href={factor.address}>{said.open}</a>
      </p>
      <Field label={said.code} name="code" required autoComplete="one-time-code" inputMode="numeric" />
      <button type="submit" className="button">
        {said.confirm}
      </button>
    </form>
  );
}
