import type { Why, WhyInput } from '@leywright/planner';
import { useEffect, useState } from 'react';
import { useAppState } from '../app-state.tsx';
import { Figure, Spoken } from '../look/page/figure.tsx';
import { SideSheet, useFocusBack } from '../look/page/side-sheet.tsx';
import { words } from '../words.ts';
import type { ToldWhy } from '../worker/plan-source.ts';

type Asked = { readonly kind: 'asked' } | { readonly kind: 'none' } | { readonly kind: 'told'; readonly told: ToldWhy };

/** Where a figure comes from: the number, what it is, its sum in words and figures, what would change it, its sources, how sure it is. */
export function WhySheet({ figureId }: { readonly figureId: string }) {
  const { source, seen } = useAppState();
  const [asked, setAsked] = useState<Asked>({ kind: 'asked' });
  useFocusBack();
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new plan asks anew
  useEffect(() => {
    let isWanted = true;
    source.why(figureId).then((told) => {
      if (isWanted) setAsked(told === null ? { kind: 'none' } : { kind: 'told', told });
    });
    return () => {
      isWanted = false;
    };
  }, [source, figureId, seen]);
  if (asked.kind === 'asked')
    return (
      <SideSheet kind={words.why.kind} title="…">
        <p>{words.why.working}</p>
      </SideSheet>
    );
  if (asked.kind === 'none')
    return (
      <SideSheet kind={words.why.kind} title={figureId}>
        <p>{words.why.none}</p>
      </SideSheet>
    );
  return <Derivation {...asked.told} />;
}

/** Characters from which a sum is written smaller. */
const longSum = 90;

function Derivation({ why, title, about }: ToldWhy) {
  return (
    <SideSheet kind={words.why.kind} title={title}>
      <p className="why-about">
        <Spoken sentence={about} />
      </p>
      <dl className="why-sum">
        <dt>{why.formula}</dt>
        <dd className={why.sum.length > longSum ? 'long' : undefined}>{why.sum}</dd>
      </dl>
      <ul className="why-inputs">
        {why.inputs.map((input, index) => (
          <Input key={`${index}-${input.name}`} input={input} />
        ))}
      </ul>
      <Levers why={why} />
      {why.doubt.length === 0 ? null : (
        <>
          <h3>{words.why.sure}</h3>
          <ul className="why-doubt">
            {why.doubt.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
    </SideSheet>
  );
}

function Input({ input }: { readonly input: WhyInput }) {
  const value = input.value === null ? words.nitrogen.none : `${input.value} ${input.unit}`.trim();
  return (
    <li>
      <b>{input.name}</b> {input.why === null ? value : <Figure id={input.why}>{value}</Figure>}
      <small>{[input.where, input.source, input.howKnown].filter((part) => part !== null).join(' · ')}</small>
    </li>
  );
}

/** An arrow drawn, since the text face has none. */
function Turns() {
  return (
    <svg width="16" height="9" viewBox="0 0 16 9" role="img" aria-label={words.why.becomes}>
      <path d="M0 4.5h14m-4 -4l4 4l-4 4" fill="none" stroke="currentColor" strokeWidth="1.6" />
    </svg>
  );
}

function Levers({ why }: { readonly why: Why }) {
  if (why.levers.length === 0) return null;
  return (
    <>
      <h3>{words.why.change}</h3>
      <ul className="why-levers">
        {why.levers.map((lever) => (
          <li key={`${lever.change}-${lever.value}`}>
            <span>
              {lever.change}, {lever.value} {lever.unit}
            </span>
            <b>
              {why.value} <Turns /> {lever.result} {why.unit}
            </b>
          </li>
        ))}
      </ul>
    </>
  );
}
