import type { IsoWeek } from '@leywright/measures';
import type { PlacedStand, PlotGround } from '@leywright/planner';
import { Link } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { Mark } from '../../look/marks/mark.tsx';
import { useViewport } from '../../look/page/use-viewport.ts';
import { BoxBricks } from '../../pictures/boxes/box-bricks.tsx';
import { NitrogenBars } from '../../pictures/nitrogen/nitrogen-bars.tsx';
import { CoverRibbon } from '../../pictures/ribbon/cover-ribbon.tsx';
import { Gutter } from '../../pictures/ribbon/gutter.tsx';
import type { FaultMark } from '../../pictures/ribbon/marks.ts';
import type { RibbonYear } from '../../pictures/weeks.ts';
import { words } from '../../words.ts';
import type { FarmView, ToldFinding } from '../../worker/plan-source.ts';
import { groundLayout } from './ground-layout.ts';
import { GroundNotes } from './ground-notes.tsx';

export interface GroundProps {
  readonly view: FarmView;
  readonly ground: readonly PlotGround[];
  readonly years: readonly RibbonYear[];
  readonly marks: readonly FaultMark[];
  readonly toPutRight: readonly ToldFinding[];
  readonly chosenPlot: string | null;
  readonly chosenYear: number;
  readonly onChoosePlot: (plot: string) => void;
  readonly onChooseYear: (isoYear: number) => void;
  readonly onOpenStand: (stand: PlacedStand) => void;
}

/** Ribbon, box and nitrogen below one another on one scale of time, with the notes in the margin. */
export function GroundDesk(props: GroundProps) {
  const { view, ground, years, chosenYear, chosenPlot } = props;
  const { plan } = view;
  const { week, turn } = useAppState();
  const viewport = useViewport();
  const [pointed, setPointed] = useState<IsoWeek | null>(null);
  const layout = useMemo(() => groundLayout(viewport, ground.length, plan.horizon.weeks), [viewport, ground.length, plan.horizon.weeks]);
  const supply = plan.supply?.year === chosenYear ? plan.supply : null;
  const room = supply === null ? 0 : Math.ceil(Math.max(...supply.boxes.map((box) => Math.max(box.promised, box.itemsPerBox, box.high)))) + 0.2;
  const ribbonHeight = layout.ribbon.head + layout.ribbon.pitch * (ground.length - 1) + layout.ribbon.stripHeight + 18;
  return (
    <div className={layout.hasMargin ? 'ground-desk with-margin' : 'ground-desk'}>
      <div className="gutter-column">
        <Gutter ground={ground} layout={layout.ribbon} chosenPlot={chosenPlot} areaUnit={view.shows.area} onChoosePlot={props.onChoosePlot} />
        {supply === null ? null : <BoxCaption promised={Math.max(...supply.boxes.map((box) => box.promised))} top={ribbonHeight + fanPx} promiseY={22 + layout.brickItem * (room - Math.max(...supply.boxes.map((box) => box.promised)))} />}
        <NitrogenCaption year={chosenYear} top={ribbonHeight + (supply === null ? 0 : fanPx + 22 + layout.brickItem * room + 20) + 10} />
      </div>
      <section className="wide-frame" tabIndex={0} aria-label={words.ribbon.frame}>
        <CoverRibbon ground={ground} horizon={plan.horizon} years={years} today={plan.today} chosenYear={chosenYear} marks={props.marks} layout={layout.ribbon} onOpenStand={props.onOpenStand} onChooseYear={props.onChooseYear} />
        {supply === null ? null : (
          <>
            <Fan years={years} chosenYear={chosenYear} pxPerWeek={layout.ribbon.width / plan.horizon.weeks} width={layout.ribbon.width} />
            <BoxBricks supply={supply} layout={{ width: layout.ribbon.width, item: layout.brickItem, room }} week={week} onTurn={turn} onPoint={setPointed} />
          </>
        )}
        <NitrogenBars ground={ground} nitrogen={plan.nitrogen} year={chosenYear} width={layout.ribbon.width} height={layout.nitrogenHeight} chosenPlot={chosenPlot} />
      </section>
      <GroundNotes {...props} layout={layout} ribbonHeight={ribbonHeight} pointed={supply?.boxes.find((box) => box.week === (pointed ?? week)) ?? null} />
    </div>
  );
}

const fanPx = 22;

/** The chosen year of the ribbon opens into the weeks below. */
function Fan({ years, chosenYear, pxPerWeek, width }: { readonly years: readonly RibbonYear[]; readonly chosenYear: number; readonly pxPerWeek: number; readonly width: number }) {
  const year = years.find(({ isoYear }) => isoYear === chosenYear);
  if (year === undefined) return null;
  const left = year.fromWeek * pxPerWeek;
  const right = (year.fromWeek + year.weeks) * pxPerWeek;
  return (
    <svg className="fan" width={width} height={fanPx} aria-hidden="true">
      <path d={`M${left} -15C${left} 12 1 -12 1 ${fanPx - 4}M${right} -15C${right} 12 ${width - 1} -12 ${width - 1} ${fanPx - 4}`} fill="none" stroke="var(--chosen)" strokeWidth="2" />
    </svg>
  );
}

function BoxCaption({ promised, top, promiseY }: { readonly promised: number; readonly top: number; readonly promiseY: number }) {
  return (
    <div className="box-caption" style={{ top }}>
      <h2><Link to="/boxes">{words.box.name}</Link></h2>
      <b className="promise-line-name" style={{ top: promiseY - 9 }}>{words.box.promise(promised)}</b>
      <div className="box-key" style={{ top: promiseY + 16 }}>
        <p>{words.box.readIt}</p>
        <p><svg width="16" height="12" aria-hidden="true"><g transform="translate(.5 .5)"><Mark family="root" width={14} height={11} isHollow={false} /></g></svg>{words.box.field}</p>
        <p><svg width="16" height="12" aria-hidden="true"><g transform="translate(.5 .5)"><Mark family="root" width={14} height={11} isHollow={true} /></g></svg>{words.box.fromStore}</p>
      </div>
    </div>
  );
}

function NitrogenCaption({ year, top }: { readonly year: number; readonly top: number }) {
  return <div className="nitrogen-caption" style={{ top }}><h2>{words.nitrogen.name(year)}</h2><p>{words.nitrogen.unit}</p></div>;
}
