import type { Day } from '@leywright/measures';
import type { Horizon, PlacedStand, PlotGround } from '@leywright/planner';
import { type ReactNode, useMemo, useState } from 'react';
import { words } from '../../words.ts';
import { measureOnScreen } from '../measure-text.ts';
import { type RibbonYear, weeksFromStart } from '../weeks.ts';
import { type Label, placeLabels } from './labels.ts';
import { layersOf } from './layers.ts';
import type { FaultMark } from './marks.ts';
import { StandGrid } from './stand-grid.tsx';
import { heightIn, Strip, type StripScale } from './strip.tsx';

export interface RibbonLayout {
  readonly width: number;
  readonly stripHeight: number;
  /** From the top of one strip to the next. */
  readonly pitch: number;
  /** Above the first strip: years and the first line of names. */
  readonly head: number;
}

interface CoverRibbonProps {
  readonly ground: readonly PlotGround[];
  readonly horizon: Horizon;
  readonly years: readonly RibbonYear[];
  readonly today: Day;
  readonly chosenYear: number;
  readonly marks: readonly FaultMark[];
  readonly layout: RibbonLayout;
  readonly onOpenStand: (stand: PlacedStand) => void;
  readonly onChooseYear: (isoYear: number) => void;
}

/** Ten years of every plot: the height of a stand is the ground it covers, week by week. */
export function CoverRibbon(props: CoverRibbonProps) {
  const { ground, horizon, years, today, chosenYear, marks, layout } = props;
  const [pointed, setPointed] = useState<PlacedStand | null>(null);
  const pxPerWeek = layout.width / horizon.weeks;
  const todayWeek = weeksFromStart(horizon, today);
  const scale: StripScale = useMemo(
    () => ({ horizon, pxPerWeek, width: layout.width, height: layout.stripHeight, todayWeek }),
    [horizon, pxPerWeek, layout.width, layout.stripHeight, todayWeek],
  );
  const yearStarts = useMemo(() => years.map(({ fromWeek }) => fromWeek * pxPerWeek), [years, pxPerWeek]);
  const height = layout.head + layout.pitch * (ground.length - 1) + layout.stripHeight + 18;
  return (
    <svg
      className="ribbon"
      width={layout.width}
      height={height}
      role="grid"
      aria-label={words.ribbon.name(horizon.fromYear, horizon.toYear)}
    >
      <YearNames years={years} chosenYear={chosenYear} pxPerWeek={pxPerWeek} onChooseYear={props.onChooseYear} />
      {ground.map((plot, index) => (
        <g
          key={plot.plot}
          role="row"
          aria-label={plot.name}
          transform={`translate(0 ${layout.head + index * layout.pitch})`}
        >
          <PlotRow
            ground={plot}
            scale={scale}
            yearStarts={yearStarts}
            isFirst={index === 0}
            pointed={pointed?.plot === plot.plot ? pointed : null}
            onPoint={setPointed}
            onOpen={props.onOpenStand}
            frame={
              <ChosenFrame
                years={years}
                chosenYear={chosenYear}
                pxPerWeek={pxPerWeek}
                height={layout.stripHeight}
                isFirst={index === 0}
              />
            }
            marks={marks.filter((mark) => mark.plot === plot.plot)}
          />
        </g>
      ))}
      <path
        aria-hidden="true"
        transform={`translate(${Math.min(layout.width, Math.max(0, todayWeek * pxPerWeek))} ${layout.head - 3})`}
        d="M0 0l-5 -7h10z"
        fill="var(--ink)"
      />
    </svg>
  );
}

interface PlotRowProps {
  readonly ground: PlotGround;
  readonly scale: StripScale;
  readonly yearStarts: readonly number[];
  readonly isFirst: boolean;
  readonly pointed: PlacedStand | null;
  readonly frame: ReactNode;
  readonly marks: readonly FaultMark[];
  readonly onPoint: (stand: PlacedStand | null) => void;
  readonly onOpen: (stand: PlacedStand) => void;
}

function PlotRow({ ground, scale, yearStarts, isFirst, pointed, frame, marks, onPoint, onOpen }: PlotRowProps) {
  const layers = useMemo(
    () => layersOf(ground.stands, (stand) => weeksFromStart(scale.horizon, stand.to)),
    [ground.stands, scale.horizon],
  );
  return (
    <>
      <g aria-hidden="true">
        <Strip ground={ground} layers={layers} scale={scale} yearStarts={yearStarts} />
        <Names ground={ground} scale={scale} pointed={pointed} isFirst={isFirst} />
        {frame}
        {marks.map((mark) => (
          <Fault key={mark.id} mark={mark} pxPerWeek={scale.pxPerWeek} y={scale.height + 4} width={scale.width} />
        ))}
      </g>
      <StandGrid
        plotName={ground.name}
        layers={layers}
        scale={scale}
        heightOf={heightIn(scale.height)}
        isFirstRow={isFirst}
        onPoint={onPoint}
        onOpen={onOpen}
      />
    </>
  );
}

