/** Neighbourhoods of a plan, as small models: a few plots free in all years, the others as they are. Parts of one plot go together. */

import { type Courses, flowModel } from '../rotation-model/flow-model.ts';
import type { PlotGraph } from '../rotation-model/state-graph.ts';
import { type RotationProblem, rotatedPlots } from '../rotation-problem/problem.ts';
import type { Chance } from './seeded.ts';
import type { SolveAsk } from './solver.ts';

export interface Neighbourhood {
  readonly ask: SolveAsk;
  readonly freePlots: readonly number[];
  /** Courses of the whole plan, from a solution of the neighbourhood. */
  readonly coursesOf: (values: Float64Array) => Courses;
}

const sideTimeS = 4;
const leastFree = 4;
const mostFree = 9;

/** Gives one neighbourhood after another around the plan it is handed. */
export function neighbourhoods(problem: RotationProblem, graphs: readonly PlotGraph[], chance: Chance) {
  const plots = rotatedPlots(problem);
  const size = Math.min(plots.length, Math.max(leastFree, Math.min(mostFree, Math.ceil(plots.length / 4))));
  return (around: Courses): Neighbourhood => {
    const freePlots = pick(problem, { plots, size }, chance);
    const model = flowModel(problem, { graphs, fixed: { courses: around, freePlots } });
    return {
      freePlots,
      ask: { model: model.linear, timeLimitS: sideTimeS, gapShare: 0, start: model.startOf(around) },
      coursesOf: (values) => {
        const found = model.coursesOf(values);
        return around.map((courses, plotIndex) => (freePlots.includes(plotIndex) ? (found[plotIndex] ?? []) : courses));
      },
    };
  };
}

interface Wanted {
  readonly plots: readonly number[];
  readonly size: number;
}

function pick(problem: RotationProblem, { plots, size }: Wanted, chance: Chance): readonly number[] {
  const left = [...plots];
  const picked: number[] = [];
  while (picked.length < size && left.length > 0) {
    const [one = -1] = left.splice(Math.floor(chance() * left.length), 1);
    picked.push(one);
    const parent = problem.plots[one]?.parent ?? null;
    for (const sister of parent === null ? [] : left.filter((other) => problem.plots[other]?.parent === parent)) {
      left.splice(left.indexOf(sister), 1);
      picked.push(sister);
    }
  }
  return picked.sort((a, b) => a - b);
}
