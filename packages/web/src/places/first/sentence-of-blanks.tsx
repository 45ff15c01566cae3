import { useEffect, useId, useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { words } from '../../words.ts';
import type { Beginning } from '../../worker/plan-source.ts';

interface SentenceOfBlanksProps {
  readonly beginning: Beginning;
  readonly onChange: (beginning: Beginning) => void;
  readonly onGo: () => void;
}

const first = words.first;

/** "We have 6 plots, 5.2 ha, near …; we promise 7 items to 260 households, 49 weeks a year." */
export function SentenceOfBlanks({ beginning, onChange, onGo }: SentenceOfBlanksProps) {
  const known = useKnownPlaces();
  const number = (key: 'plots' | 'areaHa' | 'items' | 'households' | 'weeks') => (text: string) =>
    onChange({ ...beginning, [key]: readBlank(text) });
  return (
    <form
      className="blanks"
      onSubmit={(event) => {
        event.preventDefault();
        onGo();
      }}
    >
      <p>
        {first.have} <Blank label={first.labels.plots} wide={2} mode="numeric" onText={number('plots')} /> {first.plots}{' '}
        <Blank label={`${first.labels.area}, ha`} wide={3} mode="decimal" onText={number('areaHa')} /> ha{first.near}{' '}
        <Blank
          label={first.labels.near}
          wide={9}
          mode="text"
          known={known}
          onText={(text) => onChange({ ...beginning, near: text.trim() === '' ? null : text.trim() })}
        />
        {first.promise} <Blank label={first.labels.items} wide={2} mode="numeric" onText={number('items')} />{' '}
        {first.itemsTo} <Blank label={first.labels.households} wide={4} mode="numeric" onText={number('households')} />{' '}
        {first.households} <Blank label={first.labels.weeks} wide={2} mode="numeric" onText={number('weeks')} />{' '}
        {first.weeks}
      </p>
      <div className="blanks-go">
        <button type="submit" className="button">
          {first.go}
        </button>
        <span>{first.goBeside}</span>
      </div>
    </form>
  );
}

interface BlankProps {
  readonly label: string;
  /** Room for so many letters. */
  readonly wide: number;
  readonly mode: 'numeric' | 'decimal' | 'text';
  /** Words offered while typing. */
  readonly known?: readonly string[];
  readonly onText: (text: string) => void;
}

function Blank({ label, wide, mode, known = [], onText }: BlankProps) {
  const list = useId();
  return (
    <>
      <input
        aria-label={label}
        inputMode={mode}
        autoComplete="off"
        list={known.length === 0 ? undefined : list}
        title={known.length === 0 ? undefined : first.nearHint}
        style={{ width: `${wide * 0.72 + 0.9}em` }}
        onChange={(event) => onText(event.currentTarget.value)}
      />
      {known.length === 0 ? null : (
        <datalist id={list}>
          {known.map((word) => (
            <option key={word} value={word} />
          ))}
        </datalist>
      )}
    </>
  );
}

function useKnownPlaces(): readonly string[] {
  const { source } = useAppState();
  const [known, setKnown] = useState<readonly string[]>([]);
  useEffect(() => {
    source.knownPlaces().then(setKnown, () => setKnown([]));
  }, [source]);
  return known;
}

/** A number as people type it, with a point or a comma; null for anything else. */
export function readBlank(text: string): number | null {
  const trimmed = text.trim().replace(',', '.');
  return /^\d+(\.\d+)?$/.test(trimmed) ? Number(trimmed) : null;
}
