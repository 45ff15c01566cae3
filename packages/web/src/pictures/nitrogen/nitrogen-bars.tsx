import type { NitrogenYear, PlotGround } from '@leywright/planner';
import { scaleLinear } from 'd3-scale';
import { Fragment } from 'react';
import { groundFill } from '../../look/marks/patterns.tsx';
import { Figure } from '../../look/page/figure.tsx';

interface NitrogenBarsProps {
  readonly ground: readonly PlotGround[];
  readonly nitrogen: readonly NitrogenYear[];
  readonly year: number;
  readonly width: number;
  readonly height: number;
  readonly chosenPlot: string | null;
}

/** One year's nitrogen of each plot: what comes in above the line, what goes out below it, and what is left with its doubt. */
export function NitrogenBars({ ground, nitrogen, year, width, height, chosenPlot }: NitrogenBarsProps) {
  const rows = ground.flatMap((plot) => {
    const balance = nitrogen.find((one) => one.plot === plot.plot && one.year === year);
    return balance === undefined ? [] : [{ plot, balance }];
  });
  const most = Math.max(50, ...rows.map(({ balance }) => balance.fixedKgHa.high + balance.otherInKgHa.high));
  const least = Math.min(
    -50,
    ...rows.flatMap(({ balance }) => [-(balance.offtakeKgHa.high + balance.lostKgHa.high), balance.leftKgHa.low]),
  );
  const y = scaleLinear([least, most], [height - 4, 6]);
  const column = width / Math.max(1, rows.length);
  return (
    <div className="nitrogen" style={{ width, height }}>
      <svg width={width} height={height} aria-hidden="true">
        {rows.map(({ plot, balance }, index) => (
          <Balance key={plot.plot} balance={balance} x={index * column} y={y} />
        ))}
        <line x1={0} x2={width} y1={y(0)} y2={y(0)} stroke="var(--ink)" />
      </svg>
      {rows.map(({ plot, balance }, index) => (
        <Fragment key={plot.plot}>
          <b
            className={plot.plot === chosenPlot ? 'left-letter chosen' : 'left-letter'}
            style={{ left: index * column, top: y(0) }}
          >
            {plot.letter}
          </b>
          <p className="left-over" style={{ left: index * column + 70, top: y(0) }}>
            <Figure id={balance.why}>{signed((balance.leftKgHa.low + balance.leftKgHa.high) / 2)}</Figure>
            <small>
              {signed(balance.leftKgHa.low)} to {signed(balance.leftKgHa.high)}
            </small>
          </p>
        </Fragment>
      ))}
    </div>
  );
}

function Balance({
  balance,
  x,
  y,
}: {
  readonly balance: NitrogenYear;
  readonly x: number;
  readonly y: (kgHa: number) => number;
}) {
  const middle = (range: { readonly low: number; readonly high: number }) => (range.low + range.high) / 2;
  const fixed = middle(balance.fixedKgHa);
  const other = middle(balance.otherInKgHa);
  const off = middle(balance.offtakeKgHa);
  const lost = middle(balance.lostKgHa);
  const bar = 22;
  return (
    <g transform={`translate(${x + 24} 0)`}>
      <Bar top={y(fixed)} bottom={y(0)} width={bar} fill={groundFill('ley')} />
      <Bar top={y(fixed + other)} bottom={y(fixed)} width={bar} fill="var(--ink3)" />
      <Bar top={y(0)} bottom={y(-off)} width={bar} fill="var(--ink)" />
      <Bar top={y(-off)} bottom={y(-off - lost)} width={bar} fill="var(--wash)" />
      <Doubt
        x={bar / 2}
        low={y(balance.fixedKgHa.low + balance.otherInKgHa.low)}
        high={y(balance.fixedKgHa.high + balance.otherInKgHa.high)}
      />
      <g transform={`translate(${bar + 13} 0)`}>
        <Doubt x={0} low={y(balance.leftKgHa.low)} high={y(balance.leftKgHa.high)} />
        <circle cy={y(middle(balance.leftKgHa))} r="4.6" fill="var(--ink)" stroke="var(--paper)" strokeWidth="1.5" />
      </g>
    </g>
  );
}

function Bar({
  top,
  bottom,
  width,
  fill,
}: {
  readonly top: number;
  readonly bottom: number;
  readonly width: number;
  readonly fill: string;
}) {
  if (bottom - top < 0.3) return null;
  return (
    <g transform={`translate(0 ${top})`}>
      <rect width={width} height={bottom - top} fill={fill} stroke="var(--ink)" strokeOpacity=".7" strokeWidth=".8" />
    </g>
  );
}

function Doubt({ x, low, high }: { readonly x: number; readonly low: number; readonly high: number }) {
  return (
    <>
      <line x1={x} x2={x} y1={low} y2={high} stroke="var(--halo)" strokeWidth="4.4" />
      <line x1={x} x2={x} y1={low} y2={high} stroke="var(--ink)" strokeWidth="1.7" />
    </>
  );
}

/** "+38", "−12", with a true minus. */
export function signed(kgHa: number): string {
  const whole = Math.round(kgHa);
  return whole > 0 ? `+${whole}` : whole < 0 ? `−${Math.abs(whole)}` : '0';
}
