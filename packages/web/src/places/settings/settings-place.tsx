import { useEffect, useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { chosenFace, type Face, faces, showFace } from '../../face.ts';
import { Headline } from '../../look/page/headline.tsx';
import { words } from '../../words.ts';
import { viewOf } from '../frame.tsx';

const said = words.settings;

/** What belongs to the farm as a whole, and to this machine. */
export function SettingsPlace() {
  const { seen, source } = useAppState();
  const view = viewOf(seen);
  const [face, setFace] = useState<Face>(chosenFace);
  const choose = (to: Face) => {
    showFace(to);
    setFace(to);
  };
  return (
    <div className="settings">
      <Headline sentence={[{ text: said.headline, strong: true }, { text: ` ${said.farm}` }]} />
      <Choice
        name="face"
        label={said.face}
        options={faces.map((one) => [one, said[one]])}
        chosen={face}
        onChoose={(one) => choose(one as Face)}
      />
      {view === null ? null : (
        <>
          <Choice
            name="area"
            label={said.area}
            options={[
              ['ha', said.ha],
              ['acres', said.acres],
            ]}
            chosen={view.shows.area}
            onChoose={(area) => source.setShows({ ...view.shows, area: area === 'acres' ? 'acres' : 'ha' })}
          />
          <div className="setting">
            <h2>{said.place}</h2>
            <p>{view.near ?? said.placeNone}</p>
          </div>
        </>
      )}
    </div>
  );
}

interface ChoiceProps {
  readonly name: string;
  readonly label: string;
  readonly options: readonly (readonly [string, string])[];
  readonly chosen: string;
  readonly onChoose: (value: string) => void;
}

function Choice({ name, label, options, chosen, onChoose }: ChoiceProps) {
  // What was picked shows at once; the farm follows when it is worked out.
  const [picked, setPicked] = useState(chosen);
  useEffect(() => setPicked(chosen), [chosen]);
  const pick = (value: string) => {
    setPicked(value);
    onChoose(value);
  };
  return (
    <fieldset className="setting">
      <legend>{label}</legend>
      <div className="choices">
        {options.map(([value, text]) => (
          <label key={value}>
            <input type="radio" name={name} value={value} checked={value === picked} onChange={() => pick(value)} />
            <span>{text}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
