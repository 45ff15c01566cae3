import { useMemo } from 'react';
import { monthStarts, weekNumberOf } from '../../look/head/year-weeks.ts';
import { words } from '../../words.ts';
import type { BrickWeek } from './bricks.ts';

const brickPx = 11;
const axisPx = 24;
const headPx = 30;

interface Skyline {
  readonly weeks: readonly BrickWeek[];
  readonly year: number;
  readonly chosen: string;
  readonly width: number;
}

/** Days of work week by week under the line of the days there are; what nobody is there for is dashed. */
export function WorkSkyline({ weeks, year, chosen, width }: Skyline) {
  const step = width / Math.max(1, weeks.length);
  const most = useMemo(
    () => Math.max(10, ...weeks.map((week) => Math.max(week.bricks.length, Math.ceil(week.roof ?? 0)))),
    [weeks],
  );
  const foot = headPx + most * brickPx;
  return (
    <svg className="skyline" width={width} height={foot + axisPx} role="img" aria-label={words.work.picture(year)}>
      <BrickPatterns />
      {[10, 20, 30, 40, 50]
        .filter((days) => days < most)
        .map((days) => (
          <g key={days}>
            <line className="skyline-rule" x1={0} x2={width} y1={foot - days * brickPx} y2={foot - days * brickPx} />
            <text x={-6} y={foot - days * brickPx + 4} textAnchor="end">
              {days}
            </text>
          </g>
        ))}
      {weeks.map((week, at) => (
        <Uprights key={week.week} week={week} x={at * step} step={step} foot={foot} />
      ))}
      <path className="skyline-roof" d={roofPath(weeks, step, foot)} />
      <line className="skyline-foot" x1={0} x2={width} y1={foot} y2={foot} />
      {weeks.map((week, at) =>
        week.week === chosen ? (
          <rect key={week.week} className="skyline-chosen" x={at * step} y={foot + 1} width={step} height={4} />
        ) : null,
      )}
      {monthStarts(year).map(({ name, week }) => (
        <text key={name} x={(week - 1) * step} y={foot + 18}>
          {name.slice(0, 3)}
        </text>
      ))}
    </svg>
  );
}

function Uprights({
  week,
  x,
  step,
  foot,
}: {
  readonly week: BrickWeek;
  readonly x: number;
  readonly step: number;
  readonly foot: number;
}) {
  const missing = week.bricks.length - week.there;
  return (
    <g>
      {week.bricks.map((group, at) => (
        <rect
          key={`${at}-${group}`}
          className={at < week.there ? `brick ${group}` : 'brick missing'}
          x={x + 1}
          y={foot - (at + 1) * brickPx + 1}
          width={step - 2}
          height={brickPx - 2}
        />
      ))}
      {missing > 0 ? (
        <text
          className="skyline-missing"
          x={x + step / 2}
          y={foot - week.bricks.length * brickPx - 5}
          textAnchor="middle"
        >
          {missing}
        </text>
      ) : null}
    </g>
  );
}

function roofPath(weeks: readonly BrickWeek[], step: number, foot: number): string {
  const points: string[] = [];
  weeks.forEach(({ roof }, at) => {
    if (roof === null) return;
    const y = foot - roof * brickPx;
    points.push(`${points.length === 0 ? 'M' : 'L'}${at * step} ${y}L${(at + 1) * step} ${y}`);
  });
  return points.join('');
}

/** Dots for what is sown, waves for what is hoed: the pattern tells them apart, not the shade alone. */
function BrickPatterns() {
  return (
    <defs>
      <pattern id="brick-sow" width="4" height="4" patternUnits="userSpaceOnUse">
        <rect width="4" height="4" fill="var(--paper)" />
        <circle cx="1" cy="1" r=".8" fill="var(--ink)" />
        <circle cx="3" cy="3" r=".8" fill="var(--ink)" />
      </pattern>
      <pattern id="brick-weed" width="6" height="4" patternUnits="userSpaceOnUse">
        <rect width="6" height="4" fill="var(--paper)" />
        <path d="M0 3L1.5 1L3 3L4.5 1L6 3" fill="none" stroke="var(--ink)" strokeWidth="1" />
      </pattern>
    </defs>
  );
}

/** Who is there in each week: a bar as high as their days, dashed where they are away. */
export function WhoIsHere({
  rows,
  weeks,
  width,
}: {
  readonly rows: readonly { readonly id: string; readonly weeksH: readonly number[]; readonly fullH: number }[];
  readonly weeks: readonly BrickWeek[];
  readonly width: number;
}) {
  const step = width / Math.max(1, weeks.length);
  return (
    <svg className="who-is-here" width={width} height={rows.length * rowPx} aria-hidden="true">
      {rows.map((row, at) =>
        row.weeksH.map((hoursH, week) => {
          if (row.fullH <= 0 || hoursH < 0) return null;
          const heightPx = Math.max(2, (rowPx - 8) * Math.min(1, hoursH / row.fullH));
          const y = (at + 1) * rowPx - 4 - heightPx;
          return hoursH === 0 ? (
            <rect
              key={`${row.id}-${weekNumberOf(weeks[week]?.week ?? ('2027-w01' as never))}`}
              className="brick away"
              x={week * step + 2}
              y={at * rowPx + 5}
              width={step - 4}
              height={rowPx - 10}
            />
          ) : (
            <rect
              key={`${row.id}-${week}`}
              className="brick here"
              x={week * step + 1}
              y={y}
              width={step - 2}
              height={heightPx}
            />
          );
        }),
      )}
    </svg>
  );
}

export const rowPx = 26;
