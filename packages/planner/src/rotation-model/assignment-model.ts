/**
 * The rotation as an assignment: each plot one option a year, and the rules as rows. The plain way to say it, and the check of the other one.
 *
 * Rule    Rest: in each window as long as the rest, starts of hosts and a continuation in its first year number at most one. The past stands
 *         in the rows as what it was. Where the past has a host whose start is not known, its first known year counts as the start.
 * Holds   the same plans and scores as the flow model.
 */
import {
  type CourseOption,
  leftBy,
  pastOption,
  type RotationPlot,
  type RotationProblem,
  restOn,
  rotatedPlots,
  stabilityScore,
} from '../rotation-problem/problem.ts';
import { addCoupling } from './coupling.ts';
import { draftModel, type ModelDraft, type Term } from './draft-model.ts';
import type { Courses, RotationModel } from './flow-model.ts';

const none = Number.NEGATIVE_INFINITY;
const any = Number.POSITIVE_INFINITY;

export function assignmentModel(problem: RotationProblem): RotationModel {
  const draft = draftModel();
  const plots = rotatedPlots(problem).flatMap((plotIndex) => {
    const plot = problem.plots[plotIndex];
    return plot === undefined ? [] : [addPlot(draft, problem, { plot, plotIndex })];
  });
  const byIndex = new Map(plots.map((one) => [one.plotIndex, one]));
  addCoupling(draft, {
    problem,
    freePlots: plots.map((one) => one.plotIndex),
    carries: (plotIndex, year, courseIndex) =>
      byIndex.get(plotIndex)?.at(year, (option) => option.course === problem.courses[courseIndex]).terms ?? [],
    fixedCourse: () => -1,
  });
  return {
    linear: draft.finish(),
    startOf: () => [], // options are not known from courses alone; the solver begins by itself
    coursesOf: (values) => coursesOf(problem, byIndex, values),
  };
}

/** Options of a plot in a year that pass: columns from now on, a count in the past. */
interface Passing {
  readonly terms: readonly Term[];
  readonly count: number;
}

interface PlotColumns {
  readonly plot: RotationPlot;
  readonly plotIndex: number;
  readonly at: (year: number, passes: (option: CourseOption) => boolean) => Passing;
  /** False in years before the past that is known. */
  readonly isKnown: (year: number) => boolean;
}

interface PlotPlace {
  readonly plot: RotationPlot;
  readonly plotIndex: number;
}

function addPlot(draft: ModelDraft, problem: RotationProblem, { plot, plotIndex }: PlotPlace): PlotColumns {
  const columns = Array.from({ length: problem.years }, (_, year) =>
    problem.options.map((option) =>
      draft.column({
        high: isBarred(plot, option.course, year) ? 0 : 1,
        isWhole: true,
        costWeight:
          problem.weights.optionWeight * option.costScore +
          (plot.dearScore[option.course] ?? 0) +
          stabilityScore(problem, plot, { year, course: option.course }),
      }),
    ),
  );
  const past = plot.history.map((id) => pastOption(problem, id));
  const made: PlotColumns = {
    plot,
    plotIndex,
    isKnown: (year) => year >= -past.length,
    at: (year, passes) => {
      if (year < 0) {
        const stood = past[past.length + year];
        return { terms: [], count: stood !== undefined && passes(stood) ? 1 : 0 };
      }
      const own = columns[year] ?? [];
      return {
        terms: problem.options.flatMap((option, at): Term[] => (passes(option) ? [[own[at] ?? -1, 1]] : [])),
        count: 0,
      };
    },
  };
  for (let year = 0; year < problem.years; year++) {
    draft.row(1, 1, made.at(year, () => true).terms);
    const pin = plot.pins[year];
    if (pin !== undefined) draft.row(1, 1, made.at(year, (option) => option.course === pin).terms);
    addOrder(draft, problem, { made, year });
  }
  for (const organism of Object.keys(problem.restYears)) {
    if (isOneSided(problem, organism)) addOneSidedRest(draft, problem, { made, organism });
    else addRest(draft, problem, { made, organism });
  }
  return made;
}

function isBarred(plot: RotationPlot, course: string, year: number): boolean {
  return plot.never.includes(course) || plot.barredYears?.[course]?.includes(year) === true;
}

interface PlotYear {
  readonly made: PlotColumns;
  readonly year: number;
}

