/** Why a course can't stand on a plot in a year: the rules that bar it, or null when it can. */
import type { CourseYear, RotationProblem } from '../rotation-problem/problem.ts';
import { type Conflict, conflictOf } from './conflict.ts';

export function whyNot(problem: RotationProblem, plotIndex: number, cell: CourseYear): Conflict | null {
  const plots = problem.plots.map((plot, index) =>
    index === plotIndex ? { ...plot, pins: { ...plot.pins, [cell.year]: cell.course } } : plot,
  );
  return conflictOf({ ...problem, plots }, plotIndex);
}