function YearNames({
  years,
  chosenYear,
  pxPerWeek,
  onChooseYear,
}: Pick<CoverRibbonProps, 'years' | 'chosenYear' | 'onChooseYear'> & { readonly pxPerWeek: number }) {
  return years.map(({ isoYear, fromWeek }) => (
    <text
      key={isoYear}
      aria-hidden="true"
      x={fromWeek * pxPerWeek + 3}
      y={13}
      className={isoYear === chosenYear ? 'year chosen' : 'year'}
      onClick={() => onChooseYear(isoYear)}
    >
      {isoYear}
    </text>
  ));
}

/** The line of names above a strip; the stand pointed at or in focus is named in full, and names in its way step back. */
function Names({
  ground,
  scale,
  pointed,
  isFirst,
}: {
  readonly ground: PlotGround;
  readonly scale: StripScale;
  readonly pointed: PlacedStand | null;
  readonly isFirst: boolean;
}) {
  const labels = useMemo(
    () =>
      placeLabels(ground.stands, scale, {
        measure: measureOnScreen,
        keepClear: isFirst ? [scale.todayWeek * scale.pxPerWeek] : [],
        familyNames: (stand) => [words.key[stand.look], words.keyShort[stand.look]],
      }),
    [ground.stands, scale, isFirst],
  );
  const full = pointed === null ? null : fullName(pointed, scale);
  const shown =
    full === null
      ? labels
      : labels.filter((label) => Math.abs(label.middle - full.middle) > (label.width + full.width) / 2 + 7);
  return (
    <>
      {shown.map((label) => (
        <Name key={`${label.standId}-${label.text}`} label={label} isPointed={false} />
      ))}
      {full === null ? null : <Name label={full} isPointed={true} />}
    </>
  );
}

function Name({ label, isPointed }: { readonly label: Label; readonly isPointed: boolean }) {
  return (
    <text x={label.middle} y={-5} textAnchor="middle" className={isPointed ? 'stand-name pointed' : 'stand-name'}>
      {label.text}
    </text>
  );
}

function fullName(stand: PlacedStand, scale: StripScale): Label {
  const text = stand.variety === null ? stand.name : `${stand.name}, ${stand.variety}`;
  const width = measureOnScreen(text, 12, 'normal');
  const middle =
    ((weeksFromStart(scale.horizon, stand.from) + weeksFromStart(scale.horizon, stand.to)) / 2) * scale.pxPerWeek;
  return {
    standId: stand.id,
    text,
    width,
    isNarrow: false,
    middle: Math.min(Math.max(middle, width / 2), scale.width - width / 2),
  };
}

/** Two uprights in blue with a halo, broken between strips so that no name is crossed. */
function ChosenFrame({
  years,
  chosenYear,
  pxPerWeek,
  height,
  isFirst,
}: {
  readonly years: readonly RibbonYear[];
  readonly chosenYear: number;
  readonly pxPerWeek: number;
  readonly height: number;
  readonly isFirst: boolean;
}) {
  const year = years.find(({ isoYear }) => isoYear === chosenYear);
  if (year === undefined) return null;
  const left = year.fromWeek * pxPerWeek;
  const right = (year.fromWeek + year.weeks) * pxPerWeek;
  const path = `M${left} ${isFirst ? 1 : 0}V${height + 4}M${right} ${isFirst ? 1 : 0}V${height + 4}${isFirst ? `M${left - 1} 1H${right + 1}` : ''}`;
  return (
    <>
      <path d={path} fill="none" stroke="var(--halo)" strokeWidth="5.6" strokeOpacity=".92" />
      <path d={path} fill="none" stroke="var(--chosen)" strokeWidth="2.2" />
    </>
  );
}

function Fault({
  mark,
  pxPerWeek,
  y,
  width,
}: {
  readonly mark: FaultMark;
  readonly pxPerWeek: number;
  readonly y: number;
  readonly width: number;
}) {
  const left = Math.max(0, mark.fromWeek * pxPerWeek);
  const right = Math.min(width, mark.toWeek * pxPerWeek);
  const isAtEnd = right > width - 14;
  return (
    <>
      <rect x={left - 2} y={y - 2} width={right - left + 4} height={9} fill="var(--paper)" />
      {mark.kind === 'open' ? (
        <rect x={left} y={y} width={right - left} height={5} fill="var(--red)" />
      ) : (
        <rect
          x={left + 0.75}
          y={y + 0.75}
          width={right - left - 1.5}
          height={4}
          fill="none"
          stroke="var(--ink)"
          strokeWidth="1.5"
        />
      )}
      {mark.number === null ? null : (
        <text
          x={isAtEnd ? left - 5 : right + 5}
          y={y + 8}
          textAnchor={isAtEnd ? 'end' : 'start'}
          className={mark.kind === 'open' ? 'fault-number' : 'fault-number answered'}
        >
          {mark.number}
        </text>
      )}
    </>
  );
}
