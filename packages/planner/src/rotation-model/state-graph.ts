/**
 * Every lawful sequence of one plot as paths through layers of states.
 *
 * Rule    A state after a year is the course that stood, the years since the last ley year, and for each organism the years in which no new stand
 *         of a host may start. Where the past is not known, nothing is known to forbid what comes first, and no ley is known of.
 *         After a host year an organism's next start waits its rest; a continuation is no new start.
 * Holds   a sequence is lawful if and only if it is a path; no arc leads into a dead end; of two arcs between the same states the
 *         cheaper is kept, because they differ in nothing that comes after.
 */
import { type RotationPlot, type RotationProblem, stabilityScore } from '../rotation-problem/problem.ts';
import { noLeyYears, type OptionRules, type PlotRules, plotRules } from './plot-rules.ts';

export interface Arc {
  readonly year: number;
  /** Places in their layers: layer `year` and layer `year + 1`. */
  readonly fromIndex: number;
  readonly toIndex: number;
  readonly option: string;
  readonly courseIndex: number;
  /** -1 where the past is not known. */
  readonly lastCourseIndex: number;
  /** Cover, order and stability, of this plot alone. */
  readonly costScore: number;
}

export interface PlotGraph {
  readonly plotIndex: number;
  /** States by layer, one layer more than years. Layer 0 has one state, the plot's past. */
  readonly stateCounts: readonly number[];
  /** By year, ordered by the state they leave. Empty in every year when nothing is lawful. */
  readonly arcsByYear: readonly (readonly Arc[])[];
  readonly isFeasible: boolean;
}

interface State {
  readonly lastCourseIndex: number;
  readonly yearsSinceLey: number;
  /** By organism: years from now in which no host may start. */
  readonly waits: readonly number[];
}

export function plotGraph(problem: RotationProblem, plotIndex: number, rules?: PlotRules): PlotGraph {
  const plot = problem.plots[plotIndex];
  if (plot === undefined) throw new Error(`There is no plot ${plotIndex}.`);
  const by = rules ?? plotRules(problem, plot);
  const layers: State[][] = [[stateOfPast(plot, by)]];
  const arcsByYear: Arc[][] = [];
  const ownScore = ownScores(problem, plot);
  for (let year = 0; year < problem.years; year++) {
    const made = stepLayer(layers[year] ?? [], { year, by, ownScore });
    layers.push(made.states);
    arcsByYear.push(made.arcs);
  }
  return smallest(plotIndex, layers, arcsByYear);
}

function stateOfPast(plot: RotationPlot, by: PlotRules): State {
  let state: State = { lastCourseIndex: -1, yearsSinceLey: noLeyYears, waits: by.restYears.map(() => 0) };
  for (const id of plot.history) {
    const option = [...by.options, ...by.pastOptions].find((one) => one.id === id);
    if (option !== undefined) state = after(state, option, by);
  }
  return state;
}

function after(state: State, option: OptionRules, by: PlotRules): State {
  return {
    lastCourseIndex: option.courseIndex,
    yearsSinceLey: option.isLey ? 0 : Math.min(noLeyYears, state.yearsSinceLey + 1),
    waits: state.waits.map((wait, organism) =>
      Math.max(wait - 1, option.leaves.includes(organism) ? (by.restYears[organism] ?? 0) - 1 : 0, 0),
    ),
  };
}

function isLawful(state: State, option: OptionRules, at: { readonly year: number; readonly by: PlotRules }): boolean {
  const { year, by } = at;
  const { courseIndex } = option;
  const pin = by.pinIndex[year] ?? -1;
  if ((pin >= 0 && pin !== courseIndex) || isBarred(by, courseIndex, year)) return false;
  if (state.yearsSinceLey + 1 > (by.mostSinceLeyYears[courseIndex] ?? noLeyYears) && hasLeyRule(by, courseIndex))
    return false;
  if (!mayComeAfter(state.lastCourseIndex, courseIndex, by)) return false;
  return option.isContinuation || option.hosts.every((organism) => (state.waits[organism] ?? 0) <= 0);
}

function isBarred(by: PlotRules, courseIndex: number, year: number): boolean {
  return by.isNever[courseIndex] === true || by.barredYears[courseIndex]?.has(year) === true;
}

/** Where the past is not known, anything may come. */
function mayComeAfter(lastIndex: number, courseIndex: number, by: PlotRules): boolean {
  if (lastIndex < 0) return true;
  const mayFollow = by.mayFollow[courseIndex] ?? null;
  if (mayFollow !== null && !mayFollow.has(lastIndex)) return false;
  const next = by.nextIndex[lastIndex] ?? -1;
  return next < 0 || next === courseIndex;
}

function hasLeyRule(by: PlotRules, courseIndex: number): boolean {
  return (by.mostSinceLeyYears[courseIndex] ?? noLeyYears) < noLeyYears;
}

/** Cost of a course in a year beside its cover: off the standard order, and off what is agreed. */
type OwnScore = (year: number, lastCourseIndex: number, courseIndex: number) => number;

