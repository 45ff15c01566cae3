import type { IsoWeek } from '@leywright/measures';
import type { BoxWeek, Supply } from '@leywright/planner';
import { memo, useMemo } from 'react';
import { monthStarts, weekNumberOf } from '../../look/head/year-weeks.ts';
import { Mark } from '../../look/marks/mark.tsx';
import { words } from '../../words.ts';
import { boxName } from './box-bricks.tsx';
import { type CropRow, type CropWeek, cropRows } from './crop-rows.ts';

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

/** The whole year: a row a crop, an upright a week, as a row of plants drilled thick or thin. */
export function YearOfBoxes({ supply, layout, week, onTurn }: YearOfBoxesProps) {
  const rows = useMemo(() => cropRows(supply.boxes), [supply.boxes]);
  const pitch = layout.width / supply.boxes.length;
  const floor = layout.head + rows.length * layout.row + 6;
  const hasChosen = supply.boxes.some((box) => box.week === week);
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
      {supply.boxes.map((box, index) => (
        <g
          key={box.week}
          role="option"
          className="box-week"
          aria-selected={box.week === week}
          aria-label={boxName(box)}
          tabIndex={box.week === week || (!hasChosen && index === 0) ? 0 : -1}
          onClick={() => onTurn(box.week)}
          onKeyDown={(event) => {
            const to = { ArrowRight: index + 1, ArrowLeft: index - 1, Home: 0, End: supply.boxes.length - 1 }[
              event.key
            ];
            const next = to === undefined ? undefined : supply.boxes[to];
            if (next === undefined || to === undefined) return;
            event.preventDefault();
            onTurn(next.week);
            event.currentTarget.parentElement?.querySelectorAll<SVGGElement>('[role="option"]')[to]?.focus();
          }}
        >
          <rect
            x={index * pitch}
            y={layout.head - 48}
            width={pitch}
            height={floor - layout.head + 48}
            fill="transparent"
          />
          <rect
            className="focus-ring"
            x={index * pitch + 1}
            y={layout.head - 46}
            width={pitch - 2}
            height={floor - layout.head + 44}
          />
        </g>
      ))}
    </svg>
  );
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
        <li key={row.crop} style={{ top: layout.head + index * layout.row, height: layout.row }}>
          {row.name}
        </li>
      ))}
    </ul>
  );
}

function Backdrop({
  supply,
  pitch,
  floor,
  head,
  week,
}: {
  readonly supply: Supply;
  readonly pitch: number;
  readonly floor: number;
  readonly head: number;
  readonly week: IsoWeek;
}) {
  const gapFrom = supply.boxes.findIndex((box) => box.week === supply.hungryGap?.from);
  const gapTo = supply.boxes.findIndex((box) => box.week === supply.hungryGap?.to);
  const chosen = weekNumberOf(week);
  return (
    <>
      {gapFrom < 0 || gapTo < gapFrom ? null : (
        <rect
          x={gapFrom * pitch}
          y={head - 44}
          width={(gapTo - gapFrom + 1) * pitch}
          height={floor - head + 44}
          fill="url(#hungry-gap)"
        />
      )}
      {gapFrom < 0 || gapTo < gapFrom ? null : (
        <text x={((gapFrom + gapTo + 1) / 2) * pitch} y={head - 50} textAnchor="middle" className="axis">
          {words.box.hungryGap}
        </text>
      )}
      {monthStarts(supply.year).map(({ name, week: number }) => (
        <g key={name}>
          {number > 1 ? (
            <line
              x1={(number - 1) * pitch}
              x2={(number - 1) * pitch}
              y1={head - 44}
              y2={floor}
              stroke="var(--rule)"
              strokeWidth=".8"
            />
          ) : null}
          <text x={(number - 1) * pitch + 2} y={12} className="month">
            {name.slice(0, 3)}
          </text>
        </g>
      ))}
      {supply.boxes.map((box, index) =>
        box.closed !== null || box.boxes === 0 ? (
          <line
            key={box.week}
            x1={(index + 0.5) * pitch}
            x2={(index + 0.5) * pitch}
            y1={head - 8}
            y2={floor}
            stroke="var(--ink3)"
            strokeDasharray="2 4"
          />
        ) : null,
      )}
      {supply.boxes.map((box, index) => {
        const number = index + 1;
        const isNamed = number === chosen || ((number === 1 || number % 5 === 0) && Math.abs(number - chosen) > 1);
        return isNamed ? (
          <text
            key={box.week}
            x={(index + 0.5) * pitch}
            y={floor + 17}
            textAnchor="middle"
            className={number === chosen ? 'axis chosen' : 'axis'}
          >
            {number}
          </text>
        ) : null;
      })}
    </>
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

/** Items a box as a dot on or under the promise; red and hollow when short. */
function PromiseLine({
  supply,
  pitch,
  y,
  width,
}: {
  readonly supply: Supply;
  readonly pitch: number;
  readonly y: number;
  readonly width: number;
}) {
  const promised = Math.max(0, ...supply.boxes.map((box) => box.promised));
  const yOf = (items: number) => y - Math.max(-14, Math.min(14, (items - promised) * 6));
  return (
    <>
      <line x1={0} x2={width} y1={y} y2={y} stroke="var(--ink)" strokeWidth="1.5" />
      {supply.boxes.map((box, index) => (
        <PromiseDot key={box.week} box={box} x={(index + 0.5) * pitch} yOf={yOf} />
      ))}
    </>
  );
}

function PromiseDot({
  box,
  x,
  yOf,
}: {
  readonly box: BoxWeek;
  readonly x: number;
  readonly yOf: (items: number) => number;
}) {
  if (box.closed !== null || box.boxes === 0) return null;
  const isShort = box.shortItems > 0.05;
  return (
    <>
      {box.high > box.low ? (
        <line x1={x} x2={x} y1={yOf(box.low)} y2={yOf(box.high)} stroke="var(--ink)" strokeWidth="1.3" />
      ) : null}
      <circle
        cx={x}
        cy={yOf(box.itemsPerBox)}
        r="3.3"
        fill={isShort ? 'var(--paper)' : 'var(--ink)'}
        stroke={isShort ? 'var(--red)' : 'var(--ink)'}
        strokeWidth="1.8"
      />
    </>
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
