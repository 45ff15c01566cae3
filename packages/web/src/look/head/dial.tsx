import { type IsoWeek, weeksInYear } from '@leywright/measures';
import { type KeyboardEvent, type PointerEvent, useEffect, useRef } from 'react';
import { words } from '../../words.ts';
import { onRing, type Ring, ringSlice, weekUnder } from './dial-ring.ts';
import { isoYearOf, spokenWeek, weekAt, weekNumberOf } from './year-weeks.ts';

/** What the ring of a year shows. It never shows a quantity. */
export interface DialYear {
  /** Weeks of the chosen year with no box. */
  readonly closedWeeks: readonly number[];
  readonly hungryGap: { readonly from: number; readonly to: number } | null;
  readonly today: IsoWeek;
}

interface DialProps extends DialYear {
  readonly week: IsoWeek;
  readonly onTurn: (week: IsoWeek) => void;
  readonly centre: { readonly x: number; readonly y: number };
  readonly radius: number;
}

/** The ring of the year, the only clock: drag it, turn the wheel over it, or use the arrow keys. All places follow. */
export function Dial(props: DialProps) {
  const { week, onTurn, centre, radius } = props;
  const year = isoYearOf(week);
  const ring: Ring = { radius, weeks: weeksInYear(year) };
  const turn = (weeks: number) => onTurn(weekAt(year, weekNumberOf(week) + weeks));
  const door = useWheel(turn);
  const size = radius * 2 + 6;
  const choose = (event: PointerEvent<HTMLDivElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    onTurn(
      weekAt(
        year,
        weekUnder(ring, { x: event.clientX - box.left - box.width / 2, y: event.clientY - box.top - box.height / 2 }),
      ),
    );
  };
  return (
    <div
      ref={door}
      className="dial"
      role="slider"
      tabIndex={0}
      aria-label={words.dial.name}
      aria-valuemin={1}
      aria-valuemax={ring.weeks}
      aria-valuenow={weekNumberOf(week)}
      aria-valuetext={`${spokenWeek(week)}, ${year}`}
      style={{ left: centre.x - size / 2, top: centre.y - size / 2, width: size, height: size }}
      onKeyDown={(event) => turnByKey(event, turn)}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        event.currentTarget.focus({ preventScroll: true });
        choose(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) choose(event);
      }}
    >
      <svg width={size} height={size} viewBox={`${-size / 2} ${-size / 2} ${size} ${size}`} aria-hidden="true">
        <RingOfWeeks {...props} ring={ring} year={year} />
      </svg>
    </div>
  );
}

function RingOfWeeks({
  ring,
  year,
  week,
  closedWeeks,
  hungryGap,
  today,
}: DialProps & { readonly ring: Ring; readonly year: number }) {
  const chosen = weekNumberOf(week);
  const thick = ring.radius * 0.06;
  const gone = (number: number) => weekAt(year, number) < today;
  const numbers = Array.from({ length: ring.weeks }, (_, index) => index + 1);
  const hand = { from: onRing(ring, chosen, 0.6), to: onRing(ring, chosen, 1) };
  return (
    <>
      <circle r={ring.radius} className="face" />
      {hungryGap === null ? null : (
        <path d={ringSlice(ring, hungryGap, { inner: 0.62, outer: 0.77 })} fill="url(#hungry-gap-fine)" />
      )}
      {numbers
        .filter((number) => number !== chosen)
        .map((number) => {
          if (closedWeeks.includes(number)) {
            const at = onRing(ring, number, 0.9);
            return <circle key={number} cx={at.x} cy={at.y} r={ring.radius * 0.042} className="closed" />;
          }
          const inner = onRing(ring, number, 0.8);
          const outer = onRing(ring, number, 1);
          return (
            <line
              key={number}
              x1={inner.x}
              y1={inner.y}
              x2={outer.x}
              y2={outer.y}
              strokeWidth={thick}
              className={gone(number) ? 'tick gone' : 'tick'}
            />
          );
        })}
      {isoYearOf(today) === year ? <TodayMark ring={ring} number={weekNumberOf(today)} /> : null}
      <line
        x1={hand.from.x}
        y1={hand.from.y}
        x2={hand.to.x}
        y2={hand.to.y}
        strokeWidth={thick * 2.1}
        className="hand"
      />
      <text y={ring.radius * 0.19} textAnchor="middle" fontSize={ring.radius * 0.56} className="number">
        {chosen}
      </text>
    </>
  );
}

/** Today is a small wedge pointing inward from the ring's inside; blue belongs to what is chosen alone. */
function TodayMark({ ring, number }: { readonly ring: Ring; readonly number: number }) {
  const tip = onRing(ring, number, 0.78);
  const left = onRing(ring, number - 0.9, 0.66);
  const right = onRing(ring, number + 0.9, 0.66);
  return <path d={`M${tip.x} ${tip.y}L${left.x} ${left.y}L${right.x} ${right.y}Z`} className="today" />;
}

/** Arrows a week, with Shift a year; Page keys four weeks; Home and End to the year's ends. */
function turnByKey(event: KeyboardEvent, turn: (weeks: number) => void): void {
  const steps: Readonly<Record<string, number>> = {
    ArrowRight: 1,
    ArrowUp: 1,
    ArrowLeft: -1,
    ArrowDown: -1,
    PageUp: 4,
    PageDown: -4,
  };
  const here = Number(event.currentTarget.getAttribute('aria-valuenow'));
  const last = Number(event.currentTarget.getAttribute('aria-valuemax'));
  const weeks = event.key === 'Home' ? 1 - here : event.key === 'End' ? last - here : steps[event.key];
  if (weeks === undefined) return;
  event.preventDefault();
  turn(event.shiftKey && Math.abs(weeks) === 1 ? weeks * last : weeks);
}

/** The wheel turns the ring a week a notch and does not scroll the page; React's own wheel listeners cannot stop the scroll. */
function useWheel(turn: (weeks: number) => void) {
  const door = useRef<HTMLDivElement>(null);
  const latest = useRef(turn);
  useEffect(() => {
    latest.current = turn;
  });
  useEffect(() => {
    const element = door.current;
    if (element === null) return;
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      latest.current(event.deltaY > 0 ? 1 : -1);
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, []);
  return door;
}
