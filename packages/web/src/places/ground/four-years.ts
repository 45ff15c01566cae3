import { mondayOf } from '@leywright/measures';
import type { Horizon, PlotGround } from '@leywright/planner';
import { weekAt } from '../../look/head/year-weeks.ts';
import { type RibbonYear, ribbonYears } from '../../pictures/weeks.ts';

/** Four years of a plot, their weeks counted from the first of them. */
export interface FourYears {
  readonly ground: PlotGround;
  readonly horizon: Horizon;
  readonly years: readonly RibbonYear[];
  readonly fromWeek: number;
}

/** Four years of a plot around a year, from one before it, for a narrow screen; kept within the plan's years. */
export function fourYears(plot: PlotGround, horizon: Horizon, year: number): FourYears {
  const fromYear = Math.max(horizon.fromYear, Math.min(year - 1, horizon.toYear - 3));
  const toYear = Math.min(horizon.toYear, fromYear + 3);
  const fromWeek = ribbonYears(horizon).find(({ isoYear }) => isoYear === fromYear)?.fromWeek ?? 0;
  const years = ribbonYears({ ...horizon, fromYear, toYear });
  const weeks = years.reduce((sum, one) => sum + one.weeks, 0);
  const stands = plot.stands.map((stand) => ({ ...stand, coverFromWeek: stand.coverFromWeek - fromWeek }));
  return {
    ground: { ...plot, stands },
    horizon: { fromYear, toYear, firstMonday: mondayOf(weekAt(fromYear, 1)), weeks },
    years,
    fromWeek,
  };
}
