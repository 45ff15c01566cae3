/** The hard rules of one plot, one by one, so that any of them can be laid aside to see what it forbids. */
import { type RotationPlot, type RotationProblem, restOn } from '../rotation-problem/problem.ts';

export const plotRuleKinds = ['follows', 'followed-by', 'since-ley', 'never', 'barred', 'rest', 'pin'] as const;
export type PlotRuleKind = (typeof plotRuleKinds)[number];

/** A rule as the grower knows it. `course`, `organism` and `year` say which one of its kind. */
export type PlotRule =
  | { readonly kind: 'follows'; readonly course: string; readonly after: readonly string[] }
  | { readonly kind: 'followed-by'; readonly course: string; readonly next: string }
  | { readonly kind: 'since-ley'; readonly course: string; readonly mostYears: number }
  | { readonly kind: 'never'; readonly course: string }
  | { readonly kind: 'barred'; readonly course: string; readonly years: readonly number[] }
  | { readonly kind: 'rest'; readonly organism: string; readonly restYears: number; readonly isInfected: boolean }
  | { readonly kind: 'pin'; readonly year: number; readonly course: string };

/** All rules of a plot, those of the rotation's structure first and those a grower can change soonest last. */
export function rulesOfPlot(problem: RotationProblem, plot: RotationPlot): readonly PlotRule[] {
  return [
    ...Object.entries(problem.mayFollow).map(([course, after]): PlotRule => ({ kind: 'follows', course, after })),
    ...Object.entries(problem.mustBeFollowedBy).map(
      ([course, next]): PlotRule => ({ kind: 'followed-by', course, next }),
    ),
    ...Object.entries(problem.mostSinceLeyYears).map(
      ([course, mostYears]): PlotRule => ({ kind: 'since-ley', course, mostYears }),
    ),
    ...plot.never.map((course): PlotRule => ({ kind: 'never', course })),
    ...Object.entries(plot.barredYears ?? {}).map(([course, years]): PlotRule => ({ kind: 'barred', course, years })),
    ...Object.keys(problem.restYears).map(
      (organism): PlotRule => ({
        kind: 'rest',
        organism,
        restYears: restOn(problem, plot, organism),
        isInfected: restOn(problem, plot, organism) > (problem.restYears[organism] ?? 0),
      }),
    ),
    ...Object.entries(plot.pins).map(([year, course]): PlotRule => ({ kind: 'pin', year: Number(year), course })),
  ];
}
