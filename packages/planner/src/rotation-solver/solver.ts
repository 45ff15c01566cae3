/**
 * The seam to a solver of linear models with whole numbers. The machine that runs it is handed in: a worker in Node or in the browser.
 *
 * Holds   a call never blocks who calls; a stopped, timed-out or failed run still gives the best solution it had found, and the bound.
 */
import type { LinearModel, Term } from '../rotation-model/draft-model.ts';

export const solveEndings = ['optimal', 'infeasible', 'time', 'stopped', 'failed'] as const;
export type SolveEnding = (typeof solveEndings)[number];

/** Asked by the one who waits: true once the search shall end. */
export interface StopSign {
  readonly isStopped: () => boolean;
}

export interface SolveAsk {
  readonly model: LinearModel;
  readonly timeLimitS: number;
  /** Proof is enough when best and bound differ by no more than this share. */
  readonly gapShare: number;
  /** Values of some columns of a solution that is already known. */
  readonly start?: readonly Term[];
  readonly stop?: StopSign;
  readonly onBetter?: (found: Found) => void;
}

export interface Found {
  /** Null while there is only a bound. */
  readonly values: Float64Array | null;
  readonly boundScore: number;
}

export interface SolveAnswer {
  readonly ending: SolveEnding;
  /** The best solution; null when none was found. */
  readonly values: Float64Array | null;
  /** No solution can be better than this; minus infinity when nothing is known. */
  readonly boundScore: number;
  /** What went wrong, for our own log; null unless it failed. */
  readonly failure: string | null;
}

export interface Solver {
  readonly solve: (ask: SolveAsk) => Promise<SolveAnswer>;
  /** Seconds on a clock that only runs forward. */
  readonly nowS: () => number;
  /** Lets others work, then goes on. */
  readonly pause: () => Promise<void>;
}
