/**
 * The seam to a solver that keeps one linear model and answers again after small changes: an edit is answered from the last answer, not from
 * nothing. The machine that runs it is handed in, as with `Solver`.
 *
 * Holds   changes stay until they are changed back; a call never blocks who calls; prices are those of the last run.
 */

import type { LinearModel } from '../rotation-model/draft-model.ts';
import type { StopSign } from '../rotation-solver/solver.ts';

export interface ModelChange {
  readonly columns?: readonly { readonly placeIndex: number; readonly low: number; readonly high: number }[];
  readonly rows?: readonly { readonly placeIndex: number; readonly low: number; readonly high: number }[];
  readonly costs?: readonly { readonly placeIndex: number; readonly costWeight: number }[];
  readonly entries?: readonly { readonly rowIndex: number; readonly columnIndex: number; readonly factor: number }[];
}

export interface KeptAsk {
  readonly change?: ModelChange;
  readonly timeLimitS: number;
  /** From nothing, by the inner way; else on from the last answer. */
  readonly isCold?: boolean;
  readonly stop?: StopSign;
}

export const keptEndings = ['optimal', 'infeasible', 'time', 'stopped', 'failed'] as const;
export type KeptEnding = (typeof keptEndings)[number];

export interface KeptAnswer {
  readonly ending: KeptEnding;
  /** Null unless it is optimal. */
  readonly values: Float64Array | null;
  readonly totalScore: number;
  /** What one more of each row's limit would change the score by; null unless it is optimal. */
  readonly rowPriceWeight: Float64Array | null;
  readonly failure: string | null;
}

export interface KeptModel {
  readonly run: (ask: KeptAsk) => Promise<KeptAnswer>;
  readonly close: () => Promise<void>;
}

export interface ModelKeeper {
  readonly keep: (model: LinearModel) => KeptModel;
}
