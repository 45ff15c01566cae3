import { weekOf } from '@leywright/measures';
import type { PlacedStand, PlotGround } from '@leywright/planner';
import { useEffect, useRef } from 'react';
import { dayAndMonth, isoYearOf, weekNumberOf } from '../../look/head/year-weeks.ts';
import { Square } from '../../look/marks/mark.tsx';
import { areaText } from '../../pictures/ribbon/gutter.tsx';
import { words } from '../../words.ts';

interface StandSheetProps {
  readonly stand: PlacedStand;
  readonly ground: readonly PlotGround[];
  readonly areaUnit: 'ha' | 'acres';
  readonly onClose: () => void;
}

/** One stand: where, from when to when, on how much ground, how sure. */
export function StandSheet({ stand, ground, areaUnit, onClose }: StandSheetProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the heading takes the focus anew for each stand
  useEffect(() => {
    const before = document.activeElement;
    heading.current?.focus({ preventScroll: true });
    return () => {
      if (before instanceof SVGElement || before instanceof HTMLElement) before.focus({ preventScroll: true });
    };
  }, [stand.id]);
  const lines = standLines(stand, ground, areaUnit);
  return (
    <aside
      className="side-sheet over"
      aria-labelledby="stand-title"
      onKeyDown={(event) => {
        if (event.key === 'Escape') onClose();
      }}
    >
      <button type="button" className="link sheet-close" onClick={onClose}>
        {words.sheet.close}
      </button>
      <h2 id="stand-title" ref={heading} tabIndex={-1}>
        <Square family={stand.look} size={22} />{' '}
        {stand.variety === null ? stand.name : `${stand.name}, ${stand.variety}`}
      </h2>
      <dl className="stand-lines">
        {lines.map(([name, value]) =>
          value === null ? null : (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ),
        )}
      </dl>
    </aside>
  );
}

/** What there is to say of a stand, line by line; null where there is nothing. */
function standLines(
  stand: PlacedStand,
  ground: readonly PlotGround[],
  areaUnit: 'ha' | 'acres',
): readonly (readonly [string, string | null])[] {
  const plot = ground.find((one) => one.plot === stand.plot);
  const host = plot?.stands.find(({ id }) => id === stand.undersownIn);
  return [
    ['Plot', plot?.name ?? stand.plot],
    ['Ground', areaText(stand.areaM2, areaUnit)],
    ['Course', plot?.courses.find(({ course }) => course === stand.course)?.name ?? null],
    ['From', onDay(stand.from)],
    ['To', onDay(stand.to)],
    ['Sown', stand.sownOn === null ? null : onDay(stand.sownOn)],
    ['Planted', stand.plantedOn === null ? null : onDay(stand.plantedOn)],
    [
      'Harvest',
      stand.harvestFrom === null || stand.harvestTo === null
        ? null
        : `${onDay(stand.harvestFrom)} to ${onDay(stand.harvestTo)}`,
    ],
    ['Undersown in', host?.name ?? null],
    ['How sure', words.ribbon[stand.state]],
    [
      'Moved',
      stand.driftDays === 0
        ? null
        : `${Math.abs(stand.driftDays)} days ${stand.driftDays > 0 ? 'later' : 'earlier'} than planned`,
    ],
    ['Reason', stand.reason],
  ];
}

/** "8 June 2027, week 23". */
function onDay(day: PlacedStand['from']): string {
  const week = weekOf(day);
  return `${dayAndMonth(day)} ${day.slice(0, 4)}, week ${weekNumberOf(week)}${isoYearOf(week) === Number(day.slice(0, 4)) ? '' : ` of ${isoYearOf(week)}`}`;
}
