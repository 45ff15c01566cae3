/** Fields and refusals, alike on all pages about people. */
import { type InputHTMLAttributes, type ReactNode, useId } from 'react';

interface FieldProps extends InputHTMLAttributes<HTMLInputElement> {
  readonly label: string;
  readonly hint?: string;
}

export function Field({ label, hint, ...input }: FieldProps) {
  const id = useId();
  return (
    <p className="field">
      <label htmlFor={id}>{label}</label>
      <input id={id} aria-describedby={hint === undefined ? undefined : `${id}-hint`} {...input} />
      {hint === undefined ? null : <small id={`${id}-hint`}>{hint}</small>}
    </p>
  );
}

export function Refusals({ sentences }: { readonly sentences: readonly string[] }) {
  return (
    <div role="alert">
      {sentences.map((sentence) => (
        <p key={sentence} className="refusal">
          {sentence}
        </p>
      ))}
    </div>
  );
}

/** A page without the farm's frame: whoever is here has not come in yet. */
export function DoorPage({ headline, children }: { readonly headline: string; readonly children: ReactNode }) {
  return (
    <main id="main" className="door-page">
      <p className="door-name">Leywright</p>
      <h1 className="headline">{headline}</h1>
      {children}
    </main>
  );
}

/** What a form holds, by the names of its fields; a field left empty is null. */
export function readForm(form: HTMLFormElement, name: string): string | null {
  const value = new FormData(form).get(name);
  return typeof value === 'string' && value.trim() !== '' ? value : null;
}
