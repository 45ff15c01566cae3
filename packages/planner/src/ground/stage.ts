/** What every stage of the ground is given, and what the stage of one plot hands on. */

import type { Farm, Plot } from '@leywright/book';
import { type Day, dayNumber } from '@leywright/measures';
import type { DaySpan, Lane } from '../cover/lanes.ts';
import type { Winter } from '../cover/seasons.ts';
import type { StandCover } from '../cover/stand-cover.ts';
import type { PlotFertility } from '../plan/fertility.ts';
import type { Finding } from '../plan/finding.ts';
import type { PlotGround } from '../plan/ground.ts';
import type { ClimateDays, CropBook } from '../plan/inputs.ts';
import type { Horizon } from '../plan/plan.ts';
import type { NitrogenYear } from '../plan/soil.ts';
import type { RestRule } from '../rests/rules.ts';
import type { GroundStand } from './ground-stand.ts';
import type { HarvestDays, recordedHarvests } from './place-stand.ts';

/** The farm as the ground's stages see it, indexed once a plan. */
export interface GroundSetting {
  readonly farm: Farm;
  readonly today: Day;
  readonly todayDay: number;
  readonly year: number;
  readonly horizon: Horizon;
  readonly days: DaySpan;
  readonly winters: readonly Winter[];
  readonly climate: ClimateDays;
  readonly crops: CropBook;
  readonly rules: readonly RestRule[];
  readonly recorded: ReturnType<typeof recordedHarvests>;
  /** Stands of each plot, moved by drift, in order. */
  readonly standsOf: (plot: string) => readonly GroundStand[];
}

/** Stands of a plot that touch the plan's years, with their cover. */
export interface PlotCover {
  readonly stands: readonly GroundStand[];
  readonly covers: readonly StandCover[];
  /** Harvest days of each; null where there is none. */
  readonly harvests: ReadonlyMap<GroundStand, HarvestDays | null>;
  readonly lanes: readonly Lane[];
}

export interface PlotStage {
  readonly plot: Plot;
  readonly ground: Omit<PlotGround, 'findings'>;
  readonly nitrogen: readonly NitrogenYear[];
  readonly fertility: PlotFertility;
  /** Findings that need no other plot. */
  readonly findings: readonly Finding[];
}

/** Whether a stand is still ahead: mends can change it. */
export function isAhead(one: GroundStand, setting: Pick<GroundSetting, 'todayDay'>): boolean {
  return one.stand.state !== 'recorded' && one.fromDay >= setting.todayDay;
}

export function dayOrNull(day: Day | null): number | null {
  return day === null ? null : dayNumber(day);
}
