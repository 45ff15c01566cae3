import type { IsoWeek } from '@leywright/measures';
import { Link } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { Mark } from '../../look/marks/mark.tsx';
import { StateFrame } from '../../look/page/state-frame.tsx';
import { useViewport } from '../../look/page/use-viewport.ts';
import { BoxBricks } from '../../pictures/boxes/box-bricks.tsx';
import { NitrogenBars } from '../../pictures/nitrogen/nitrogen-bars.tsx';
import { CoverRibbon } from '../../pictures/ribbon/cover-ribbon.tsx';
import { Gutter } from '../../pictures/ribbon/gutter.tsx';
import type { RibbonYear } from '../../pictures/weeks.ts';
import { words } from '../../words.ts';
import { fanPx, type GroundLayout, groundLayout } from './ground-layout.ts';
import { GroundNotes } from './ground-notes.tsx';
import type { GroundProps } from './ground-props.ts';

/** Ribbon, box and nitrogen below one another on one scale of time, with the notes in the margin. */
export function GroundDesk(props: GroundProps) {
  const { view, ground } = props;
  const { plan } = view;
  const { week } = useAppState();
  const viewport = useViewport();
  const [pointed, setPointed] = useState<IsoWeek | null>(null);
  const layout = useMemo(
    () => groundLayout(viewport, { plots: ground.length, weeks: plan.horizon.weeks, supply: plan.supply }),
    [viewport, ground.length, plan.horizon.weeks, plan.supply],
  );
  const box = plan.supply?.boxes.find((one) => one.week === (pointed ?? week)) ?? null;
  return (
    <div className={layout.hasMargin ? 'ground-desk with-margin' : 'ground-desk'}>
      <LeftOfPictures {...props} layout={layout} />
      <section className="wide-frame" tabIndex={0} aria-label={words.ribbon.frame}>
        <Pictures {...props} layout={layout} onPoint={setPointed} />
      </section>
      <GroundNotes {...props} layout={layout} pointed={box} />
    </div>
  );
}

interface LaidOutProps extends GroundProps {
  readonly layout: GroundLayout;
}

function LeftOfPictures({ view, ground, chosenPlot, chosenYear, onChoosePlot, layout }: LaidOutProps) {
  return (
    <div className="gutter-column">
      <Gutter
        ground={ground}
        layout={layout.ribbon}
        chosenPlot={chosenPlot}
        areaUnit={view.shows.area}
        onChoosePlot={onChoosePlot}
      />
      {layout.box === null ? null : (
        <BoxCaption promised={layout.box.promised} top={layout.box.top} promiseY={layout.box.promiseY} />
      )}
      <NitrogenCaption year={chosenYear} top={layout.nitrogen.top} />
    </div>
  );
}

function Pictures(props: LaidOutProps & { readonly onPoint: (week: IsoWeek | null) => void }) {
  const { view, ground, years, chosenYear, chosenPlot, layout } = props;
  const { horizon, supply, today, nitrogen } = view.plan;
  const { week, turn } = useAppState();
  const { width } = layout.ribbon;
  const isOld = supply !== null && supply.year !== chosenYear;
  return (
    <>
      <CoverRibbon
        ground={ground}
        horizon={horizon}
        years={years}
        today={today}
        chosenYear={chosenYear}
        marks={props.marks}
        layout={layout.ribbon}
        onOpenStand={props.onOpenStand}
        onChooseYear={props.onChooseYear}
      />
      {supply === null || layout.box === null ? null : (
        <StateFrame state={isOld ? { kind: 'old', sentence: words.state.working } : { kind: 'fresh' }} height={200}>
          <Fan years={years} chosenYear={chosenYear} pxPerWeek={width / horizon.weeks} width={width} />
          <BoxBricks
            supply={supply}
            layout={{ width, item: layout.box.item, room: layout.box.room }}
            week={week}
            onTurn={turn}
            onPoint={props.onPoint}
          />
        </StateFrame>
      )}
      <NitrogenBars
        ground={ground}
        nitrogen={nitrogen}
        year={chosenYear}
        width={width}
        height={layout.nitrogen.height}
        chosenPlot={chosenPlot}
      />
    </>
  );
}

/** The chosen year of the ribbon opens into the weeks below. */
function Fan({
  years,
  chosenYear,
  pxPerWeek,
  width,
}: {
  readonly years: readonly RibbonYear[];
  readonly chosenYear: number;
  readonly pxPerWeek: number;
  readonly width: number;
}) {
  const year = years.find(({ isoYear }) => isoYear === chosenYear);
  if (year === undefined) return null;
  const left = year.fromWeek * pxPerWeek;
  const right = (year.fromWeek + year.weeks) * pxPerWeek;
  return (
    <svg className="fan" width={width} height={fanPx} aria-hidden="true">
      <path
        d={`M${left} -15C${left} 12 1 -12 1 ${fanPx - 4}M${right} -15C${right} 12 ${width - 1} -12 ${width - 1} ${fanPx - 4}`}
        fill="none"
        stroke="var(--chosen)"
        strokeWidth="2"
      />
    </svg>
  );
}

function BoxCaption({
  promised,
  top,
  promiseY,
}: {
  readonly promised: number;
  readonly top: number;
  readonly promiseY: number;
}) {
  return (
    <div className="box-caption" style={{ top }}>
      <h2>
        <Link to="/boxes">{words.box.name}</Link>
      </h2>
      <b className="promise-line-name" style={{ top: promiseY - 9 }}>
        {words.box.promise(promised)}
      </b>
      <div className="box-key" style={{ top: promiseY + 16 }}>
        <p>{words.box.readIt}</p>
        <p>
          <svg width="16" height="12" aria-hidden="true">
            <g transform="translate(.5 .5)">
              <Mark family="root" width={14} height={11} isHollow={false} />
            </g>
          </svg>
          {words.box.field}
        </p>
        <p>
          <svg width="16" height="12" aria-hidden="true">
            <g transform="translate(.5 .5)">
              <Mark family="root" width={14} height={11} isHollow={true} />
            </g>
          </svg>
          {words.box.fromStore}
        </p>
      </div>
    </div>
  );
}

function NitrogenCaption({ year, top }: { readonly year: number; readonly top: number }) {
  return (
    <div className="nitrogen-caption" style={{ top }}>
      <h2>{words.nitrogen.name(year)}</h2>
      <p>{words.nitrogen.unit}</p>
    </div>
  );
}
