import { type IsoWeek, mondayOf } from '@leywright/measures';
import type { BoxWeek, Supply } from '@leywright/planner';
import { type KeyboardEvent, memo } from 'react';
import { dayAndMonth, monthStarts, weekNumberOf } from '../../look/head/year-weeks.ts';
import { Mark } from '../../look/marks/mark.tsx';
import { words } from '../../words.ts';
import { type Brick, spokenBox, stackOf } from './box-stack.ts';

export interface BricksLayout {
  readonly width: number;
  /** Height of one item. */
  readonly item: number;
  /** Items the picture has room for above its floor. */
  readonly room: number;
}

interface BoxBricksProps {
  readonly supply: Supply;
  readonly layout: BricksLayout;
  readonly week: IsoWeek;
  readonly onTurn: (week: IsoWeek) => void;
  readonly onPoint: (week: IsoWeek | null) => void;
}

/** Room for months above the bricks, and for a word below. */
export const bricksHeadPx = 22;
export const bricksFootPx = 20;

/** The weeks of a year, a brick an item, against the promise. Weeks without a box stand open and say so. */
export function BoxBricks({ supply, layout, week, onTurn, onPoint }: BoxBricksProps) {
  const pitch = layout.width / supply.boxes.length;
  const floor = bricksHeadPx + layout.item * layout.room;
  const promised = Math.max(0, ...supply.boxes.map((box) => box.promised));
  const promiseY = floor - promised * layout.item;
  const hasChosen = supply.boxes.some((box) => box.week === week);
  return (
    <svg
      className="bricks"
      width={layout.width}
      height={floor + bricksFootPx}
      role="listbox"
      aria-label={words.box.nameLong(supply.year)}
    >
      <g aria-hidden="true">
        {monthStarts(supply.year).map(({ name, week: number }) => (
          <text key={name} x={(number - 1) * pitch + 2} y={12} className="month">
            {name.slice(0, 3)}
          </text>
        ))}
        <HungryGap supply={supply} pitch={pitch} top={bricksHeadPx} floor={floor} />
        {supply.boxes.map((box, index) => (
          <g key={box.week} transform={`translate(${index * pitch} 0)`}>
            <Week box={box} pitch={pitch} item={layout.item} floor={floor} />
          </g>
        ))}
      </g>
      {supply.boxes.map((box, index) => (
        <g
          key={box.week}
          role="option"
          aria-selected={box.week === week}
          aria-label={boxName(box)}
          className="box-week"
          transform={`translate(${index * pitch} 0)`}
          tabIndex={box.week === week || (!hasChosen && index === 0) ? 0 : -1}
          onClick={() => onTurn(box.week)}
          onPointerEnter={() => onPoint(box.week)}
          onPointerLeave={() => onPoint(null)}
          onFocus={() => onPoint(box.week)}
          onBlur={() => onPoint(null)}
          onKeyDown={(event) => turnByKey(event, supply.boxes, index, onTurn)}
        >
          <rect width={pitch} height={floor} fill="transparent" />
          <rect className="focus-ring" x={1} y={bricksHeadPx - 4} width={pitch - 2} height={floor - bricksHeadPx + 6} />
        </g>
      ))}
      <g aria-hidden="true" pointerEvents="none">
        <line x1={0} x2={layout.width} y1={floor + 0.5} y2={floor + 0.5} stroke="var(--ink)" />
        <line x1={0} x2={layout.width} y1={promiseY} y2={promiseY} stroke="var(--ink)" strokeWidth="1.8" />
        <ChosenWeek supply={supply} week={week} pitch={pitch} floor={floor} />
      </g>
    </svg>
  );
}

const Week = memo(function Week({
  box,
  pitch,
  item,
  floor,
}: {
  readonly box: BoxWeek;
  readonly pitch: number;
  readonly item: number;
  readonly floor: number;
}) {
  const width = pitch * 0.7;
  const left = pitch * 0.075;
  if (box.closed !== null || box.boxes === 0) {
    return (
      <text className="axis" transform={`translate(${pitch / 2 + 4} ${floor - 6}) rotate(-90)`}>
        {words.box.noBox}
      </text>
    );
  }
  const stack = stackOf(box);
  const top = stack.reduce((sum, { items }) => sum + items, 0);
  return (
    <>
      {stack.map((brick) => (
        <BrickMark key={brick.id} brick={brick} x={left} width={width} item={item} floor={floor} />
      ))}
      <Missing box={box} top={top} x={left} width={width} item={item} floor={floor} />
      {box.high > box.low ? (
        <LikelyLine x={pitch * 0.885} low={floor - box.low * item} high={floor - box.high * item} />
      ) : null}
    </>
  );
});

