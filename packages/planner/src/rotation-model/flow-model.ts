/**
 * The rotation as flow through the state graphs: one unit a plot, from its past to the last year.
 *
 * Holds   the same plans and scores as the model of assignments, with a tighter bound: without whole numbers a plot's flow is already a
 *         mixture of its lawful sequences. Plots not free keep the course given, and count in areas, balance and splits alone.
 */
import type { RotationProblem } from '../rotation-problem/problem.ts';
import { addCoupling } from './coupling.ts';
import { draftModel, type LinearModel, type ModelDraft, type Term } from './draft-model.ts';
import type { Arc, PlotGraph } from './state-graph.ts';

/** Courses by plot and year, as places in the list of courses; empty for a plot left out. */
export type Courses = readonly (readonly number[])[];

export interface RotationModel {
  readonly linear: LinearModel;
  /** Course columns at the values of a plan: enough for the solver to fill in the rest. */
  readonly startOf: (courses: Courses) => readonly Term[];
  /** Courses of the free plots in a solution; an empty list for the others. */
  readonly coursesOf: (values: Float64Array) => Courses;
}

export interface FlowWish {
  readonly graphs: readonly PlotGraph[];
  /** Plots that keep their courses. Without it all are free. */
  readonly fixed?: { readonly courses: Courses; readonly freePlots: readonly number[] };
}

export function flowModel(problem: RotationProblem, { graphs, fixed }: FlowWish): RotationModel {
  const draft = draftModel();
  const freePlots = fixed?.freePlots ?? graphs.map((one) => one.plotIndex);
  const cells = new CourseColumns();
  for (const graph of graphs) if (freePlots.includes(graph.plotIndex)) addPlot(draft, graph, cells);
  addCoupling(draft, {
    problem,
    freePlots,
    carries: (plotIndex, year, courseIndex) => {
      const column = cells.find(plotIndex, year, courseIndex);
      return column === null ? [] : [[column, 1]];
    },
    fixedCourse: (plotIndex, year) => fixed?.courses[plotIndex]?.[year] ?? -1,
  });
  return {
    linear: draft.finish(),
    startOf: (courses) => cells.startOf(courses),
    coursesOf: (values) => cells.coursesOf(values, problem),
  };
}

interface CourseCell {
  readonly plotIndex: number;
  readonly year: number;
  readonly courseIndex: number;
  readonly column: number;
}

/** Which column says that a plot carries a course in a year. */
export class CourseColumns {
  readonly #cells = new Map<string, CourseCell>();

  add(cell: CourseCell): void {
    this.#cells.set(keyOf(cell.plotIndex, cell.year, cell.courseIndex), cell);
  }

  find(plotIndex: number, year: number, courseIndex: number): number | null {
    return this.#cells.get(keyOf(plotIndex, year, courseIndex))?.column ?? null;
  }

  startOf(courses: Courses): readonly Term[] {
    return [...this.#cells.values()].map(
      ({ plotIndex, year, courseIndex, column }): Term => [column, courses[plotIndex]?.[year] === courseIndex ? 1 : 0],
    );
  }

  coursesOf(values: Float64Array, problem: RotationProblem): Courses {
    const courses: number[][] = problem.plots.map(() => []);
    for (const { plotIndex, year, courseIndex, column } of this.#cells.values()) {
      const own = courses[plotIndex];
      if (own !== undefined && (values[column] ?? 0) > 0.5) own[year] = courseIndex;
    }
    return courses;
  }
}

function keyOf(plotIndex: number, year: number, courseIndex: number): string {
  return `${plotIndex}|${year}|${courseIndex}`;
}

function addPlot(draft: ModelDraft, graph: PlotGraph, cells: CourseColumns): void {
  const columns = new Map<Arc, number>();
  for (const arc of graph.arcsByYear.flat()) columns.set(arc, draft.column({ high: 1, costWeight: arc.costScore }));
  const columnOf = (arc: Arc) => columns.get(arc) ?? -1;
  for (const [year, arcs] of graph.arcsByYear.entries()) {
    addStates(draft, { year, out: arcs, into: graph.arcsByYear[year - 1] ?? [] }, columnOf);
    const byCourse = grouped(arcs, (arc) => arc.courseIndex);
    for (const [courseIndex, own] of byCourse) {
      const column = draft.column({ high: 1, isWhole: true });
      draft.row(0, 0, [...own.map((arc): Term => [columnOf(arc), 1]), [column, -1]]);
      cells.add({ plotIndex: graph.plotIndex, year, courseIndex, column });
    }
  }
}

interface StateArcs {
  readonly year: number;
  readonly out: readonly Arc[];
  readonly into: readonly Arc[];
}

/** What flows into a state flows out of it; one unit leaves the past. */
function addStates(draft: ModelDraft, { year, out, into }: StateArcs, columnOf: (arc: Arc) => number): void {
  const arriving = grouped(into, (arc) => arc.toIndex);
  for (const [state, leaving] of grouped(out, (arc) => arc.fromIndex)) {
    const terms = leaving.map((arc): Term => [columnOf(arc), 1]);
    if (year === 0) draft.row(1, 1, terms);
    else draft.row(0, 0, [...terms, ...(arriving.get(state) ?? []).map((arc): Term => [columnOf(arc), -1])]);
  }
}

function grouped<T>(items: readonly T[], keyOf: (item: T) => number): ReadonlyMap<number, readonly T[]> {
  const groups = new Map<number, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [item]);
    else group.push(item);
  }
  return groups;
}
