import type { SeenKind } from '@leywright/book';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { words } from '../../words.ts';
import type { FarmView } from '../../worker/plan-source.ts';
import { WithFarm } from '../no-farm.tsx';
import { ChoiceBlank, onlyPlantOn, PlantBlank, PlotBlank, readFigure } from './blanks.tsx';
import { RecordFrame } from './record-frame.tsx';
import { TenPlants } from './ten-plants.tsx';

const said = words.record;

/** I saw…: one sentence to fill in. */
export function SawPlace() {
  return <WithFarm>{(view) => <Saw view={view} />}</WithFarm>;
}

/** How a sort of thing is counted: on plants, by number, or in words alone. */
const countedOn: Readonly<Record<SeenKind, 'plants' | 'number' | 'words'>> = {
  pest: 'plants',
  disease: 'plants',
  weed: 'number',
  'natural-enemy': 'plants',
  soil: 'words',
  bird: 'number',
  worm: 'number',
  water: 'words',
  damage: 'plants',
};
/** In the order in which the sentence offers them. */
const offered = Object.keys(countedOn) as readonly SeenKind[];
const plantsLookedAt = 10;

function Saw({ view }: { readonly view: FarmView }) {
  const { source } = useAppState();
  const navigate = useNavigate();
  const [seen, setSeen] = useState<SeenKind>('pest');
  const [plot, setPlot] = useState(() => view.plan.ground[0]?.plot ?? '');
  const [plant, setPlant] = useState(() => onlyPlantOn(view, view.plan.ground[0]?.plot ?? ''));
  const [what, setWhat] = useState('');
  const [tapped, setTapped] = useState<readonly number[] | null>(null);
  const [number, setNumber] = useState('');
  const [more, setMore] = useState('');
  const way = countedOn[seen];
  const walkTo = (to: string) => {
    setPlot(to);
    setPlant(onlyPlantOn(view, to));
  };
  const record = async () => {
    if (what.trim() === '') return said.missingWhat;
    const ids = await source.record({
      ...{ kind: 'saw', seen, plot: orNull(plot), crop: orNull(plant), what: what.trim(), words: orNull(more.trim()) },
      count: way === 'plants' ? (tapped?.length ?? null) : way === 'number' ? readFigure(number) : null,
      of: way === 'plants' && tapped !== null ? plantsLookedAt : null,
    });
    await navigate({ to: '/record/done', hash: ids.join(',') });
    return null;
  };
  return (
    <RecordFrame title={said.sawButton} onRecord={record}>
      <p className="sentence">
        {said.onPlot} <PlotBlank view={view} plot={plot} onChoose={walkTo} />
        {said.inThe} <PlantBlank view={view} plot={plot} plant={plant} onChoose={setPlant} />
        {said.iSaw}{' '}
        <ChoiceBlank
          label={said.sort}
          value={seen}
          options={offered.map((kind) => [kind, said.sorts[kind]] as const)}
          onChoose={setSeen}
        />{' '}
        <input
          aria-label={said.what}
          value={what}
          placeholder={said.whatHint}
          autoCapitalize="off"
          onChange={({ target }) => setWhat(target.value)}
        />
        {way === 'plants' ? ` ${said.onPlants} ` : null}
        {way === 'plants' ? <b>{tapped === null ? said.notCounted : tapped.length}</b> : null}
        {way === 'plants' ? ` ${said.ofTen}.` : '.'}
      </p>
      {way === 'plants' ? <TenPlants tapped={tapped} onTap={setTapped} /> : null}
      {way === 'number' ? <Field label={said.countThem} value={number} isFigure onType={setNumber} /> : null}
      <SeenBefore view={view} plant={plant} onChoose={setWhat} />
      <Field label={said.words} value={more} onType={setMore} />
    </RecordFrame>
  );
}

function orNull(text: string): string | null {
  return text === '' ? null : text;
}

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly onType: (text: string) => void;
  readonly isFigure?: boolean;
}

export function Field({ label, value, onType, isFigure = false }: FieldProps) {
  return (
    <label className="field">
      {label}
      <input value={value} inputMode={isFigure ? 'decimal' : 'text'} onChange={({ target }) => onType(target.value)} />
    </label>
  );
}

interface SeenBeforeProps {
  readonly view: FarmView;
  readonly plant: string;
  readonly onChoose: (what: string) => void;
}

/** What was seen in this crop before, to tap instead of typing. */
function SeenBefore({ view, plant, onChoose }: SeenBeforeProps) {
  const before = view.seenBefore.filter(({ crop }) => crop === (plant === '' ? null : plant)).slice(0, 6);
  if (before.length === 0) return null;
  return (
    <section className="seen-before">
      <h2>{said.seenBefore}</h2>
      {before.map(({ what }) => (
        <button key={what} type="button" onClick={() => onChoose(what)}>
          {what}
        </button>
      ))}
    </section>
  );
}
