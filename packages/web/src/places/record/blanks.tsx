/** The blanks of a sentence: each a wide field of its own, in the running text. */

import { words } from '../../words.ts';
import type { FarmView } from '../../worker/plan-source.ts';

const said = words.record;

interface ChoiceBlankProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly (readonly [T, string])[];
  readonly onChoose: (value: T) => void;
}

export function ChoiceBlank<T extends string>({ label, value, options, onChoose }: ChoiceBlankProps<T>) {
  return (
    <select aria-label={label} value={value} onChange={({ target }) => onChoose(target.value as T)}>
      {options.map(([one, text]) => (
        <option key={one} value={one}>
          {text}
        </option>
      ))}
    </select>
  );
}

interface PlotBlankProps {
  readonly view: FarmView;
  readonly plot: string;
  readonly onChoose: (plot: string) => void;
}

export function PlotBlank({ view, plot, onChoose }: PlotBlankProps) {
  const plots = view.plan.ground.map((one) => [one.plot, `${one.letter}, ${one.name}`] as const);
  return <ChoiceBlank label={said.plot} value={plot} options={[['', said.noPlot], ...plots]} onChoose={onChoose} />;
}

interface PlantBlankProps extends PlotBlankProps {
  readonly plant: string;
}

/** What stands on the plot first, then all that stands on the farm. */
export function PlantBlank({ view, plot, plant, onChoose }: PlantBlankProps) {
  const here = view.plants.filter((one) => one.plots.includes(plot));
  const elsewhere = view.plants.filter((one) => !here.includes(one));
  const options = [...here, ...elsewhere].map(({ id, name }) => [id, name] as const);
  return <ChoiceBlank label={said.crop} value={plant} options={[['', said.noCrop], ...options]} onChoose={onChoose} />;
}

/** What stands alone on a plot is meant until something else is said. */
export function onlyPlantOn(view: FarmView, plot: string): string {
  const here = view.plants.filter((one) => one.plots.includes(plot));
  return here.length === 1 ? (here[0]?.id ?? '') : '';
}

/** What was typed as a figure: with a point or a comma; null when nothing or no figure was. */
export function readFigure(text: string): number | null {
  const plain = text.trim().replace(',', '.');
  if (!/^\d+(\.\d+)?$/.test(plain)) return null;
  return Number(plain);
}
