import type { PlacedStand, PlotGround } from '@leywright/planner';
import type { FaultMark } from '../../pictures/ribbon/marks.ts';
import type { RibbonYear } from '../../pictures/weeks.ts';
import type { FarmView, ToldFinding } from '../../worker/plan-source.ts';

/** What Ground shows, on a desk or on a phone. */
export interface GroundProps {
  readonly view: FarmView;
  readonly ground: readonly PlotGround[];
  readonly years: readonly RibbonYear[];
  readonly marks: readonly FaultMark[];
  readonly toPutRight: readonly ToldFinding[];
  readonly chosenPlot: string | null;
  readonly chosenYear: number;
  readonly onChoosePlot: (plot: string) => void;
  readonly onChooseYear: (isoYear: number) => void;
  readonly onOpenStand: (stand: PlacedStand) => void;
}
