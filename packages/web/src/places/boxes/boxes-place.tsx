import type { Finding, Supply } from '@leywright/planner';
import { useMemo, useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { isoYearOf } from '../../look/head/year-weeks.ts';
import { boxOrder } from '../../look/marks/families.ts';
import { KeyLine } from '../../look/marks/key-line.tsx';
import { Headline } from '../../look/page/headline.tsx';
import { StateFrame } from '../../look/page/state-frame.tsx';
import { TableTwin } from '../../look/page/table-twin.tsx';
import { useViewport } from '../../look/page/use-viewport.ts';
import { bricksTwin, yearTwin } from '../../pictures/boxes/box-twins.ts';
import { cropRows } from '../../pictures/boxes/crop-rows.ts';
import { WeekSlip } from '../../pictures/boxes/week-slip.tsx';
import { RowNames, type YearLayout, YearOfBoxes } from '../../pictures/boxes/year-of-boxes.tsx';
import { words } from '../../words.ts';
import type { FarmView } from '../../worker/plan-source.ts';
import { WithFarm } from '../no-farm.tsx';
import { BoxesKey } from './boxes-key.tsx';

/** What is in each box; is the promise kept. */
export function BoxesPlace() {
  return <WithFarm>{(view) => <Boxes view={view} />}</WithFarm>;
}

function Boxes({ view }: { readonly view: FarmView }) {
  const { seen, week } = useAppState();
  const { plan, told } = view;
  const supply = plan.supply;
  if (supply === null) return <Headline sentence={told.headline.boxes} />;
  const isOld = seen.kind === 'old' || supply.year !== isoYearOf(week);
  return (
    <>
      <Headline sentence={told.headline.boxes} />
      <KeyLine
        families={boxOrder.filter((look) => supply.boxes.some(({ items }) => items.some((item) => item.look === look)))}
      />
      <StateFrame state={isOld ? { kind: 'old', sentence: words.state.working } : { kind: 'fresh' }} height={600}>
        <Year view={view} supply={supply} />
      </StateFrame>
      <TableTwin tables={() => [yearTwin(supply), bricksTwin(supply)]} />
    </>
  );
}

function Year({ view, supply }: { readonly view: FarmView; readonly supply: Supply }) {
  const { week, turn } = useAppState();
  const viewport = useViewport();
  const biggest = useMemo(() => [...view.sizes].sort((a, b) => b.households - a.households)[0]?.id ?? '', [view.sizes]);
  const [size, setSize] = useState<string | null>(null);
  const rowCount = useMemo(() => cropRows(supply.boxes).length, [supply.boxes]);
  const layout = yearLayout(viewport, rowCount);
  const box = supply.boxes.find((one) => one.week === week);
  const plotNames = useMemo(() => new Map(view.plan.ground.map(({ plot, name }) => [plot, name])), [view.plan.ground]);
  const ways = view.told.findings
    .filter(({ finding }) => finding.code === 'box-short' && isAbout(finding, week))
    .flatMap(({ mends }, at) => mends.map((sentence, index) => ({ id: `${at}-${index}`, sentence })));
  return (
    <div className="boxes-year">
      <RowNames supply={supply} layout={layout} />
      <section className="wide-frame" tabIndex={0} aria-label={words.box.nameLong(supply.year)}>
        <YearOfBoxes supply={supply} layout={layout} week={week} onTurn={turn} />
      </section>
      {box === undefined ? null : (
        <WeekSlip
          box={box}
          sizes={view.sizes}
          size={size ?? biggest}
          onSize={setSize}
          plotNames={plotNames}
          ways={ways}
        />
      )}
      <BoxesKey boxes={Math.max(...supply.boxes.map((one) => one.boxes))} />
    </div>
  );
}

/** Whether a week lies in the run of weeks a finding is about. */
function isAbout({ place, figures }: Finding, week: string): boolean {
  const from = figures['fromWeek'] ?? place.week;
  const to = figures['toWeek'] ?? place.week;
  return typeof from === 'string' && typeof to === 'string' && from <= week && week <= to;
}

/** A row is 14 to 19 px high, so that a year of thirty crops fits a window; the picture is never narrower than 10 px a week. */
function yearLayout(
  { width, height, isPhone }: { readonly width: number; readonly height: number; readonly isPhone: boolean },
  rows: number,
): YearLayout {
  const slip = width >= 1140 ? 330 + 12 : 0;
  const names = isPhone ? 104 : 158;
  const room = width - 48 - names - 12 - slip;
  return {
    width: Math.max(isPhone ? 52 * 16 : 52 * 13, Math.min(room, 52 * 24)),
    row: Math.max(16, Math.min(19, (height - 310) / Math.max(1, rows))),
    head: 78,
    left: 0,
  };
}