function ownScores(problem: RotationProblem, plot: RotationPlot): OwnScore {
  const next = problem.courses.map((course) => problem.courses.indexOf(problem.standardNext[course] ?? ''));
  const stability = problem.courses.map((course) =>
    Array.from({ length: problem.years }, (_, year) => stabilityScore(problem, plot, { year, course })),
  );
  return (year, last, courseIndex) =>
    (last < 0 || next[last] === courseIndex ? 0 : problem.weights.orderWeight) + (stability[courseIndex]?.[year] ?? 0);
}

interface LayerStep {
  readonly year: number;
  readonly by: PlotRules;
  readonly ownScore: OwnScore;
}

function stepLayer(states: readonly State[], step: LayerStep): { states: State[]; arcs: Arc[] } {
  const { year, by, ownScore } = step;
  const leftYears = by.years - year - 1;
  const found = new Map<string, number>();
  const next: State[] = [];
  const cheapest = new Map<string, Arc>();
  for (const [from, state] of states.entries()) {
    for (const option of by.options) {
      if (!isLawful(state, option, step)) continue;
      const reached = after(state, option, by);
      const key = keyOf(reached, leftYears, by);
      let to = found.get(key);
      if (to === undefined) {
        to = next.length;
        found.set(key, to);
        next.push(reached);
      }
      const { courseIndex } = option;
      const costScore = option.costScore + ownScore(year, state.lastCourseIndex, courseIndex);
      const arcKey = `${from}>${to}>${courseIndex}`;
      if ((cheapest.get(arcKey)?.costScore ?? Number.POSITIVE_INFINITY) <= costScore) continue;
      const { lastCourseIndex } = state;
      cheapest.set(arcKey, {
        year,
        fromIndex: from,
        toIndex: to,
        option: option.id,
        courseIndex,
        lastCourseIndex,
        costScore,
      });
    }
  }
  return { states: next, arcs: [...cheapest.values()] };
}

/** States that allow the same from here on have one key: waits beyond the last year, and leys too long ago for any rule, are alike. */
function keyOf(state: State, leftYears: number, by: PlotRules): string {
  if (leftYears === 0) return 'end';
  const most = by.mostSinceLeyYears.reduce((sum, years) => (years < noLeyYears ? Math.max(sum, years) : sum), 0);
  const since = state.yearsSinceLey >= most ? noLeyYears : state.yearsSinceLey;
  return `${state.lastCourseIndex}|${since}|${state.waits.map((wait) => Math.min(wait, leftYears)).join()}`;
}

/** Drops dead ends and folds states of a layer together that have the same course behind and the same arcs ahead; from the last year back. */
function smallest(
  plotIndex: number,
  layers: readonly (readonly State[])[],
  arcsByYear: readonly (readonly Arc[])[],
): PlotGraph {
  const years = arcsByYear.length;
  const kept: (readonly Arc[])[] = [];
  const stateCounts: number[] = [];
  // By old place in the layer: the new place, or -1 when it leads nowhere.
  let places: readonly number[] = (layers[years] ?? []).map(() => 0);
  stateCounts[years] = places.length === 0 ? 0 : 1;
  for (let year = years - 1; year >= 0; year--) {
    const folded = foldLayer(layers[year] ?? [], arcsByYear[year] ?? [], places);
    kept[year] = folded.arcs;
    places = folded.places;
    stateCounts[year] = folded.stateCount;
  }
  // Folding keeps whole layers; what the past can't reach any more has gone with its arcs going forward.
  return { plotIndex, stateCounts, arcsByYear: kept, isFeasible: places[0] === 0 };
}

function foldLayer(states: readonly State[], arcs: readonly Arc[], places: readonly number[]) {
  const ahead: Arc[][] = states.map(() => []);
  for (const arc of arcs) {
    const to = places[arc.toIndex] ?? -1;
    if (to >= 0) ahead[arc.fromIndex]?.push({ ...arc, toIndex: to });
  }
  const found = new Map<string, number>();
  const kept: Arc[] = [];
  const newPlaces = ahead.map((out, from) => {
    if (out.length === 0) return -1;
    const cheapest = cheapestByTarget(out);
    const key = `${states[from]?.lastCourseIndex}|${cheapest.map((arc) => `${arc.option}>${arc.toIndex}`).join()}`;
    const known = found.get(key);
    if (known !== undefined) return known;
    const place = found.size;
    found.set(key, place);
    kept.push(...cheapest.map((arc) => ({ ...arc, fromIndex: place })));
    return place;
  });
  return { arcs: kept, places: newPlaces, stateCount: found.size };
}

/** Folding may have brought two options of a course to the same state: the cheaper stays. */
function cheapestByTarget(out: readonly Arc[]): readonly Arc[] {
  return out.filter(
    (arc, at) =>
      !out.some(
        (other, otherAt) =>
          otherAt !== at &&
          other.toIndex === arc.toIndex &&
          other.courseIndex === arc.courseIndex &&
          (other.costScore < arc.costScore || (other.costScore === arc.costScore && otherAt < at)),
      ),
  );
}
