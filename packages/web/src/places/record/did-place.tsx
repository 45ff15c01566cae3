import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { words } from '../../words.ts';
import type { FarmView } from '../../worker/plan-source.ts';
import { type DidVerb, didVerbs } from '../../worker/record/wish.ts';
import { WithFarm } from '../no-farm.tsx';
import { ChoiceBlank, onlyPlantOn, PlantBlank, PlotBlank, readFigure } from './blanks.tsx';
import { RecordFrame } from './record-frame.tsx';
import { Field } from './saw-place.tsx';

const said = words.record;

/** I did…: work that no plan names, or a harvest nobody had planned. */
export function DidPlace() {
  return <WithFarm>{(view) => <Did view={view} />}</WithFarm>;
}

function Did({ view }: { readonly view: FarmView }) {
  const { source } = useAppState();
  const navigate = useNavigate();
  const [verb, setVerb] = useState<DidVerb>('weeded');
  const [plot, setPlot] = useState(() => view.plan.ground[0]?.plot ?? '');
  const [plant, setPlant] = useState(() => onlyPlantOn(view, view.plan.ground[0]?.plot ?? ''));
  const [figure, setFigure] = useState('');
  const [more, setMore] = useState('');
  const isLifting = verb === 'lifted';
  const walkTo = (to: string) => {
    setPlot(to);
    setPlant(onlyPlantOn(view, to));
  };
  const record = async () => {
    const number = readFigure(figure);
    if (isLifting && (plant === '' || number === null)) return said.missingCrop;
    const ids = await source.record({
      ...{ kind: 'did', verb, plot: plot === '' ? null : plot, crop: plant === '' ? null : plant },
      kg: isLifting ? number : null,
      hours: isLifting ? null : number,
      words: more.trim() === '' ? null : more.trim(),
    });
    await navigate({ to: '/record/done', hash: ids.join(',') });
    return null;
  };
  return (
    <RecordFrame title={said.didButton} onRecord={record}>
      <p className="sentence">
        {said.onPlot} <PlotBlank view={view} plot={plot} onChoose={walkTo} />, {said.did}{' '}
        <ChoiceBlank
          label={said.verb}
          value={verb}
          options={didVerbs.map((one) => [one, said.verbs[one]] as const)}
          onChoose={setVerb}
        />{' '}
        <PlantBlank view={view} plot={plot} plant={plant} onChoose={setPlant} />.
      </p>
      <Field label={isLifting ? said.kilos : said.hours} value={figure} isFigure onType={setFigure} />
      {isLifting ? null : <Field label={said.words} value={more} onType={setMore} />}
    </RecordFrame>
  );
}