function BrickMark({
  brick,
  x,
  width,
  item,
  floor,
}: {
  readonly brick: Brick;
  readonly x: number;
  readonly width: number;
  readonly item: number;
  readonly floor: number;
}) {
  const height = Math.max(2, brick.items * item - 1.3);
  const isCounted = brick.crops.length > 1 && height >= 11;
  return (
    <g transform={`translate(${x} ${floor - (brick.below + brick.items) * item})`}>
      <Mark family={brick.look} width={width} height={height} isHollow={brick.isStore} />
      {isCounted ? (
        <text
          x={width / 2}
          y={height / 2 + 4.3}
          textAnchor="middle"
          className={darkLooks.has(brick.look) && !brick.isStore ? 'brick-count light' : 'brick-count'}
        >
          {brick.crops.length}
        </text>
      ) : null}
    </g>
  );
}

const darkLooks: ReadonlySet<string> = new Set(['beet', 'pulse']);

function Missing({
  box,
  top,
  x,
  width,
  item,
  floor,
}: {
  readonly box: BoxWeek;
  readonly top: number;
  readonly x: number;
  readonly width: number;
  readonly item: number;
  readonly floor: number;
}) {
  const short = box.shortItems;
  if (short < 0.05) return null;
  const whole = Math.ceil(short - 0.05);
  return Array.from({ length: whole }, (_, index) => {
    const items = Math.min(1, short - index);
    return (
      <rect
        key={index}
        className="missing"
        x={x + 0.7}
        y={floor - (top + index + items) * item + 0.7}
        width={width - 1.4}
        height={Math.max(2, items * item - 2.7)}
      />
    );
  });
}

function LikelyLine({ x, low, high }: { readonly x: number; readonly low: number; readonly high: number }) {
  return (
    <>
      <line x1={x} x2={x} y1={low} y2={high} stroke="var(--paper)" strokeWidth="4" />
      <line x1={x} x2={x} y1={low} y2={high} stroke="var(--ink)" strokeWidth="1.6" />
    </>
  );
}

/** The one clock's week, framed in blue with a halo. */
function ChosenWeek({
  supply,
  week,
  pitch,
  floor,
}: {
  readonly supply: Supply;
  readonly week: IsoWeek;
  readonly pitch: number;
  readonly floor: number;
}) {
  const index = supply.boxes.findIndex((box) => box.week === week);
  if (index < 0) return null;
  const frame = { x: index * pitch - 1, y: bricksHeadPx - 2, width: pitch, height: floor - bricksHeadPx + 5 };
  return (
    <>
      <rect {...frame} fill="none" stroke="var(--halo)" strokeWidth="4.6" strokeOpacity=".9" />
      <rect {...frame} fill="none" stroke="var(--chosen)" strokeWidth="2.2" />
    </>
  );
}

function HungryGap({
  supply,
  pitch,
  top,
  floor,
}: {
  readonly supply: Supply;
  readonly pitch: number;
  readonly top: number;
  readonly floor: number;
}) {
  if (supply.hungryGap === null) return null;
  const from = supply.boxes.findIndex((box) => box.week === supply.hungryGap?.from);
  const to = supply.boxes.findIndex((box) => box.week === supply.hungryGap?.to);
  if (from < 0 || to < from) return null;
  return (
    <>
      <rect x={from * pitch} y={top} width={(to - from + 1) * pitch} height={floor - top} fill="url(#hungry-gap)" />
      <text x={((from + to + 1) / 2) * pitch} y={floor + 16} textAnchor="middle" className="month">
        {words.box.hungryGap}
      </text>
    </>
  );
}

/** "Week 26, Monday 28 June: 5 of 7 items: potatoes, …" */
export function boxName(box: BoxWeek): string {
  const when = `${words.box.week} ${weekNumberOf(box.week)}, ${dayAndMonth(mondayOf(box.week))}`;
  if (box.closed !== null || box.boxes === 0) return `${when}: ${words.box.noBox}`;
  return `${when}: ${itemsText(box.itemsPerBox)} ${words.box.of} ${box.promised} ${words.box.items}: ${spokenBox(box)}`;
}

/** Whole items as whole numbers, parts with one decimal. */
export function itemsText(items: number): string {
  return Math.abs(items - Math.round(items)) < 0.05 ? String(Math.round(items)) : items.toFixed(1);
}

function turnByKey(
  event: KeyboardEvent<SVGGElement>,
  boxes: readonly BoxWeek[],
  index: number,
  onTurn: (week: IsoWeek) => void,
): void {
  const steps: Readonly<Record<string, number>> = {
    ArrowRight: index + 1,
    ArrowLeft: index - 1,
    Home: 0,
    End: boxes.length - 1,
    Enter: index,
    ' ': index,
  };
  const to = steps[event.key];
  const box = to === undefined ? undefined : boxes[to];
  if (to === undefined) return;
  event.preventDefault();
  if (box === undefined) return;
  onTurn(box.week);
  const options = event.currentTarget.parentElement?.querySelectorAll<SVGGElement>('[role="option"]');
  options?.[to]?.focus();
}
