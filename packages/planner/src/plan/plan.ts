/**
 * The plan: everything the pictures, the CLI and the API show, worked out from a farm, a day and a year.
 *
 * Figure ids, the argument of `why`: `net/<plot>`, `rest/<stand>/<rule>`, `area/<crop>/<year>`, `seed/<crop>/<year>`,
 * `store/<crop>/<week>`, `box/<week>`, `nitrogen/<plot>/<year>`, `hours/<week>`, `reach/<year>`, `cover/<stand>/<week>`,
 * `bare/<plot>/<winter>`; from the ground's daily account `account/<plot>/<year>` (nitrogen) and `water/<plot>/<year>`;
 * of the plot's fertility `phosphate/<plot>`, `potash/<plot>`, `lime/<plot>`, `humus/<plot>`, `carbon/<plot>`.
 */

import type { BookFinding } from '@leywright/book';
import type { Day, IsoWeek } from '@leywright/measures';
import type { PlotFertility } from './fertility.ts';
import type { Finding } from './finding.ts';
import type { PlotGround } from './ground.ts';
import type { NitrogenYear } from './soil.ts';
import type { Supply } from './supply.ts';
import type { Work } from './work.ts';

export interface PlanWish {
  /** The farm's day. */
  readonly today: Day;
  /** Year in focus for boxes, work and needs; default the year of `today`, or the next from October on. */
  readonly year?: number;
  /** First and last year of the ribbon; default from five years back to four years on (ten years). */
  readonly fromYear?: number;
  readonly toYear?: number;
  /** What the replay said about the book, to stand among the findings. */
  readonly book?: readonly BookFinding[];
}

export interface Horizon {
  readonly fromYear: number;
  readonly toYear: number;
  readonly firstMonday: Day;
  readonly weeks: number;
}

export interface ClimateUsed {
  readonly station: string;
  readonly period: string;
  readonly distanceKm: number;
  readonly elevationDifferenceM: number | null;
  readonly recordedDays: number;
  readonly recordedFrom: Day | null;
  readonly recordedTo: Day | null;
}

/** Numbers of the page's first sentence; each place has its own words for them. */
export interface Headline {
  readonly bareWinters: readonly { readonly plot: string; readonly name: string; readonly winter: number }[];
  readonly shortWeeks: readonly IsoWeek[];
  readonly shortItems: number;
  readonly boxWeeks: number;
  readonly households: number;
  readonly toPutRight: number;
}

export interface Plan {
  readonly farm: { readonly id: string; readonly name: string; readonly sample: boolean };
  readonly today: Day;
  readonly year: number;
  readonly horizon: Horizon;
  readonly agreed: { readonly state: 'pencil' | 'agreed' | 'none'; readonly on: Day | null };
  readonly climate: ClimateUsed;
  readonly ground: readonly PlotGround[];
  readonly nitrogen: readonly NitrogenYear[];
  /** Phosphate, potash, lime, humus and carbon of each plot. */
  readonly fertility: readonly PlotFertility[];
  readonly supply: Supply | null;
  readonly work: Work;
  /** Worst first, then by place; the same list on every page. */
  readonly findings: readonly Finding[];
  readonly headline: Headline;
}
