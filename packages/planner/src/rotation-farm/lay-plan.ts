/**
 * A plan laid out on the farm in pencil: placements for the cells that the order of the courses would not bring by itself.
 *
 * Holds   what was placed before the first year stays; the farm's own order, courses and stands are not touched, so throwing the pencil away is leaving it out.
 */
import type { CoursePlacement, Farm, Plot, Rotation, Stand } from '@leywright/book';
import { cropBookOf } from '../crops/crop-book.ts';
import { overlapsOf } from '../faults/overlap.ts';
import { groundStand, inOrder } from '../ground/ground-stand.ts';
import { indexStands } from '../ground/plot-stands.ts';
import { courseOf, laidOutStands } from '../rotation/lay-out.ts';
import type { RotationPlan } from '../rotation-problem/problem.ts';
import { mayEndEarlier } from './course-pairs.ts';
import type { FarmProblem } from './farm-problem.ts';
import { heldCourse } from './rotation-farm.ts';

/** Courses of a plan by plot and year; null where the plot is held. */
export interface PlannedCell {
  readonly plot: string;
  readonly year: number;
  readonly course: string | null;
}

export function plannedCells({ problem, plots, firstYear }: FarmProblem, plan: RotationPlan): readonly PlannedCell[] {
  const courseOfOption = new Map(problem.options.map((option) => [option.id, option.course]));
  return plots.flatMap((plot, at) =>
    (plan[at] ?? []).map((option, year) => {
      const course = courseOfOption.get(option) ?? null;
      return { plot: plot.id as string, year: firstYear + year, course: course === heldCourse ? null : course };
    }),
  );
}

/** The farm with the plan in pencil. Years without land of ours carry nothing. */
export function farmWithPlan(farm: Farm, asked: FarmProblem, plan: RotationPlan): Farm {
  const { rotation } = farm;
  if (rotation === null) return farm;
  const cells = plannedCells(asked, plan);
  const { firstYear, problem } = asked;
  // A plot that could not be planned keeps what is agreed.
  const planned = new Set(cells.map((cell) => cell.plot));
  const before = (rotation.placed ?? []).filter(
    (one) => one.year < firstYear || one.year >= firstYear + problem.years || !planned.has(one.plot),
  );
  const plotById = new Map(asked.plots.map((plot) => [plot.id as string, plot]));
  const placed = cells.flatMap((cell): readonly CoursePlacement[] => {
    const plot = plotById.get(cell.plot);
    return plot === undefined || isByOrder(rotation, plot, cell) ? [] : [placement(plot, cell)];
  });
  const laid: Farm = { ...farm, rotation: { ...rotation, placed: [...before, ...placed] } };
  return { ...laid, stands: [...laid.stands, ...shortenedCovers(laid, asked)] };
}

/** Covers of the plan that end when what follows needs their ground: said in pencil, in place of what the course lays out. */
function shortenedCovers(laid: Farm, { plots, firstYear, problem }: FarmProblem): readonly Stand[] {
  const crops = cropBookOf(laid);
  const index = indexStands(laid.stands);
  const lastYear = firstYear + problem.years;
  return plots.flatMap((plot) => {
    // Without drift: the plan lies ahead of every record.
    const stands = [
      ...laid.stands.filter((one) => one.plot === plot.id).map((one) => groundStand(one, 'said', crops)),
      ...laidOutStands(laid.rotation, plot, { lastYear, said: index.ids }).map((one) =>
        groundStand(one, 'rotation', crops),
      ),
    ].sort(inOrder);
    const endsOn = new Map<string, Stand>();
    for (const found of overlapsOf(stands)) {
      const { earlier, later } = found;
      if (earlier.origin !== 'rotation' || !mayEndEarlier(found) || (later.stand.courseYear ?? 0) < firstYear) continue;
      const known = endsOn.get(earlier.stand.id);
      if (known === undefined || later.stand.from < known.to)
        endsOn.set(earlier.stand.id, { ...earlier.stand, state: 'pencil', to: later.stand.from });
    }
    return [...endsOn.values()];
  });
}

function isByOrder(rotation: Rotation, plot: Plot, { year, course }: PlannedCell): boolean {
  const { placed: _, ...byOrder } = rotation;
  return (courseOf(byOrder, plot, year)?.id ?? null) === course;
}

function placement(plot: Plot, { year, course }: PlannedCell): CoursePlacement {
  return { plot: plot.id, year, course: course as CoursePlacement['course'], state: 'pencil', reason: null };
}
