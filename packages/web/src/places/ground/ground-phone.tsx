import type { NitrogenYear } from '@leywright/planner';
import { Link } from '@tanstack/react-router';
import { useMemo, useRef } from 'react';
import { useAppState } from '../../app-state.tsx';
import { Figure, Spoken } from '../../look/page/figure.tsx';
import { useViewport } from '../../look/page/use-viewport.ts';
import { signed } from '../../pictures/nitrogen/nitrogen-bars.tsx';
import { CoverRibbon } from '../../pictures/ribbon/cover-ribbon.tsx';
import { areaText } from '../../pictures/ribbon/gutter.tsx';
import type { FaultMark } from '../../pictures/ribbon/marks.ts';
import { words } from '../../words.ts';
import type { ToldFinding } from '../../worker/plan-source.ts';
import { JobLine, jobsOf } from '../day/job-line.tsx';
import { type FourYears, fourYears } from './four-years.ts';
import type { GroundProps } from './ground-props.ts';

/** Ground on a phone: one plot at a time, four years of it, what is to put right there, its next jobs. */
export function GroundPhone(props: GroundProps) {
  const { view, ground, chosenPlot, onChoosePlot, chosenYear } = props;
  const { width } = useViewport();
  const { week } = useAppState();
  const plot = ground.find((one) => one.plot === chosenPlot) ?? ground[0];
  const near = useMemo(
    () => (plot === undefined ? null : fourYears(plot, view.plan.horizon, chosenYear)),
    [plot, view.plan.horizon, chosenYear],
  );
  const swipe = useSwipe((step) => {
    const next = ground[ground.findIndex((one) => one.plot === plot?.plot) + step];
    if (next !== undefined) onChoosePlot(next.plot);
  });
  if (plot === undefined || near === null) return null;
  const open = props.toPutRight.filter(({ finding }) => finding.place.plot === plot.plot);
  const balance = view.plan.nitrogen.find((one) => one.plot === plot.plot && one.year === chosenYear);
  const jobs = jobsOf(view.plan, week, plot.plot);
  return (
    <div className="ground-phone" {...swipe}>
      <Letters ground={ground} plot={plot.plot} onChoosePlot={onChoosePlot} />
      <h2>{plot.name}</h2>
      <p>
        {areaText(plot.area.grossM2, view.shows.area)}.{' '}
        {plot.courses.find(({ year }) => year === chosenYear)?.name ?? ''}
      </p>
      <CoverRibbon
        ground={[near.ground]}
        horizon={near.horizon}
        years={near.years}
        today={view.plan.today}
        chosenYear={chosenYear}
        onOpenStand={props.onOpenStand}
        onChooseYear={props.onChooseYear}
        marks={marksNear(props.marks, plot.plot, near)}
        layout={{ width: Math.max(280, width - 36), stripHeight: 92, pitch: 120, head: 38 }}
      />
      <OpenHere open={open} />
      {balance === undefined ? null : <PlotNitrogen balance={balance} year={chosenYear} />}
      <ol className="jobs">
        {jobs.map((job) => (
          <JobLine key={job.id} job={job} isNext={false} shows={view.shows} />
        ))}
      </ol>
      <p>
        <Link className="link" to="/boxes">
          {words.box.openWeek}
        </Link>
      </p>
    </div>
  );
}

function Letters({
  ground,
  plot,
  onChoosePlot,
}: Pick<GroundProps, 'ground' | 'onChoosePlot'> & { readonly plot: string }) {
  return (
    <div className="letters">
      {ground.map((one) => (
        <button
          key={one.plot}
          type="button"
          aria-pressed={one.plot === plot}
          aria-label={one.name}
          onClick={() => onChoosePlot(one.plot)}
        >
          {one.letter}
        </button>
      ))}
    </div>
  );
}

/** The marks of one plot, counted from the first week the four years show. */
function marksNear(marks: readonly FaultMark[], plot: string, near: FourYears): readonly FaultMark[] {
  return marks
    .filter((mark) => mark.plot === plot)
    .map((mark) => ({ ...mark, fromWeek: mark.fromWeek - near.fromWeek, toWeek: mark.toWeek - near.fromWeek }))
    .filter((mark) => mark.toWeek > 0 && mark.fromWeek < near.horizon.weeks);
}

function OpenHere({ open }: { readonly open: readonly ToldFinding[] }) {
  return open.map(({ finding, lead, body, mends }, index) => (
    <div key={`${finding.code}-${index}`} className="open-here">
      <h3>{lead}</h3>
      <p>
        <Spoken sentence={body} />
      </p>
      {mends[0] === undefined ? null : (
        <p>
          <Spoken sentence={mends[0]} />
        </p>
      )}
    </div>
  ));
}

function PlotNitrogen({ balance, year }: { readonly balance: NitrogenYear; readonly year: number }) {
  return (
    <p className="phone-nitrogen">
      {words.nitrogen.name(year)}:{' '}
      <Figure id={balance.why}>{`${signed(balance.leftKgHa.low)} to ${signed(balance.leftKgHa.high)} kg/ha`}</Figure>{' '}
      {words.nitrogen.left}
    </p>
  );
}

const swipePx = 60;

/** A swipe across the page goes to the neighbour plot; the letters do the same without it. */
function useSwipe(onSwipe: (step: 1 | -1) => void) {
  const start = useRef<{ readonly x: number; readonly y: number } | null>(null);
  return {
    onTouchStart: (event: React.TouchEvent) => {
      const touch = event.touches[0];
      start.current = touch === undefined ? null : { x: touch.clientX, y: touch.clientY };
    },
    onTouchEnd: (event: React.TouchEvent) => {
      const touch = event.changedTouches[0];
      if (touch === undefined || start.current === null) return;
      const across = touch.clientX - start.current.x;
      if (Math.abs(across) > swipePx && Math.abs(across) > 2 * Math.abs(touch.clientY - start.current.y))
        onSwipe(across < 0 ? 1 : -1);
    },
  };
}
