import type { IsoWeek } from '@leywright/measures';
import type { BoxWeek, Supply } from '@leywright/planner';
import { monthStarts, weekNumberOf } from '../../look/head/year-weeks.ts';
import { words } from '../../words.ts';

interface BackdropProps {
  readonly supply: Supply;
  readonly pitch: number;
  readonly floor: number;
  readonly head: number;
  readonly week: IsoWeek;
}

/** Months, week numbers, the hungry gap and the weeks without a box, behind the rows of the year. */
export function Backdrop(props: BackdropProps) {
  return (
    <>
      <HungryGap {...props} />
      <Months {...props} />
      <WeeksWithoutBox {...props} />
      <WeekNumbers {...props} />
    </>
  );
}

function HungryGap({ supply, pitch, floor, head }: BackdropProps) {
  const from = supply.boxes.findIndex((box) => box.week === supply.hungryGap?.from);
  const to = supply.boxes.findIndex((box) => box.week === supply.hungryGap?.to);
  if (from < 0 || to < from) return null;
  return (
    <>
      <rect
        x={from * pitch}
        y={head - 44}
        width={(to - from + 1) * pitch}
        height={floor - head + 44}
        fill="url(#hungry-gap)"
      />
      <text x={((from + to + 1) / 2) * pitch} y={head - 50} textAnchor="middle" className="axis">
        {words.box.hungryGap}
      </text>
    </>
  );
}

function Months({ supply, pitch, floor, head }: BackdropProps) {
  return monthStarts(supply.year).map(({ name, week: number }) => (
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
  ));
}

function WeeksWithoutBox({ supply, pitch, floor, head }: BackdropProps) {
  return supply.boxes.map((box, index) =>
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
  );
}

/** Every fifth week is named, and the chosen one, which pushes its neighbours aside. */
function WeekNumbers({ supply, pitch, floor, week }: BackdropProps) {
  const chosen = weekNumberOf(week);
  return supply.boxes.map((box, index) => {
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
  });
}

/** Items a box as a dot on or under the promise; red and hollow when short. */
export function PromiseLine({
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
