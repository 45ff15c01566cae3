/**
 * What the rotation planner is asked: plots with their pasts, courses with their covers, the rules between them, and what each soft rule weighs.
 *
 * Terms   A course is one year of a plot; an option is a course with the cover that goes with it. A start is the first year of a stand, a
 *         continuation a later year of the same stand (the second year of a ley).
 * Holds   years are counted from 0, the first year to plan; the past is an option for each year before it, oldest first.
 */

export interface CourseOption {
  readonly id: string;
  readonly course: string;
  /** Organisms and families it is a host of, its cover included. */
  readonly hosts: readonly string[];
  /** What later starts of hosts must keep away from, where that is not just what it is a host of; left out = its hosts. */
  readonly leaves?: readonly string[];
  readonly isContinuation: boolean;
  /** What it costs beside its cheapest sister, in the score. */
  readonly costScore: number;
}

export interface RotationPlot {
  readonly id: string;
  readonly areaM2: number;
  /** The plot it is a part of; null for a whole plot. */
  readonly parent: string | null;
  /** False for perennials and tunnels: they are left out. */
  readonly isRotated: boolean;
  /** Ids of options, oldest first, the last one being the year before the first to plan. */
  readonly history: readonly string[];
  /** Longer rests on this plot by organism, in years: it is infected. */
  readonly longerRestYears: Readonly<Record<string, number>>;
  /** Course by year, fixed by the grower or already sown. */
  readonly pins: Readonly<Record<string, string>>;
  /** Courses that must not stand here. */
  readonly never: readonly string[];
  /** Years in which a course must not stand here, by what really stood or still stands; left out = none. */
  readonly barredYears?: Readonly<Record<string, readonly number[]>>;
  /** What a course costs here beside elsewhere, in the score. */
  readonly dearScore: Readonly<Record<string, number>>;
  /** The course agreed for each year; null where there is none. */
  readonly agreed: readonly (string | null)[] | null;
}

export interface AreaBand {
  /** Share of the area asked for. */
  readonly low: number;
  readonly high: number;
}

export interface RotationWeights {
  /** For each share of its area asked for by which a course is under or over its band. */
  readonly areaWeight: number;
  /** For each plot and year off the standard order. */
  readonly orderWeight: number;
  /** For each share of its area by which a course changes from one year to the next, beyond what is free. */
  readonly balanceWeight: number;
  readonly freeBalanceShare: number;
  readonly freeBalanceM2: number;
  /** For each course that differs from what is agreed, in the first year; later years weigh less and less. */
  readonly stabilityWeight: number;
  readonly stabilityDecayFactor: number;
  /** For each year in which parts of one plot differ. */
  readonly splitWeight: number;
  readonly optionWeight: number;
}

export interface RotationProblem {
  readonly name: string;
  readonly years: number;
  readonly courses: readonly string[];
  /** The course that follows in the standard order. */
  readonly standardNext: Readonly<Record<string, string>>;
  readonly restYears: Readonly<Record<string, number>>;
  readonly options: readonly CourseOption[];
  /** Options that only the past may hold. */
  readonly pastOptions?: readonly CourseOption[];
  /** Courses after which a course may come. */
  readonly mayFollow: Readonly<Record<string, readonly string[]>>;
  /** The only course that may follow: undersown, or the next year of a ley. */
  readonly mustBeFollowedBy: Readonly<Record<string, string>>;
  /** The last year of a ley must lie at most so many years back: the fertility order. */
  readonly mostSinceLeyYears: Readonly<Record<string, number>>;
  readonly leyCourses: readonly string[];
  readonly plots: readonly RotationPlot[];
  readonly askedM2: Readonly<Record<string, readonly number[]>>;
  readonly bands: Readonly<Record<string, AreaBand>>;
  readonly weights: RotationWeights;
}

/** A plan: for each plot in the order of the problem an option a year; empty for a plot left out. */
export type RotationPlan = readonly (readonly string[])[];

/** An option of the past, by its id. */
export function pastOption(problem: RotationProblem, optionId: string): CourseOption | undefined {
  const isIt = (option: CourseOption) => option.id === optionId;
  return problem.options.find(isIt) ?? problem.pastOptions?.find(isIt);
}

/** What an option leaves behind for later starts to keep away from. */
export function leftBy(option: CourseOption): readonly string[] {
  return option.leaves ?? option.hosts;
}

/** Rest of an organism on a plot, in years from one start to the next. */
export function restOn(problem: RotationProblem, plot: RotationPlot, organism: string): number {
  return Math.max(problem.restYears[organism] ?? 0, plot.longerRestYears[organism] ?? 0);
}

/** Places in the list of plots that take part. */
export function rotatedPlots(problem: RotationProblem): readonly number[] {
  return problem.plots.flatMap((plot, index) => (plot.isRotated ? [index] : []));
}

/** What a course costs on a plot in a year by leaving what is agreed there. */
export function stabilityScore(problem: RotationProblem, plot: RotationPlot, cell: CourseYear): number {
  const agreed = plot.agreed?.[cell.year];
  if (agreed === undefined || agreed === null || agreed === cell.course) return 0;
  return problem.weights.stabilityWeight * problem.weights.stabilityDecayFactor ** cell.year;
}

export interface CourseYear {
  readonly year: number;
  readonly course: string;
}
