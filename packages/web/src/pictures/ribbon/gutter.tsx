import { area } from '@leywright/measures';
import type { PlotGround } from '@leywright/planner';
import { words } from '../../words.ts';
import type { RibbonLayout } from './cover-ribbon.tsx';

interface GutterProps {
  readonly ground: readonly PlotGround[];
  readonly layout: RibbonLayout;
  readonly chosenPlot: string | null;
  readonly areaUnit: 'ha' | 'acres';
  readonly onChoosePlot: (plot: string) => void;
}

/** Left of the strips: letter, name and ground of each plot. Choosing one carries it to the pictures below. */
export function Gutter({ ground, layout, chosenPlot, areaUnit, onChoosePlot }: GutterProps) {
  return (
    <ul className="gutter" style={{ height: layout.head + layout.pitch * ground.length }}>
      {ground.map(({ plot, letter, name, area: net }, index) => (
        <li key={plot} style={{ top: layout.head + index * layout.pitch, height: layout.stripHeight }}>
          <button
            type="button"
            className="plot-name"
            aria-pressed={plot === chosenPlot}
            onClick={() => onChoosePlot(plot)}
          >
            <b className="letter">{letter}</b>
            <span>
              {name}
              <small>{areaText(net.grossM2, areaUnit)}</small>
            </span>
          </button>
        </li>
      ))}
      <li className="scale-words" aria-hidden="true" style={{ top: layout.head, height: layout.stripHeight }}>
        <span>{words.ribbon.full}</span>
        <span>{words.ribbon.half}</span>
        <span>{words.ribbon.bare}</span>
      </li>
    </ul>
  );
}

/** "0.98 ha", or in acres where the farm counts so. */
export function areaText(areaM2: number, unit: 'ha' | 'acres'): string {
  return `${area.fromM2(areaM2, unit === 'ha' ? 'ha' : 'acre').toFixed(2)} ${unit === 'ha' ? 'ha' : 'acres'}`;
}
