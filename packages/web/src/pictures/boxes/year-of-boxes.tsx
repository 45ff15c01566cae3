import type { IsoWeek } from '@leywright/measures';
import type { Supply } from '@leywright/planner';
import { type KeyboardEvent, memo, useMemo } from 'react';
import { Mark } from '../../look/marks/mark.tsx';
import { words } from '../../words.ts';
import { boxName } from './box-bricks.tsx';
import { type CropRow, type CropWeek, cropRows } from './crop-rows.ts';
import { Backdrop, PromiseLine } from './year-backdrop.tsx';

export interface YearLayout {
  readonly width: number;
  readonly row: number;
  /** Room above the rows for months and the promise. */
  readonly head: number;
  /** Room at the left for names inside the picture; 0 when they stand beside it. */
  readonly left: number;
}

interface YearOfBoxesProps {
  readonly supply: Supply;
  readonly layout: YearLayout;
  readonly week: IsoWeek;
  readonly onTurn: (week: IsoWeek) => void;
}

const footPx = 26;
const nameLinePx = 15;

/** The whole year: a row a crop, an upright a week, as a row of plants drilled thick or thin. */
export function YearOfBoxes({ supply, layout, week, onTurn }: YearOfBoxesProps) {
  const rows = useMemo(() => cropRows(supply.boxes), [supply.boxes]);
  const pitch = layout.width / supply.boxes.length;
  const floor = layout.head + rows.length * layout.row + 6;
  return (
    <svg
      className="year-of-boxes"
      width={layout.width}
      height={floor + footPx}
      role="listbox"
      aria-label={words.box.nameLong(supply.year)}
      aria-orientation="horizontal"
    >
      <g aria-hidden="true">
        <Backdrop supply={supply} pitch={pitch} floor={floor} head={layout.head} week={week} />
      </g>
      <g aria-hidden="true">
        {rows.map((row, index) => (
          <Row
            key={row.crop}
            row={row}
            y={layout.head + (index + 1) * layout.row}
            pitch={pitch}
            width={layout.width}
            height={layout.row}
          />
        ))}
        <PromiseLine supply={supply} pitch={pitch} y={layout.head - 34} width={layout.width} />
        <ChosenColumn supply={supply} week={week} pitch={pitch} floor={floor} top={layout.head - 44} />
      </g>
      <WeekColumns supply={supply} layout={layout} week={week} onTurn={onTurn} floor={floor} />
    </svg>
  );
}

/** The weeks as a list to choose from: an empty column over each, arrows go from one to the next. */
function WeekColumns({ supply, layout, week, onTurn, floor }: YearOfBoxesProps & { readonly floor: number }) {
  const { boxes } = supply;
  const pitch = layout.width / boxes.length;
  const hasChosen = boxes.some((box) => box.week === week);
  const onKey = (event: KeyboardEvent<SVGGElement>, index: number) => {
    const to = { ArrowRight: index + 1, ArrowLeft: index - 1, Home: 0, End: boxes.length - 1 }[event.key];
    const next = to === undefined ? undefined : boxes[to];
    if (next === undefined || to === undefined) return;
    event.preventDefault();
    onTurn(next.week);
    event.currentTarget.parentElement?.querySelectorAll<SVGGElement>('[role="option"]')[to]?.focus();
  };
  return boxes.map((box, index) => (
    <g
      key={box.week}
      role="option"
      className="box-week"
      aria-selected={box.week === week}
      aria-label={boxName(box)}
      tabIndex={box.week === week || (!hasChosen && index === 0) ? 0 : -1}
      onClick={() => onTurn(box.week)}
      onKeyDown={(event) => onKey(event, index)}
    >
      <rect x={index * pitch} y={layout.head - 48} width={pitch} height={floor - layout.head + 48} fill="transparent" />
      <rect
        className="focus-ring"
        x={index * pitch + 1}
        y={layout.head - 46}
        width={pitch - 2}
        height={floor - layout.head + 44}
      />
    </g>
  ));
}

/** Names of the rows, set right against the picture. */
export function RowNames({ supply, layout }: { readonly supply: Supply; readonly layout: YearLayout }) {
  const rows = useMemo(() => cropRows(supply.boxes), [supply.boxes]);
  const promised = Math.max(0, ...supply.boxes.map((box) => box.promised));
  return (
    <ul className="row-names" style={{ height: layout.head + rows.length * layout.row }} aria-hidden="true">
      <li className="promise-name" style={{ top: layout.head - 43 }}>
        <b>{words.box.promise(promised)}</b>
        <small>{words.box.itemsABox}</small>
      </li>
      {rows.map((row, index) => (
        <li key={row.crop} style={{ top: layout.head + (index + 1) * layout.row - nameLinePx }}>
          {row.name}
        </li>
      ))}
    </ul>
  );
}

const Row = memo(function Row({
  row,
  y,
  pitch,
  width,
  height,
}: {
  readonly row: CropRow;
  readonly y: number;
  readonly pitch: number;
  readonly width: number;
  readonly height: number;
}) {
  return (
    <>
      <line x1={0} x2={width} y1={y + 0.5} y2={y + 0.5} stroke="var(--ink)" strokeOpacity=".45" />
      {row.weeks.map((week) => (
        <Upright key={week.index} week={week} row={row} y={y} pitch={pitch} tallest={height - 3} />
      ))}
    </>
  );
});

/** As high as the share of boxes that carry the crop; hollow from store; an arc over it under cover. */
function Upright({
  week,
  row,
  y,
  pitch,
  tallest,
}: {
  readonly week: CropWeek;
  readonly row: CropRow;
  readonly y: number;
  readonly pitch: number;
  readonly tallest: number;
}) {
  const width = Math.min(14, pitch * 0.54);
  const x = (week.index + 0.5) * pitch - width / 2;
  const height = Math.max(3, week.boxesShare * (week.from === 'tunnel' ? tallest - 3 : tallest));
  const top = y - height;
  return (
    <g transform={`translate(${x} ${top})`}>
      <Mark family={row.look} width={width} height={height} isHollow={week.from === 'store'} />
      {week.from === 'tunnel' ? (
        <path
          d={`M-2.4 1.5q${width / 2 + 2.4} -8.5 ${width + 4.8} 0`}
          fill="none"
          stroke="var(--ink)"
          strokeWidth="1.3"
        />
      ) : null}
    </g>
  );
}

function ChosenColumn({
  supply,
  week,
  pitch,
  floor,
  top,
}: {
  readonly supply: Supply;
  readonly week: IsoWeek;
  readonly pitch: number;
  readonly floor: number;
  readonly top: number;
}) {
  const index = supply.boxes.findIndex((box) => box.week === week);
  if (index < 0) return null;
  const frame = { x: index * pitch + 0.5, y: top, width: pitch - 1, height: floor - top + 2 };
  return (
    <>
      <rect {...frame} fill="none" stroke="var(--halo)" strokeWidth="5.2" strokeOpacity=".9" />
      <rect {...frame} fill="none" stroke="var(--chosen)" strokeWidth="2.2" />
    </>
  );
}
