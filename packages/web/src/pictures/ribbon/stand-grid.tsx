import { weekOf } from '@leywright/measures';
import type { PlacedStand } from '@leywright/planner';
import { type KeyboardEvent, memo } from 'react';
import { isoYearOf, weekNumberOf } from '../../look/head/year-weeks.ts';
import { words } from '../../words.ts';
import { canopyPath, type HeightOf, standReach } from './canopy.ts';
import type { Layer } from './layers.ts';
import type { StripScale } from './strip.tsx';

interface StandGridProps {
  readonly plotName: string;
  readonly layers: readonly Layer[];
  readonly scale: StripScale;
  readonly heightOf: HeightOf;
  readonly isFirstRow: boolean;
  readonly onPoint: (stand: PlacedStand | null) => void;
  readonly onOpen: (stand: PlacedStand) => void;
}

const leastHitPx = 24;

/** The stands of a strip as cells of a grid: one tab stop for the picture, arrows between stands, Enter opens one. */
export const StandGrid = memo(function StandGrid({
  plotName,
  layers,
  scale,
  heightOf,
  isFirstRow,
  onPoint,
  onOpen,
}: StandGridProps) {
  const cells = layers
    .flatMap((layer) => {
      const reach = standReach(layer.stand, scale);
      return reach === null ? [] : [{ layer, ...reach, path: canopyPath(layer, scale, heightOf) }];
    })
    .sort((a, b) => a.left - b.left || a.layer.stand.span.fromShare - b.layer.stand.span.fromShare);
  return cells.map(({ layer: { stand }, left, right, path }, index) => (
    <g
      key={stand.id}
      role="gridcell"
      tabIndex={isFirstRow && index === 0 ? 0 : -1}
      className="stand-cell"
      aria-label={standName(stand, plotName)}
      onPointerEnter={() => onPoint(stand)}
      onPointerLeave={() => onPoint(null)}
      onFocus={(event) => {
        becomeTabStop(event.currentTarget);
        onPoint(stand);
      }}
      onBlur={() => onPoint(null)}
      onClick={() => onOpen(stand)}
      onKeyDown={(event) => {
        if (event.key === 'Enter' || event.key === ' ') {
          event.preventDefault();
          onOpen(stand);
        } else moveByKey(event);
      }}
    >
      {right - left < leastHitPx ? (
        <rect className="hit" x={(left + right - leastHitPx) / 2} width={leastHitPx} height={scale.height} />
      ) : null}
      {path === null ? (
        <rect className="focus-ring" x={left} y={1} width={right - left} height={scale.height - 2} />
      ) : (
        <>
          <path d={path} className="hit" />
          <path d={path} className="focus-halo" />
          <path d={path} className="focus-ring" />
        </>
      )}
    </g>
  ));
});

/** "Carrots, Far Ridding, 40 to 74 % across, week 18, 2028, to week 44, agreed". */
export function standName(stand: PlacedStand, plotName: string): string {
  const from = weekOf(stand.from);
  const to = weekOf(stand.to);
  const toYear = isoYearOf(to) === isoYearOf(from) ? '' : `, ${isoYearOf(to)}`;
  return `${stand.name}, ${plotName}, ${acrossText(stand)}week ${weekNumberOf(from)}, ${isoYearOf(from)}, to week ${weekNumberOf(to)}${toYear}, ${words.ribbon[stand.state]}`;
}

/** Where on the plot it lies, so that two stands of one crop are told apart; nothing for a stand on all of it. */
function acrossText({ span }: PlacedStand): string {
  const [from, to] = [Math.round(span.fromShare * 100), Math.round(span.toShare * 100)];
  return from <= 0 && to >= 100 ? '' : `${from} to ${to} % ${words.ribbon.across}, `;
}

function becomeTabStop(cell: Element): void {
  for (const other of cell.closest('[role="grid"]')?.querySelectorAll('[role="gridcell"][tabindex="0"]') ?? [])
    other.setAttribute('tabindex', '-1');
  cell.setAttribute('tabindex', '0');
}

/** Left and right along the strip, Home and End to its ends, up and down to the stand of the next plot nearest in time. */
function moveByKey(event: KeyboardEvent<SVGGElement>): void {
  const target = cellByKey(event.key, event.currentTarget);
  if (target === null) return;
  event.preventDefault();
  target?.focus();
}

/** Null for a key that moves nowhere; undefined at the edge of the grid. */
function cellByKey(key: string, cell: SVGGElement): SVGGElement | undefined | null {
  const row = cellsOf(cell.parentElement);
  const at = row.indexOf(cell);
  switch (key) {
    case 'ArrowRight':
      return row[at + 1];
    case 'ArrowLeft':
      return row[at - 1];
    case 'Home':
      return row[0];
    case 'End':
      return row.at(-1);
    case 'ArrowDown':
      return nearestIn(rowBeside(cell, 1), cell);
    case 'ArrowUp':
      return nearestIn(rowBeside(cell, -1), cell);
    default:
      return null;
  }
}

function rowBeside(cell: SVGGElement, step: 1 | -1): Element | undefined {
  const rows = [...(cell.closest('[role="grid"]')?.querySelectorAll('[role="row"]') ?? [])];
  return rows[rows.findIndex((row) => row.contains(cell)) + step];
}

function nearestIn(row: Element | undefined, cell: SVGGElement): SVGGElement | undefined {
  const middleOf = (element: Element) => {
    const box = element.getBoundingClientRect();
    return box.left + box.width / 2;
  };
  const here = middleOf(cell);
  return cellsOf(row ?? null).sort((a, b) => Math.abs(middleOf(a) - here) - Math.abs(middleOf(b) - here))[0];
}

function cellsOf(row: Element | null): SVGGElement[] {
  return [...(row?.querySelectorAll<SVGGElement>('[role="gridcell"]') ?? [])];
}
