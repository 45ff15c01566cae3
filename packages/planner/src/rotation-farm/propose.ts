/**
 * Proposes a rotation for a farm: asks, solves, lays out in pencil, and holds the result against the same checks as any plan.
 *
 * Holds   a proposal's findings are those of the laid-out plan itself, so nothing that it leaves to put right goes unsaid.
 */
import type { Farm } from '@leywright/book';
import type { Finding, FindingCode } from '../plan/finding.ts';
import { planFarm } from '../plan/planner.ts';
import { conflictOf, type Lifted, liftedOf } from '../rotation-explain/conflict.ts';
import type { PlotRule } from '../rotation-model/rules.ts';
import type { RotationAnswer, RotationAsk } from '../rotation-solver/solve-rotation.ts';
import { solveRotation } from '../rotation-solver/solve-rotation.ts';
import type { Solver } from '../rotation-solver/solver.ts';
import { type FarmProblem, farmProblem } from './farm-problem.ts';
import { withGapsFilled } from './fill-gaps.ts';
import { farmWithPlan, type PlannedCell, plannedCells } from './lay-plan.ts';
import { type FarmRotationWish, heldCourse } from './rotation-farm.ts';

export interface RotationProposal {
  readonly kind: 'proposal';
  readonly asked: FarmProblem;
  readonly answer: Extract<RotationAnswer, { kind: 'plan' }>;
  readonly cells: readonly PlannedCell[];
  /** The farm with the proposal in pencil. */
  readonly farm: Farm;
  /** What stays to put right, or worth a look, in the years planned: rests, overlaps, bare ground and late covers. */
  readonly findings: readonly Finding[];
}

/** Rules that conflict on a plot, each with what lifting it alone would free. */
export interface PlotConflict {
  readonly plot: string;
  readonly lifted: readonly Lifted[];
}

export interface NoRotation {
  readonly kind: 'no-plan';
  readonly asked: FarmProblem;
  readonly conflicts: readonly PlotConflict[];
  /** A proposal for the other plots, which is not the whole plan; null when there are none. */
  readonly partial: RotationProposal | null;
}

export type ProposeAnswer =
  | RotationProposal
  | NoRotation
  | Exclude<ReturnType<typeof farmProblem>, { kind: 'problem' }>;

interface ProposeHow {
  readonly ask: RotationAsk;
  readonly solver: Solver;
}

export async function proposeRotation(farm: Farm, wish: FarmRotationWish, how: ProposeHow): Promise<ProposeAnswer> {
  const made = farmProblem(farm, wish);
  if (made.kind !== 'problem') return made;
  const { asked } = made;
  const answer = await solveRotation(asked.problem, how.ask, how.solver);
  if (answer.kind === 'plan') return proposalOf(farm, wish, { asked, answer });
  const conflicts = answer.plots.flatMap((plotIndex) => conflictOn(asked, plotIndex));
  return {
    kind: 'no-plan',
    asked,
    conflicts,
    partial: await withoutPlots(farm, wish, { asked, plots: answer.plots, how }),
  };
}

export function conflictOn({ problem }: FarmProblem, plotIndex: number): readonly PlotConflict[] {
  const conflict = conflictOf(problem, plotIndex, isGiven);
  return conflict === null ? [] : [{ plot: problem.plots[plotIndex]?.id ?? '', lifted: liftedOf(problem, conflict) }];
}

/** Held ground, and a course that goes on with what the one before left standing, are no one's wish. */
function isGiven(rule: PlotRule): boolean {
  return rule.kind === 'follows' || (rule.kind !== 'rest' && rule.course === heldCourse);
}

/** The plots that can be planned, planned; those that can't keep what is agreed. */
async function withoutPlots(
  farm: Farm,
  wish: FarmRotationWish,
  { asked, plots, how }: { readonly asked: FarmProblem; readonly plots: readonly number[]; readonly how: ProposeHow },
): Promise<RotationProposal | null> {
  const problem = {
    ...asked.problem,
    plots: asked.problem.plots.map((plot, at) => (plots.includes(at) ? { ...plot, isRotated: false } : plot)),
  };
  if (problem.plots.every((plot) => !plot.isRotated)) return null;
  const answer = await solveRotation(problem, how.ask, how.solver);
  return answer.kind === 'plan' ? proposalOf(farm, wish, { asked: { ...asked, problem }, answer }) : null;
}

function proposalOf(
  farm: Farm,
  wish: FarmRotationWish,
  { asked, answer }: Pick<RotationProposal, 'asked' | 'answer'>,
): RotationProposal {
  const laid = withGapsFilled(farmWithPlan(farm, asked, answer.plan), wish, asked);
  return {
    kind: 'proposal',
    asked,
    answer,
    cells: plannedCells(asked, answer.plan),
    farm: laid,
    findings: findingsOfPlan(laid, wish, asked),
  };
}

const concerned: ReadonlySet<FindingCode> = new Set([
  'stands-overlap',
  'family-back-too-soon',
  'organism-back-too-soon',
  'wait-after-cover-too-short',
  'host-too-near',
  'bare-in-leaching-season',
  'cover-sown-too-late',
  'undersow-out-of-window',
]);

/** Findings of the ground in the years planned. */
export function findingsOfPlan(
  farm: Farm,
  { today }: Pick<FarmRotationWish, 'today'>,
  asked: FarmProblem,
): readonly Finding[] {
  const { firstYear, problem } = asked;
  const toYear = firstYear + problem.years - 1;
  const plots = new Set(asked.plots.map((plot) => plot.id as string));
  return planFarm(farm, { today, fromYear: firstYear - 1, toYear }).findings.filter(
    ({ code, place }) =>
      concerned.has(code) &&
      plots.has(place.plot ?? '') &&
      (place.from === undefined || Number(place.from.slice(0, 4)) >= firstYear),
  );
}