function addOrder(draft: ModelDraft, problem: RotationProblem, { made, year }: PlotYear): void {
  const isPastKnown = made.isKnown(year - 1);
  for (const course of problem.courses) {
    const now = made.at(year, (option) => option.course === course);
    if (isPastKnown) {
      const before = made.at(year - 1, (option) => problem.mayFollow[course]?.includes(option.course) === true);
      draft.row(none, before.count, [...now.terms, ...minus(before.terms)]);
      const next = problem.mustBeFollowedBy[course];
      if (next !== undefined) addOneLeadsToOther(draft, { made, year, course, next });
    }
    const mostYears = problem.mostSinceLeyYears[course];
    if (mostYears !== undefined) addSinceLey(draft, problem, { made, year, now, mostYears });
  }
  if (isPastKnown) addDeviation(draft, problem, { made, year });
}

function addOneLeadsToOther(
  draft: ModelDraft,
  { made, year, course, next }: PlotYear & { readonly course: string; readonly next: string },
): void {
  const before = made.at(year - 1, (option) => option.course === course);
  const now = made.at(year, (option) => option.course === next);
  draft.row(none, -before.count, [...before.terms, ...minus(now.terms)]);
}

function addSinceLey(
  draft: ModelDraft,
  problem: RotationProblem,
  { made, year, now, mostYears }: PlotYear & { readonly now: Passing; readonly mostYears: number },
): void {
  const leys = Array.from({ length: mostYears }, (_, back) =>
    made.at(year - 1 - back, (option) => problem.leyCourses.includes(option.course)),
  );
  const known = leys.reduce((sum, one) => sum + one.count, 0);
  draft.row(none, known, [...now.terms, ...minus(leys.flatMap((one) => one.terms))]);
}

function addDeviation(draft: ModelDraft, problem: RotationProblem, { made, year }: PlotYear): void {
  const deviates = draft.column({ high: 1, costWeight: problem.weights.orderWeight });
  for (const course of problem.courses) {
    const before = made.at(year - 1, (option) => option.course === course);
    const now = made.at(year, (option) => option.course === problem.standardNext[course]);
    if (before.terms.length === 0 && before.count === 0) continue;
    draft.row(before.count, any, [[deviates, 1], ...minus(before.terms), ...now.terms]);
  }
}

interface PlotOrganism {
  readonly made: PlotColumns;
  readonly organism: string;
}

function addRest(draft: ModelDraft, problem: RotationProblem, { made, organism }: PlotOrganism): void {
  const restYears = restOn(problem, made.plot, organism);
  const isHost = (option: CourseOption) => option.hosts.includes(organism);
  const hostIn = (year: number) => made.at(year, isHost).count > 0;
  for (let year = 0; year < problem.years; year++) {
    const first = year - restYears + 1;
    const terms: Term[] = [];
    let count = 0;
    for (let at = first; at <= year; at++) {
      const isBegun = at === first || (at <= 0 && !hostIn(at - 1));
      const hosts = made.at(at, (option) => isHost(option) && (!option.isContinuation || isBegun));
      terms.push(...hosts.terms);
      count += hosts.count;
    }
    // A past that already breaks its rest can't be mended: nothing more may start in the window.
    if (terms.length > 0) draft.row(none, Math.max(0, 1 - count), terms);
  }
}

/** Whether what must keep away from an organism is other than what leaves it. */
function isOneSided(problem: RotationProblem, organism: string): boolean {
  return [...problem.options, ...(problem.pastOptions ?? [])].some(
    (option) => option.hosts.includes(organism) !== leftBy(option).includes(organism),
  );
}

/** What leaves it in one year and starts that must keep away in a later one: at most one of both, year against year. */
function addOneSidedRest(draft: ModelDraft, problem: RotationProblem, { made, organism }: PlotOrganism): void {
  const restYears = restOn(problem, made.plot, organism);
  for (let year = 0; year < problem.years; year++) {
    const meets = made.at(year, (option) => option.hosts.includes(organism) && !option.isContinuation);
    for (let back = 1; back < restYears && meets.terms.length > 0; back++) {
      const left = made.at(year - back, (option) => leftBy(option).includes(organism));
      if (left.count > 0) draft.row(none, 0, meets.terms);
      else if (left.terms.length > 0) draft.row(none, 1, [...meets.terms, ...left.terms]);
    }
  }
}

function minus(terms: readonly Term[]): readonly Term[] {
  return terms.map(([column, factor]): Term => [column, -factor]);
}

function coursesOf(problem: RotationProblem, byIndex: ReadonlyMap<number, PlotColumns>, values: Float64Array): Courses {
  return problem.plots.map((_, plotIndex) => {
    const plot = byIndex.get(plotIndex);
    if (plot === undefined) return [];
    return Array.from({ length: problem.years }, (__, year) =>
      problem.courses.findIndex((course) =>
        plot.at(year, (option) => option.course === course).terms.some(([column]) => (values[column] ?? 0) > 0.5),
      ),
    );
  });
}
