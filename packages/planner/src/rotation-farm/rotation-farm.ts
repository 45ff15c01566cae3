/** A farm as the rotation planner looks at it: the plots that rotate, each with its net area and what its past leaves open. */
import type { Farm, OrganismMark, Plot, Rotation } from '@leywright/book';
import { type Day, yearOf } from '@leywright/measures';
import { groundSetting, makeGroundMemos } from '../ground/ground-stages.ts';
import { plotArea, restGround } from '../ground/plot-ground.ts';
import type { GroundSetting } from '../ground/stage.ts';
import { makeContentKeys } from '../memo/content-key.ts';
import { horizonOf } from '../season/horizon.ts';
import type { PairSetting } from './course-pairs.ts';
import { firstOpenYear } from './first-year.ts';
import { type PlotPast, plotPast } from './plot-past.ts';

export interface FarmRotationWish {
  readonly today: Day;
  /** Years to plan, 4 to 15. */
  readonly years: number;
  /** Null: the first course year in which nothing has begun yet. */
  readonly firstYear: number | null;
  readonly pins: readonly { readonly plot: string; readonly year: number; readonly course: string }[];
  readonly never: readonly { readonly plot: string; readonly course: string }[];
  readonly dear: readonly { readonly plot: string; readonly course: string; readonly dearScore: number }[];
  /** What a change against what is agreed costs; left out = 0.5. */
  readonly stabilityWeight?: number;
}

export interface LeftOut {
  readonly plot: string;
  readonly why: 'tunnel' | 'permanent' | 'left-the-farm' | 'not-yet-ours';
}

/** The course of a plot in years in which what stands there stays, or the land is not ours. */
export const heldCourse = '(held)';

export interface RotationFarm {
  readonly farm: Farm;
  readonly rotation: Rotation;
  readonly wish: FarmRotationWish;
  readonly firstYear: number;
  readonly years: number;
  readonly setting: GroundSetting;
  readonly plots: readonly RotatedPlot[];
  readonly leftOut: readonly LeftOut[];
}

export interface RotatedPlot {
  readonly plot: Plot;
  readonly netM2: number;
  /** Organisms recorded there and not cleared. */
  readonly marks: readonly OrganismMark[];
  readonly past: PlotPast;
}

export function rotationFarm(farm: Farm, rotation: Rotation, wish: FarmRotationWish): RotationFarm {
  const firstYear = wish.firstYear ?? firstOpenYear(rotation, wish.today);
  const { years } = wish;
  const asked = { today: wish.today, fromYear: firstYear - 1, toYear: firstYear + years - 1 };
  const setting = groundSetting(farm, { today: wish.today, ...horizonOf(asked) }, makeGroundMemos(makeContentKeys()));
  const leftOut: LeftOut[] = [];
  const plots: RotatedPlot[] = [];
  for (const plot of farm.plots) {
    const why = whyLeftOut(plot, firstYear, years);
    if (why !== null) {
      leftOut.push({ plot: plot.id, why });
      continue;
    }
    const marks = farm.marks.filter((mark) => mark.plot === plot.id && mark.clearedOn === null);
    const pair = pairSetting(setting, marks);
    const past = plotPast(plot, setting.standsOf(plot.id), {
      rotation,
      firstYear,
      years,
      pair,
      isSouth: farm.about.place.latDeg < 0,
    });
    plots.push({ plot, netM2: plotArea(plot, setting).netM2, marks, past });
  }
  return { farm, rotation, wish, firstYear, years, setting, plots, leftOut };
}

export function pairSetting(
  setting: GroundSetting,
  marks: readonly OrganismMark[],
): Pick<PairSetting, 'crops' | 'rests' | 'marks'> {
  const { rules, season } = restGround(setting);
  return { crops: setting.crops, rests: { rules, season }, marks };
}

function whyLeftOut(plot: Plot, firstYear: number, years: number): LeftOut['why'] | null {
  if (plot.kind !== 'rotation') return plot.kind;
  if (plot.to !== null && yearOf(plot.to) < firstYear) return 'left-the-farm';
  if (plot.from !== null && yearOf(plot.from) >= firstYear + years) return 'not-yet-ours';
  return null;
}
