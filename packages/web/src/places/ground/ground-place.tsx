import type { PlacedStand } from '@leywright/planner';
import { useMemo, useState } from 'react';
import { useAppState } from '../../app-state.tsx';
import { isoYearOf, weekAt, weekNumberOf } from '../../look/head/year-weeks.ts';
import { type Family, families } from '../../look/marks/families.ts';
import { KeyLine } from '../../look/marks/key-line.tsx';
import { Headline } from '../../look/page/headline.tsx';
import { type PictureState, StateFrame } from '../../look/page/state-frame.tsx';
import { TableTwin } from '../../look/page/table-twin.tsx';
import { useViewport } from '../../look/page/use-viewport.ts';
import { bricksTwin } from '../../pictures/boxes/box-twins.ts';
import { nitrogenTwin } from '../../pictures/nitrogen/nitrogen-twin.ts';
import { faultMarks } from '../../pictures/ribbon/marks.ts';
import { ribbonTwins } from '../../pictures/ribbon/ribbon-twin.ts';
import { ribbonYears } from '../../pictures/weeks.ts';
import type { FarmView } from '../../worker/plan-source.ts';
import { WithFarm } from '../no-farm.tsx';
import { GroundDesk } from './ground-desk.tsx';
import { GroundPhone } from './ground-phone.tsx';
import { StandSheet } from './stand-sheet.tsx';

/** What stands where; is the ground covered, fed and guarded. */
export function GroundPlace() {
  return <WithFarm>{(view) => <Ground view={view} />}</WithFarm>;
}

function Ground({ view }: { readonly view: FarmView }) {
  const { seen, week, turn } = useAppState();
  const { isPhone } = useViewport();
  const { plan } = view;
  const [chosenPlot, setChosenPlot] = useState<string | null>(plan.ground[0]?.plot ?? null);
  const [opened, setOpened] = useState<PlacedStand | null>(null);
  const rotating = useMemo(() => plan.ground.filter(({ kind }) => kind !== 'permanent'), [plan.ground]);
  const years = useMemo(() => ribbonYears(plan.horizon), [plan.horizon]);
  const toPutRight = useMemo(
    () => view.told.findings.filter(({ finding }) => finding.gravity === 'put-right'),
    [view.told.findings],
  );
  const marks = useMemo(
    () =>
      faultMarks(
        plan.ground,
        toPutRight.map(({ finding }) => finding),
        plan.horizon,
      ),
    [plan, toPutRight],
  );
  const state: PictureState = seen.kind === 'old' ? { kind: 'old', sentence: seen.sentence } : { kind: 'fresh' };
  const inView = useMemo(() => ['soil' as const, ...families.filter((family) => isInView(family, view))], [view]);
  const props = {
    view,
    ground: rotating,
    years,
    marks,
    toPutRight,
    chosenPlot,
    onChoosePlot: setChosenPlot,
    onOpenStand: setOpened,
    onChooseYear: (isoYear: number) => turn(weekAt(isoYear, Math.min(52, weekNumberOf(week)))),
    chosenYear: isoYearOf(week),
  };
  return (
    <>
      <Headline sentence={view.told.headline.ground} />
      <KeyLine families={inView} />
      <StateFrame state={state} height={600}>
        {isPhone ? <GroundPhone {...props} /> : <GroundDesk {...props} />}
      </StateFrame>
      <TableTwin
        tables={() => [
          ...ribbonTwins(plan.ground, plan.horizon),
          ...(plan.supply === null ? [] : [bricksTwin(plan.supply)]),
          nitrogenTwin(plan.ground, plan.nitrogen),
        ]}
      />
      {opened === null ? null : (
        <StandSheet stand={opened} ground={plan.ground} onClose={() => setOpened(null)} areaUnit={view.shows.area} />
      )}
    </>
  );
}

function isInView(family: Family, { plan }: FarmView): boolean {
  return (
    plan.ground.some(({ stands }) =>
      stands.some((stand) => stand.look === family || (family === 'undersown' && stand.undersownIn !== null)),
    ) || plan.supply?.boxes.some(({ items }) => items.some(({ look }) => look === family)) === true
  );
}
